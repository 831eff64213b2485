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
  const weights = [u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t] as const
  return [
    a[0] * weights[0] + b[0] * weights[1] + c[0] * weights[2] + d[0] * weights[3],
    a[1] * weights[0] + b[1] * weights[1] + c[1] * weights[2] + d[1] * weights[3],
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
  return path.flatMap((piece) => {
    const chords = isStraight(piece) ? 1 : perPiece
    return Array.from({ length: chords }, (_, index) => pointAt(piece, index / chords))
  })
}

/** Whether a piece is a straight line written as a cubic. */
export function isStraight([a, b, c, d]: Cubic): boolean {
  return distance(b, between(a, d, 1 / 3)) < 1e-3 && distance(c, between(a, d, 2 / 3)) < 1e-3
}

/** Whether a point lies inside a polygon (even-odd rule). */
export function isInside(polygon: readonly Point[], [x, y]: Point): boolean {
  let inside = false
  polygon.forEach((here, index) => {
    const before = polygon.at(index - 1) ?? here
    if (here[1] > y !== before[1] > y) {
      const crossing = here[0] + ((y - here[1]) * (before[0] - here[0])) / (before[1] - here[1])
      if (x < crossing) inside = !inside
    }
  })
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
  return polygon.reduce((least, here, index) => {
    const before = polygon.at(index - 1) ?? here
    return Math.min(least, distanceToChord(point, before, here))
  }, Number.POSITIVE_INFINITY)
}

/** Smallest upright rectangle around points. */
export function boundsOf(points: readonly Point[]): { u: number; v: number; width: number; height: number } {
  const us = points.map((point) => point[0])
  const vs = points.map((point) => point[1])
  const [u, v] = [Math.min(...us), Math.min(...vs)]
  return { u, v, width: Math.max(...us) - u, height: Math.max(...vs) - v }
}
