import { boundsOf, type Cubic, flattened, type Point } from '../cubic-path.ts'

/** How much room a point nearer the middle of the panel may lack and still be preferred, for each mm of way. */
const TOWARDS_MIDDLE = 0.08

/** A square of the plan, and how well a point in it may lie at most. */
interface Square {
  readonly u: number
  readonly v: number
  readonly half: number
  readonly room: number
  readonly atMost: number
}

/**
 * A point well inside a closed path and outside what hides it: the middle of the largest circle that fits, found
 * best first on squares cut in four until none can better the best by more than a twentieth of the smaller extent
 * (D. Garcia-Castellanos and U. Lombardo, Poles of inaccessibility, Scottish Geographical Journal 123, 2007, by a
 * branch and bound of our own). Among places of like room the one nearer the middle is taken.
 */
export function labelPoint(path: readonly Cubic[], hidden: readonly (readonly Cubic[])[]): { u: number; v: number } {
  const polygons = [flattened(path, 8), ...hidden.map((curve) => flattened(curve, 6))]
  const [outline = []] = polygons
  const box = boundsOf(outline)
  const near = polygons.filter((polygon, index) => index === 0 || overlaps(boundsOf(polygon), box))
  const size = Math.min(box.width, box.height)
  const [middleU, middleV] = [box.u + box.width / 2, box.v + box.height / 2]
  const square = (u: number, v: number, half: number): Square => {
    const free = near.reduce((least, polygon, index) => Math.min(least, roomIn(polygon, u, v, index === 0)), Infinity)
    const room = free > 0 ? Math.max(free / 10, free - TOWARDS_MIDDLE * Math.hypot(u - middleU, v - middleV)) : free
    return { u, v, half, room, atMost: room + half * Math.SQRT2 * (1 + TOWARDS_MIDDLE) }
  }
  const waiting: Square[] = []
  const half = size / 2
  for (let u = box.u + half; u - half < box.u + box.width; u += size) {
    for (let v = box.v + half; v - half < box.v + box.height; v += size) waiting.push(square(u, v, half))
  }
  let best = waiting.reduce((a, b) => (b.room > a.room ? b : a))
  for (;;) {
    waiting.sort((a, b) => a.atMost - b.atMost)
    const next = waiting.pop()
    const enough = best.room > 0 ? size / 20 : 0
    if (next === undefined || next.atMost - best.room <= enough || next.half < 0.2) break
    for (const [du, dv] of [
      [-1, -1],
      [1, -1],
      [-1, 1],
      [1, 1],
    ] as const) {
      const quarter = next.half / 2
      const part = square(next.u + du * quarter, next.v + dv * quarter, quarter)
      if (part.room > best.room) best = part
      if (part.atMost - best.room > enough) waiting.push(part)
    }
  }
  return { u: Math.round(best.u * 10) / 10, v: Math.round(best.v * 10) / 10 }
}

type Box = ReturnType<typeof boundsOf>
const overlaps = (a: Box, b: Box): boolean =>
  a.u < b.u + b.width && b.u < a.u + a.width && a.v < b.v + b.height && b.v < a.v + a.height

/** Distance to the edge of a polygon; negative on the wrong side of it. */
function roomIn(polygon: readonly Point[], u: number, v: number, wantedInside: boolean): number {
  let inside = false
  let least = Number.POSITIVE_INFINITY
  let [bu, bv] = polygon.at(-1) ?? [0, 0]
  for (const [au, av] of polygon) {
    const [du, dv] = [bu - au, bv - av]
    const along = (u - au) * du + (v - av) * dv
    const share = along <= 0 ? 0 : Math.min(1, along / (du * du + dv * dv))
    const away = (u - au - share * du) ** 2 + (v - av - share * dv) ** 2
    if (away < least) least = away
    if (av > v !== bv > v && u < au + ((v - av) * du) / dv) inside = !inside
    bu = au
    bv = av
  }
  const room = Math.sqrt(least)
  return inside === wantedInside ? room : -room
}
