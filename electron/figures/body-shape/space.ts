import type { Cubic, Point } from '../cubic-path.ts'

/** A point of the car, mm: station behind the front of the bumper, distance from the centre line to the left, height. */
export type Point3 = readonly [number, number, number]
/** One cubic Bézier piece in space. Its image in an orthographic view is the cubic of the images of its points. */
export type Cubic3 = readonly [Point3, Point3, Point3, Point3]

export type OutsideView = 'left' | 'right' | 'roof' | 'front' | 'rear'

/** Orthographic images, in the axes of `shared-types/figure.ts`. The right side is drawn nose to the left. */
const images: Readonly<Record<OutsideView, (point: Point3) => Point>> = {
  left: ([x, , z]) => [x, -z],
  right: ([x, , z]) => [x, -z],
  roof: ([x, y]) => [x, y],
  front: ([, y, z]) => [y, -z],
  rear: ([, y, z]) => [-y, -z],
}

/** To the micrometre, alike on both sides of zero, so that mirror images stay exact. */
const rounded = (value: number): number => (Math.sign(value) * Math.round(Math.abs(value) * 1000)) / 1000 + 0

/** Image of a point in a view, to the micrometre, so that shared points stay shared. */
export function imageOf(view: OutsideView, point: Point3): Point {
  const [u, v] = images[view](point)
  return [rounded(u), rounded(v)]
}

/** Image of a piece in a view. */
export const cubicImage = (view: OutsideView, [a, b, c, d]: Cubic3): Cubic => [
  imageOf(view, a),
  imageOf(view, b),
  imageOf(view, c),
  imageOf(view, d),
]

/** The same point on the other side of the car. */
export const across = ([x, y, z]: Point3): Point3 => [x, -y + 0, z]
export const cubicAcross = ([a, b, c, d]: Cubic3): Cubic3 => [across(a), across(b), across(c), across(d)]
export const cubicReversed = ([a, b, c, d]: Cubic3): Cubic3 => [d, c, b, a]

export const mixed = (one: number, other: number, share: number): number => one + (other - one) * share

/** The point a share of the way from one to another. */
export const toward = (one: Point3, other: Point3, share: number): Point3 => [
  mixed(one[0], other[0], share),
  mixed(one[1], other[1], share),
  mixed(one[2], other[2], share),
]

export const apart = (one: Point3, other: Point3): number =>
  Math.hypot(one[0] - other[0], one[1] - other[1], one[2] - other[2])

/**
 * Value of the parameter between `low` and `high` at which a rising or falling function passes `value`, by halving the
 * interval; the nearer end where it is not reached.
 */
export function solved(f: (t: number) => number, value: number, low: number, high: number): number {
  const rising = f(high) >= f(low)
  let [from, to] = [low, high]
  for (let round = 0; round < 34; round++) {
    const middle = (from + to) / 2
    if (f(middle) < value === rising) from = middle
    else to = middle
  }
  return (from + to) / 2
}

/** The same curve led through two given ends: what it misses them by is spread evenly along it. */
export function ends(start: Point3, end: Point3, at: (t: number) => Point3): (t: number) => Point3 {
  const [first, last] = [at(0), at(1)]
  const led = (point: Point3, t: number, i: 0 | 1 | 2): number =>
    point[i] + (start[i] - first[i]) * (1 - t) + (end[i] - last[i]) * t
  return (t) => {
    const point = at(t)
    return [led(point, t, 0), led(point, t, 1), led(point, t, 2)]
  }
}
