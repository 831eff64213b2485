import { boundsOf, flattened, type Point } from './cubic-path.ts'
import type { Curve } from './curve.ts'
import { Rim } from './rim.ts'

/** How much room a point nearer the middle of the panel may lack and still be preferred, for each mm of way. */
const TOWARDS_MIDDLE = 0.08

/** How much better than in its middle a point of a square may lie. */
const reach = (half: number): number => half * Math.SQRT2 * (1 + TOWARDS_MIDDLE)

/** Squares cut in four before the best found so far is taken. */
const MOST_LOOKS = 300

/** A closed curve as a polygon with its bounds and its edge, each made once for all that is asked of it. */
export interface Shape {
  readonly points: readonly Point[]
  readonly box: ReturnType<typeof boundsOf>
  readonly rim: () => Rim
}
export function shapeOf(curve: Curve): Shape {
  const points = flattened(curve, curve.length > 16 ? 3 : 7)
  let rim: Rim | null = null
  const rimOnce = () => {
    rim ??= new Rim(points)
    return rim
  }
  return { points, box: boundsOf(points), rim: rimOnce }
}

/** A square of the plan, and how well a point in it may lie at most. */
interface Square {
  readonly u: number
  readonly v: number
  readonly half: number
  readonly worth: number
  readonly atMost: number
}

/**
 * A point well inside a closed shape and outside what hides it: the middle of the largest circle that fits, found
 * best first on squares cut in four until none can better the best by more than a fifteenth of the smaller extent
 * (D. Garcia-Castellanos and U. Lombardo, Poles of inaccessibility, Scottish Geographical Journal 123, 2007, by a
 * branch and bound of our own). Among places of like room the one nearer the middle is taken. `like` is a point that
 * is taken where it serves nearly as well as the middle of the largest circle could. Where everything is hidden, what
 * hides is left out of account.
 */
export function labelPoint(outline: Shape, hidden: readonly Shape[], like: Point | null): { u: number; v: number } {
  const { box } = outline
  const rim = outline.rim()
  const covers = hidden.filter((cover) => overlaps(cover.box, box)).map((cover) => ({ ...cover, rim: cover.rim() }))
  const size = Math.max(1, Math.min(box.width, box.height))
  const [middleU, middleV] = [box.u + box.width / 2, box.v + box.height / 2]
  /** Worth of a point; anything up to `idle` where it is no more than that. */
  const worthOf = (u: number, v: number, idle: number): number => {
    let free = rim.roomAt(u, v, idle)
    for (const cover of covers) {
      if (free <= idle) return free
      if (distanceToBox(cover.box, u, v) < free) free = Math.min(free, -cover.rim.roomAt(u, v, idle))
    }
    return free > 0 ? Math.max(free / 10, free - TOWARDS_MIDDLE * Math.hypot(u - middleU, v - middleV)) : free
  }
  if (like !== null && worthOf(like[0], like[1], 0) > size / 6) return rounded(like[0], like[1])
  const square = (u: number, v: number, half: number, idle: number): Square => {
    const worth = worthOf(u, v, idle)
    return { u, v, half, worth, atMost: worth + reach(half) }
  }
  const waiting: Square[] = []
  const half = size / 2
  let best = square(middleU, middleV, half, Number.NEGATIVE_INFINITY)
  for (let u = box.u + half; u - half < box.u + box.width; u += size) {
    for (let v = box.v + half; v - half < box.v + box.height; v += size) {
      const first = square(u, v, half, Number.NEGATIVE_INFINITY)
      if (first.worth > best.worth) best = first
      waiting.push(first)
    }
  }
  for (let looks = 0; looks < MOST_LOOKS && waiting.length > 0; looks++) {
    const next = takeMost(waiting)
    const enough = best.worth > 0 ? size / 15 : 0
    if (next.atMost - best.worth <= enough || next.half < 0.2) break
    const quarter = next.half / 2
    for (const du of [-quarter, quarter]) {
      for (const dv of [-quarter, quarter]) {
        // A square that is neither the best nor may hold a better point is not looked at further.
        const idle = Math.min(best.worth, best.worth + enough - reach(quarter))
        const part = square(next.u + du, next.v + dv, quarter, idle)
        if (part.worth > best.worth) best = part
        if (part.atMost - best.worth > enough) waiting.push(part)
      }
    }
  }
  return best.worth > 0 || covers.length === 0 ? rounded(best.u, best.v) : labelPoint(outline, [], like)
}

const rounded = (u: number, v: number) => ({ u: Math.round(u * 10) / 10, v: Math.round(v * 10) / 10 })

/** Takes the square out that may hold the best point. */
function takeMost(waiting: Square[]): Square {
  let at = 0
  let atMost = waiting[0]?.atMost ?? 0
  for (let index = 1; index < waiting.length; index++) {
    const one = waiting[index]
    if (one === undefined || one.atMost <= atMost) continue
    at = index
    atMost = one.atMost
  }
  const [most] = waiting.splice(at, 1)
  if (most === undefined) throw new Error('No square of the plan is left to look at.')
  return most
}

type Box = Shape['box']
const overlaps = (a: Box, b: Box): boolean =>
  a.u < b.u + b.width && b.u < a.u + a.width && a.v < b.v + b.height && b.v < a.v + a.height

const distanceToBox = (box: Box, u: number, v: number): number =>
  Math.hypot(Math.max(box.u - u, 0, u - box.u - box.width), Math.max(box.v - v, 0, v - box.v - box.height))
