import { describe, expect, it } from 'vitest'
import type { z } from 'zod'
import { measureInPicture } from '../../../electron/analysis/geometry/picture-measure.ts'
import { pictureMeasure } from '../../../shared-types/measuring.ts'

type Plain = z.input<typeof pictureMeasure.input>
const measure = (question: Plain) => measureInPicture(pictureMeasure.input.parse(question))
const point = (x: number, y: number) => ({ x, y })
const bar = (to: number, lengthMm = 500, uMm = 0.5) => ({
  kind: 'scale bar' as const,
  bar: { from: point(100, 100), to: point(100 + to, 100), lengthMm, uMm },
})
const picture = { widthPx: 4000, heightPx: 3000 }
const base = { picture, pickPx: 1, distortionPx: null, offPlane: null }
const distance = (...points: [number, number][]) => ({
  kind: 'distance' as const,
  points: points.map(([x, y]) => point(x, y)),
})

describe('scale bar', () => {
  it('500 mm over 1250 pixels: 87 pixels are 34.8 mm, u 0.568 mm', () => {
    // L = p B / P with u(L)/L the root of the squares; one pixel at each of four ends, 0.5 mm on the bar.
    const found = measure({ ...base, plane: bar(1250), wanted: distance([500, 900], [587, 900]) })
    expect(found.value).toBeCloseTo(34.8, 10)
    expect(found.standard).toBeCloseTo(0.568, 3)
    expect(found.agree).toBe(true)
    expect(found.notes.join()).toContain('squarely')
  })
  it('is made of picking, reference and distortion, each by its closed form', () => {
    // L = p B / P: picks move both ends of both lengths, u = L √2 √(1/p² + 1/P²) for one pixel; the bar gives L / B.
    // A distortion of at most 2 pixels is a rectangular distribution: 2/√3 pixels (JCGM 100:2008, 4.3.7).
    const question = { ...base, distortionPx: 2, plane: bar(1250), wanted: distance([500, 900], [587, 900]) }
    const { parts, standard, value } = measure(question)
    const forOnePixel = value * Math.SQRT2 * Math.hypot(1 / 87, 1 / 1250)
    expect(parts.picking).toBeCloseTo(forOnePixel, 6)
    expect(parts.distortion).toBeCloseTo((forOnePixel * 2) / Math.sqrt(3), 6)
    expect(parts.reference).toBeCloseTo((34.8 / 500) * 0.5, 8)
    expect(Math.hypot(parts.picking, parts.reference, parts.distortion)).toBeCloseTo(standard, 10)
  })
  it('the warning off the plane: 20 mm at 2 m is about 1 %', () => {
    const question = { ...base, plane: bar(1250), offPlane: { offsetMm: 20, cameraMm: 2000 } }
    const found = measure({ ...question, wanted: distance([500, 900], [1750, 900]) })
    expect((found.offPlaneError ?? 0) / found.value).toBeCloseTo(20 / 1980, 10)
  })
})

const known = {
  kind: 'known points' as const,
  points: [
    [420, 310, 0, 0],
    [2510, 455, 600, 0],
    [2380, 1690, 600, 400],
    [505, 1820, 0, 400],
  ].map(([x = 0, y = 0, xMm = 0, yMm = 0]) => ({ picture: { x, y }, plane: { xMm, yMm } })),
  uMm: 0.5,
}

it('four known points: value and uncertainty as another program has them', () => {
  // numpy 2.4: the homography with its last entry 1, derivatives by complex steps; 0.8929 from 200,000 draws there.
  const found = measure({ ...base, pickPx: 1.5, plane: known, wanted: distance([900, 700], [2100, 1450]) })
  expect(found.value).toBeCloseTo(433.4068160423, 8)
  expect(found.standard).toBeCloseTo(0.89199029, 6)
  expect(Math.abs(found.drawn.standard / 0.8929 - 1)).toBeLessThan(0.03)
  expect(found.agree).toBe(true)
  expect(found.expanded).toBeCloseTo(1.959964 * found.standard, 6)
})

