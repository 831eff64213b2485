import type { Point } from '../cubic-path.ts'
import { type Curve, joined, lines, smooth } from '../curve.ts'
import type { BodyForm } from './body-form.ts'
import { fullestHeight } from './lower-body.ts'
import { mixed } from './space.ts'

/** A bumper bar: its plan outside and inside from the middle to the left end, and the heights of its edges. */
export interface Bumper {
  readonly outer: readonly Point[]
  readonly inner: readonly Point[]
  readonly topMm: number
  readonly footMm: number
  /** Stations of its foremost or hindmost point and of its end on the flank. */
  readonly faceMm: number
  readonly endMm: number
  readonly halfWidthMm: number
  readonly overriderMm: number
}

/** The bar follows the fullest line of nose or tail at a distance; both views and plan are drawn from this. */
export function bumperOf({ lower, dimensions, description }: BodyForm, end: 'nose' | 'tail'): Bumper {
  const gap = end === 'nose' ? lower.noseMm - 3 : dimensions.lengthMm - lower.tailMm - 3
  const last = 0.86
  const count = 9
  const rounds = Array.from({ length: count }, (_, index) => {
    const share = (index / (count - 1)) * last
    return end === 'nose' ? share : 3 - share
  })
  const offset = (by: number): Point[] =>
    rounds.map((round) => {
      const [x, y] = lower.fullest(round)
      const step = 1e-3
      const [a, b] = [lower.fullest(Math.max(0, round - step)), lower.fullest(Math.min(3, round + step))]
      const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
      const length = Math.hypot(dx, dy) || 1
      return [x - (dy / length) * by, y + (dx / length) * by]
    })
  const belt = dimensions.beltHeightMm
  const outer = offset(gap).map(
    ([x, y], index): Point => (index === 0 ? [x, 0] : [x, Math.min(y, lower.halfWidthMm + gap * 0.3)]),
  )
  const inner = offset(gap * 0.3).map(([x, y], index): Point => (index === 0 ? [x, 0] : [x, y]))
  const middle = fullestHeight(description.heights.fullest, dimensions) - belt * 0.09
  return {
    outer,
    inner,
    topMm: middle + belt * 0.062,
    footMm: middle - belt * 0.062,
    faceMm: outer[0]?.[0] ?? 0,
    endMm: outer.at(-1)?.[0] ?? 0,
    halfWidthMm: outer.at(-1)?.[1] ?? 0,
    overriderMm: lower.halfWidthMm * 0.41,
  }
}

/** Seen from the side: the bar wraps round the corner and ends rounded on the flank. */
export function bumperSide({ faceMm, endMm, topMm, footMm }: Bumper): { bar: Curve; folds: Curve[] } {
  const forward = Math.sign(endMm - faceMm)
  const height = topMm - footMm
  const at = (x: number, z: number): Point => [x, -z]
  const round = height * 0.34 * forward
  const bar = joined(
    smooth([at(faceMm + 8 * forward, topMm), at(faceMm, (topMm + footMm) / 2), at(faceMm + 8 * forward, footMm)]),
    smooth([
      at(faceMm + 8 * forward, footMm),
      at(mixed(faceMm, endMm, 0.5), footMm - 6),
      at(endMm - round, footMm + 4),
    ]),
    smooth([at(endMm - round, footMm + 4), at(endMm, (topMm + footMm) / 2), at(endMm - round, topMm - 4)]),
    smooth([at(endMm - round, topMm - 4), at(mixed(faceMm, endMm, 0.5), topMm + 2), at(faceMm + 8 * forward, topMm)]),
  )
  const fold = (share: number) => {
    const z = mixed(footMm, topMm, share)
    return smooth([at(faceMm + 5 * forward, z), at(mixed(faceMm, endMm, 0.5), z + 2), at(endMm - round * 0.6, z)])
  }
  return { bar, folds: [fold(0.68), fold(0.3)] }
}

/** Seen from above, left half to be mirrored. */
export function bumperAbove({ outer, inner }: Bumper): { bar: Curve; fold: Curve } {
  const half = joined(smooth(outer, [0, 1]), smooth([...inner].reverse(), undefined, [0, -1]))
  const whole = joined(
    half,
    half.map(([a, b, c, d]) => [mirror(d), mirror(c), mirror(b), mirror(a)] as const).reverse(),
  )
  const middle = outer.map((point, index): Point => {
    const other = inner[index] ?? point
    return [mixed(point[0], other[0], 0.5), mixed(point[1], other[1], 0.5)]
  })
  return { bar: whole, fold: smooth(middle, [0, 1]) }
}
const mirror = ([u, v]: Point): Point => [u, -v + 0]

/** Seen from its own end: the bar across the car, its two folds and its overriders. */
export function bumperEnd({ halfWidthMm, topMm, footMm, overriderMm }: Bumper) {
  const at = (y: number, z: number): Point => [y, -z]
  const fall = (topMm - footMm) * 0.1
  const half = joined(
    smooth([at(0, topMm), at(halfWidthMm * 0.6, topMm), at(halfWidthMm * 0.97, topMm - fall)], [1, 0]),
    smooth([
      at(halfWidthMm * 0.97, topMm - fall),
      at(halfWidthMm, (topMm + footMm) / 2),
      at(halfWidthMm * 0.965, footMm + fall),
    ]),
    smooth([at(halfWidthMm * 0.965, footMm + fall), at(halfWidthMm * 0.5, footMm), at(0, footMm)], undefined, [-1, 0]),
  )
  const left = ([u, v]: Point): Point => [-u + 0, v]
  const bar = joined(half, half.map(([a, b, c, d]) => [left(d), left(c), left(b), left(a)] as const).reverse())
  const fold = (share: number) =>
    lines(at(-halfWidthMm * 0.985, mixed(footMm, topMm, share)), at(halfWidthMm * 0.985, mixed(footMm, topMm, share)))
  const tall = topMm - footMm
  const overrider = (side: 1 | -1): Point[] => [
    at(side * (overriderMm - tall * 0.3), topMm + tall * 0.5),
    at(side * (overriderMm + tall * 0.3), topMm + tall * 0.5),
    at(side * (overriderMm + tall * 0.33), footMm - tall * 0.24),
    at(side * (overriderMm - tall * 0.33), footMm - tall * 0.24),
  ]
  return { bar, folds: [fold(0.68), fold(0.3)], overriders: [overrider(1), overrider(-1)] }
}
