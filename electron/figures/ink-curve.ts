import type { InkLine } from '../../shared-types/figure.ts'
import { type Point, straight } from './cubic-path.ts'
import { type Curve, endOf, mirroredDown, rounded, smooth, startOf } from './curve.ts'

/** A line of ink before it becomes path text. */
export interface InkCurve {
  readonly weight: InkLine['weight']
  readonly curve: Curve
  readonly closed: boolean
  readonly occlude: boolean
}

type Weight = InkLine['weight']
export const line = (weight: Weight, ...curves: Curve[]): InkCurve[] =>
  curves.map((curve) => ({ weight, curve, closed: false, occlude: false }))
export const loop = (weight: Weight, ...curves: Curve[]): InkCurve[] =>
  curves.map((curve) => ({ weight, curve, closed: true, occlude: false }))
/** A closed part that hides what is under it. */
export const solid = (weight: Weight, ...curves: Curve[]): InkCurve[] =>
  curves.map((curve) => ({ weight, curve, closed: true, occlude: true }))

/** Curves with their mirror images about the centre line of a plan. */
export const bothDown = (...curves: Curve[]): Curve[] => curves.flatMap((curve) => [curve, mirroredDown(curve)])

/** Upright rectangle with rounded corners between two stations and two distances from the centre line. */
export const block = (from: number, to: number, low: number, high: number, radius = 10): Curve => {
  const corners: Point[] = [
    [from, low],
    [to, low],
    [to, high],
    [from, high],
  ]
  return rounded(corners, Math.min(radius, (to - from) / 2.02, (high - low) / 2.02))
}

/** A pipe or a shaft along a run of points: one closed curve at a distance to both sides. */
export function tube(points: readonly Point[], radius: number): Curve {
  const side = (sign: number): Point[] =>
    points.map((here, index) => {
      const before = points[Math.max(0, index - 1)] ?? here
      const after = points[Math.min(points.length - 1, index + 1)] ?? here
      const length = Math.hypot(after[0] - before[0], after[1] - before[1]) || 1
      return [
        here[0] + (sign * radius * (before[1] - after[1])) / length,
        here[1] + (sign * radius * (after[0] - before[0])) / length,
      ]
    })
  const there = smooth(side(1))
  const back = smooth(side(-1).reverse())
  return [...there, straight(endOf(there), startOf(back)), ...back, straight(endOf(back), startOf(there))]
}