describe('two pairs of parallels', () => {
  // numpy 2.4: a rectangle of 800 by 500 mm projected by a camera of 3000 pixels focal length, turned by 25, -30 and 5°.
  const corners = [
    point(1571.3102030481994, 1104.974389222386),
    point(2542.515430414971, 1251.892295188267),
    point(2328.378417612161, 1802.5914913435995),
    point(1401.1965580908227, 1773.8498101184184),
  ]
  const plane = {
    kind: 'two pairs of parallels' as const,
    corners,
    known: { from: corners[0] ?? point(0, 0), to: corners[1] ?? point(0, 0), lengthMm: 800, uMm: 0.5 },
    focalLengthPx: null,
  }
  const diagonal = distance([1898.9563631228991, 1427.1426323308751], [2204.5523546070895, 1576.760467017086])
  it.each([
    ['square corners', null],
    ['a known focal length', 3000],
  ])('a slanting length comes out with %s', (_, focalLengthPx) => {
    const found = measure({ ...base, pickPx: 0.2, plane: { ...plane, focalLengthPx }, wanted: diagonal })
    expect(found.value).toBeCloseTo(Math.hypot(300, 100), 6)
  })
  it('a circle of 200 mm that is an ellipse in the picture, and the area of the rectangle', () => {
    const circle = [
      point(2115.0306554217095, 1510.0638783073564),
      point(1907.272025215241, 1599.0000101563598),
      point(1974.7135736578844, 1387.5069841805762),
    ]
    const small = { ...base, pickPx: 0.2, plane }
    expect(measure({ ...small, wanted: { kind: 'circle diameter', points: circle } }).value).toBeCloseTo(200, 6)
    expect(measure({ ...small, wanted: { kind: 'area', points: corners } }).value).toBeCloseTo(400_000, 2)
    const right = measure({ ...small, wanted: { kind: 'angle', points: corners.slice(0, 3) } })
    expect([right.value, right.unit]).toEqual([expect.closeTo(90, 8), '°'])
  })
  it('seen squarely it is a scale', () => {
    const square = [point(1000, 1000), point(2000, 1000), point(2000, 1600), point(1000, 1600)]
    const flat = {
      ...plane,
      corners: square,
      known: { ...plane.known, from: point(1000, 1000), to: point(2000, 1000) },
    }
    const found = measure({
      ...base,
      pickPx: 0.01,
      plane: { ...flat, focalLengthPx: 3000 },
      wanted: distance([1000, 1000], [2000, 1600]),
    })
    expect(found.value).toBeCloseTo(800 * Math.hypot(1, 0.6), 6)
  })
  it('one pair that does not converge leaves the focal length open, and says what to do', () => {
    const trapezium = [point(1000, 1000), point(2000, 1000), point(2200, 1600), point(800, 1600)]
    const question = { ...base, plane: { ...plane, corners: trapezium }, wanted: diagonal }
    expect(() => measure(question)).toThrow(/enter it in pixels/)
  })
})

describe('bad input is refused with its cure', () => {
  const wanted = distance([500, 900], [587, 900])
  const from = (at: number) => known.points[at] ?? { picture: point(0, 0), plane: { xMm: 0, yMm: 0 } }
  const onLine = {
    ...known,
    points: [from(0), from(1), { picture: point(1465, 382.5), plane: { xMm: 300, yMm: 200 } }, from(3)],
  }
  it.each([
    ['a bar of length zero', { plane: bar(1250, 0), wanted }, /greater than nothing/],
    ['a negative bar', { plane: bar(1250, -5), wanted }, /greater than nothing/],
    ['both ends of the bar in one', { plane: bar(0), wanted }, /pick the other end/],
    ['a point outside', { plane: bar(1250), wanted: distance([500, 900], [4001, 900]) }, /outside the picture/],
    ['a bar outside', { plane: bar(3950), wanted }, /plane lies outside/],
    ['a distance of nothing', { plane: bar(1250), wanted: distance([5, 9], [5, 9]) }, /are the same/],
    ['three corners on a line', { plane: onLine, wanted }, /on one line/],
    [
      'a circle on a line',
      {
        plane: bar(1250),
        wanted: { kind: 'circle diameter' as const, points: [point(1, 1), point(2, 2), point(9, 9)] },
      },
      /go round the circle/,
    ],
    [
      'an offset that reaches the camera',
      { plane: bar(1250), wanted, offPlane: { offsetMm: 20, cameraMm: 20 } },
      /how far the camera was/,
    ],
  ])('%s', (_, question, words) => expect(() => measure({ ...base, ...question })).toThrow(words))
})
