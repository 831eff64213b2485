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

/** How near a crossing is searched, and how finely it is told: some hundred-millionths of a millimetre on a car. */
const NEAR = 1e-13
const CELLS = 2 ** 34
/** More rounds than halving alone needs. */
const MOST_ROUNDS = 80

/**
 * Value of the parameter between `low` and `high` at which a function passes `value`; the nearer end where it is not
 * reached. It is told as the middle of one of 2³⁴ cells, so that what is drawn does not hang on how it was searched.
 */
export function solved(f: (t: number) => number, value: number, low: number, high: number): number {
  const found = crossingOf((t) => f(t) - value, low, high)
  const cell = Math.floor(((found - low) / (high - low)) * CELLS)
  return low + ((Math.min(CELLS - 1, Math.max(0, cell)) + 0.5) / CELLS) * (high - low)
}

/**
 * Where a function passes zero, by inverse quadratic interpolation where that is safe and by halving where it is not
 * (T. R. Chandrupatla, A new hybrid quadratic/bisection algorithm for finding the zero of a nonlinear function without
 * using derivatives, Advances in Engineering Software 28, 1997).
 */
function crossingOf(f: (t: number) => number, low: number, high: number): number {
  let [here, there, before] = [high, low, low]
  let [atHere, atThere] = [f(high), f(low)]
  if (atHere * atThere >= 0) return Math.abs(atHere) < Math.abs(atThere) ? high : low
  let atBefore = atThere
  let share = 0.5
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const next = here + share * (there - here)
    const atNext = f(next)
    if (atNext > 0 === atHere > 0) {
      ;[before, atBefore] = [here, atHere]
    } else {
      ;[before, atBefore] = [there, atThere]
      ;[there, atThere] = [here, atHere]
    }
    ;[here, atHere] = [next, atNext]
    const least = NEAR / Math.abs(there - here)
    if (atHere === 0 || least > 0.5) return Math.abs(atThere) < Math.abs(atHere) ? there : here
    const place = (here - there) / (before - there)
    const rise = (atHere - atThere) / (atBefore - atThere)
    const isSafe = rise * rise < place && (1 - rise) ** 2 < 1 - place
    const wanted = isSafe
      ? (atHere / (atThere - atHere)) * (atBefore / (atThere - atBefore)) +
        ((before - here) / (there - here)) * (atHere / (atBefore - atHere)) * (atThere / (atBefore - atThere))
      : 0.5
    share = Math.min(1 - least, Math.max(least, wanted))
  }
  return here
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
