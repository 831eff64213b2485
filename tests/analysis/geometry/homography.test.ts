import { describe, expect, it } from 'vitest'
import { fitCircle } from '../../../electron/analysis/geometry/circle-fit.ts'
import { homographyOf, mapped } from '../../../electron/analysis/geometry/homography.ts'

const flat = (...points: [number, number][]) => Float64Array.from(points.flat())
const wanted = [2, 0.5, 1, 0.25, 1.5, 2, 0.1, 0.2, 1]
/** Images of points under [[2, 1/2, 1], [1/4, 3/2, 2], [1/10, 1/5, 1]], worked out in fractions. */
const exact: [[number, number], [number, number]][] = [
  [
    [0, 0],
    [1, 2],
  ],
  [
    [1, 0],
    [30 / 11, 45 / 22],
  ],
  [
    [1, 1],
    [35 / 13, 75 / 26],
  ],
  [
    [0, 1],
    [5 / 4, 35 / 12],
  ],
  [
    [0.5, 0.5],
    [45 / 23, 5 / 2],
  ],
  [
    [2, 3],
    [65 / 18, 35 / 9],
  ],
]

describe('homography', () => {
  const homographyFrom = (pairs: typeof exact) =>
    homographyOf(flat(...pairs.map(([from]) => from)), flat(...pairs.map(([, to]) => to))) ?? new Float64Array(9)
  it.each([
    ['four corners', 4],
    ['six points', 6],
  ])('comes back from %s', (_, count) => {
    const h = homographyFrom(exact.slice(0, count))
    for (const [at, value] of wanted.entries()) expect((h[at] ?? 0) / (h[8] ?? 0)).toBeCloseTo(value, 10)
  })
  it('takes the middle of the square not to the middle of its image', () => {
    const h = homographyFrom(exact.slice(0, 4))
    for (const [[x, y], [u, v]] of exact.slice(4)) {
      expect(mapped(h, x, y).x).toBeCloseTo(u, 10)
      expect(mapped(h, x, y).y).toBeCloseTo(v, 10)
    }
    expect(mapped(h, 0.5, 0.5).x).not.toBeCloseTo((1 + 35 / 13) / 2, 2)
  })
  it('keeps the cross-ratio of four points on a line', () => {
    const h = homographyFrom(exact.slice(0, 4))
    const ratio = ([a = 0, b = 0, c = 0, d = 0]: number[]) => ((c - a) * (d - b)) / ((c - b) * (d - a))
    const along = [0, 0.3, 0.7, 2]
    expect(ratio(along.map((t) => mapped(h, t, 0.4 * t).x))).toBeCloseTo(ratio(along), 10)
  })
  it('does not hang on where the origin lies or how long a unit is', () => {
    const far = exact.slice(0, 4).map(([[x, y], to]): (typeof exact)[0] => [[1e5 + 700 * x, 3e4 + 700 * y], to])
    const place = mapped(homographyFrom(far), 1e5 + 350, 3e4 + 350)
    expect(place.x).toBeCloseTo(45 / 23, 8)
    expect(place.y).toBeCloseTo(2.5, 8)
  })
})

describe('circle', () => {
  it('goes through three points: (0,0) (6,0) (0,8) has its middle at (3,4) and radius 5', () => {
    const circle = fitCircle(flat([0, 0], [6, 0], [0, 8]))
    expect([circle?.x, circle?.y, circle?.radius].map((value) => value?.toFixed(12))).toEqual(
      [3, 4, 5].map((value) => value.toFixed(12)),
    )
  })
  it('of least squares through seven, as scipy 1.17.1 least_squares has it', () => {
    const circle = fitCircle(
      flat([10.2, 0.1], [7.1, 7], [0.1, 9.9], [-7, 7.2], [-10.1, -0.2], [-7.1, -6.9], [0, -10.05]),
    )
    expect(circle?.x).toBeCloseTo(0.04563504, 7)
    expect(circle?.y).toBeCloseTo(-0.03381617, 7)
    expect(circle?.radius).toBeCloseTo(10.03173576, 7)
  })
  it('is none on a line', () => expect(fitCircle(flat([0, 0], [1, 1], [2, 2], [5, 5]))).toBeNull())
})
