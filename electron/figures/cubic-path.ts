/** A point of a plane figure, mm. */
export type Point = readonly [number, number]
/** One cubic Bézier piece: start, two control points, end. A straight line has its control points at its thirds. */
export type Cubic = readonly [Point, Point, Point, Point]

/** Straight piece from one point to another. */
export function straight(from: Point, to: Point): Cubic {
  return [from, between(from, to, 1 / 3), between(from, to, 2 / 3), to]
}

/** The point a share of the way from one point to another. */
export function between(from: Point, to: Point, share: number): Point {
  return [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share]
}

/** Distance of two points. */
export const distance = (one: Point, other: Point): number => Math.hypot(one[0] - other[0], one[1] - other[1])

/** The same piece drawn the other way. */
export const reversed = ([a, b, c, d]: Cubic): Cubic => [d, c, b, a]

/** Point of the piece at parameter `t` from 0 to 1. */
export function pointAt([a, b, c, d]: Cubic, t: number): Point {
  const u = 1 - t
  const [atStart, first, second, atEnd] = [u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t]
  return [
    a[0] * atStart + b[0] * first + c[0] * second + d[0] * atEnd,
    a[1] * atStart + b[1] * first + c[1] * second + d[1] * atEnd,
  ]
}

/**
 * Signed area of a closed path, mm²: Green's theorem on each cubic, in closed form. Positive when the path runs
 * clockwise on a sheet whose second axis points down.
 */
export function signedArea(path: readonly Cubic[]): number {
  let twice = 0
  for (const [p0, p1, p2, p3] of path) {
    const cross = (p: Point, q: Point) => p[0] * q[1] - q[0] * p[1]
    twice +=
      (6 * cross(p0, p1) +
        3 * cross(p0, p2) +
        cross(p0, p3) +
        3 * cross(p1, p2) +
        3 * cross(p1, p3) +
        6 * cross(p2, p3)) /
      10
  }
  return twice / 2
}

/** Points along a path, `perPiece` chords for each curved piece and one for each straight one; the end is left out. */
export function flattened(path: readonly Cubic[], perPiece = 16): Point[] {
  const points: Point[] = []
  for (const piece of path) {
    points.push(piece[0])
    if (isStraight(piece)) continue
    for (let index = 1; index < perPiece; index++) points.push(pointAt(piece, index / perPiece))
  }
  return points
}

/** Whether a piece is a straight line written as a cubic. */
export function isStraight([a, b, c, d]: Cubic): boolean {
  return isNear(b, a, d, 1 / 3) && isNear(c, a, d, 2 / 3)
}

/** Whether a point lies within a micrometre of the one a share of the way from one point to another. */
function isNear(point: Point, from: Point, to: Point, share: number): boolean {
  const offU = point[0] - (from[0] + (to[0] - from[0]) * share)
  const offV = point[1] - (from[1] + (to[1] - from[1]) * share)
  return offU * offU + offV * offV < 1e-6
}

/** Whether a point lies inside a polygon (even-odd rule). */
export function isInside(polygon: readonly Point[], [x, y]: Point): boolean {
  let inside = false
  let before = polygon[polygon.length - 1] ?? [0, 0]
  for (const here of polygon) {
    if (here[1] > y !== before[1] > y) {
      const crossing = here[0] + ((y - here[1]) * (before[0] - here[0])) / (before[1] - here[1])
      if (x < crossing) inside = !inside
    }
    before = here
  }
  return inside
}

/** Distance of a point from a stretch of line. */
export function distanceToChord(point: Point, from: Point, to: Point): number {
  const lengthSquared = (to[0] - from[0]) ** 2 + (to[1] - from[1]) ** 2
  const along = (point[0] - from[0]) * (to[0] - from[0]) + (point[1] - from[1]) * (to[1] - from[1])
  const share = lengthSquared === 0 ? 0 : Math.max(0, Math.min(1, along / lengthSquared))
  return distance(point, between(from, to, share))
}

/** Distance of a point from the edge of a closed polygon. */
export function distanceToEdge(polygon: readonly Point[], point: Point): number {
  let least = Number.POSITIVE_INFINITY
  let before = polygon[polygon.length - 1] ?? [0, 0]
  for (const here of polygon) {
    least = Math.min(least, distanceToChord(point, before, here))
    before = here
  }
  return least
}

/** Smallest upright rectangle around points. */
export function boundsOf(points: readonly Point[]): { u: number; v: number; width: number; height: number } {
  let [left, top, right, foot] = [
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ]
  for (const [u, v] of points) {
    if (u < left) left = u
    if (u > right) right = u
    if (v < top) top = v
    if (v > foot) foot = v
  }
  return { u: left, v: top, width: right - left, height: foot - top }
}
