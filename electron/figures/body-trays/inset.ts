import { between, boundsOf, distance, distanceToChord, flattened, type Point, signedArea } from '../cubic-path.ts'
import { type Curve, moved, rounded } from '../curve.ts'
import { Rim } from '../rim.ts'

/** Chains of chords may leave the curve by this much, mm. */
const FLAT_MM = 0.6

/** Longest chord of an outline that is to be moved inwards, mm. */
const CHORD_MM = 60

/**
 * The line at a distance inside a closed outline: edge of an opening or of a pressed frame. Every vertex of the
 * flattened outline moves square to its two chords; those that come nearer to the outline than the distance fall away,
 * so that tight corners leave no loops, and the runs on both sides of a gap are drawn on to where they meet.
 */
export function inset(outline: Curve, by: number): Curve {
  const polygon = polygonOf(outline)
  const fine = polygon.flatMap((here, index) => chordsTo(here, polygon[(index + 1) % polygon.length] ?? here))
  const rim = new Rim(polygon)
  const inward = signedArea(outline) >= 0 ? 1 : -1
  const moves = fine.map((here, index): Point | null => {
    const before = fine.at(index - 1) ?? here
    const after = fine[(index + 1) % fine.length] ?? here
    const one = normal(before, here, inward)
    const other = normal(here, after, inward)
    const share = by / Math.max(0.3, 1 + one[0] * other[0] + one[1] * other[1])
    const moved: Point = [here[0] + (one[0] + other[0]) * share, here[1] + (one[1] + other[1]) * share]
    return rim.roomAt(moved[0], moved[1]) > by * 0.97 ? moved : null
  })
  return rounded(fewer(withCorners(moves, by)), 9)
}

function chordsTo(from: Point, to: Point): Point[] {
  const count = Math.max(1, Math.ceil(distance(from, to) / CHORD_MM))
  return Array.from({ length: count }, (_, index) => between(from, to, index / count))
}

/** The points that are left, and where points fell away the corner in which the two runs meet. */
function withCorners(moves: readonly (Point | null)[], by: number): Point[] {
  const start = Math.max(0, moves.indexOf(null))
  const turned = [...moves.slice(start), ...moves.slice(0, start)]
  const kept = turned.flatMap((move, index) => (move === null ? [] : [{ move, gap: turned[index - 1] === null }]))
  return kept.flatMap(({ move, gap }, index): Point[] => {
    const [beforeLast, last] = [kept.at(index - 2)?.move, kept.at(index - 1)?.move]
    const next = kept[(index + 1) % kept.length]?.move
    const corner = gap && beforeLast && last && next ? meeting(beforeLast, last, next, move) : null
    return corner && distance(corner, move) < 3 * by && distance(corner, last ?? corner) < 3 * by
      ? [corner, move]
      : [move]
  })
}

/** Where the line through two points meets the line through two others; null where they run alike. */
function meeting(a: Point, b: Point, c: Point, d: Point): Point | null {
  const [du, dv, eu, ev] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]]
  const turn = du * ev - dv * eu
  if (Math.abs(turn) < 0.02 * Math.hypot(du, dv) * Math.hypot(eu, ev)) return null
  const share = ((c[0] - a[0]) * ev - (c[1] - a[1]) * eu) / turn
  return [a[0] + share * du, a[1] + share * dv]
}

function normal(from: Point, to: Point, inward: number): Point {
  const length = distance(from, to) || 1
  return [(-inward * (to[1] - from[1])) / length, (inward * (to[0] - from[0])) / length]
}

/** A closed outline through points, those on a straight run left out. */
export const outlineThrough = (points: readonly Point[], radius: number): Curve => rounded(fewer(points), radius)

/** Leaves out points that lie on the chord of their neighbours (D. Douglas and T. Peucker, Cartographica 10, 1973). */
function fewer(points: readonly Point[]): Point[] {
  const half = Math.floor(points.length / 2)
  const [first, middle] = [points[0], points[half]]
  if (first === undefined || middle === undefined || points.length < 5) return [...points]
  return [...thinned(points.slice(0, half + 1)), ...thinned([...points.slice(half), first])]
}

/** All but the last point of a run, thinned. */
function thinned(run: readonly Point[]): Point[] {
  const [first, last] = [run[0], run.at(-1)]
  if (first === undefined || last === undefined) return []
  let [furthest, away] = [0, FLAT_MM]
  run.forEach((point, index) => {
    const off = distanceToChord(point, first, last)
    if (off > away) [furthest, away] = [index, off]
  })
  if (furthest === 0) return [first]
  return [...thinned(run.slice(0, furthest + 1)), ...thinned(run.slice(furthest))]
}

/** Where an outline stands at one height or station: least and greatest of the other coordinate; null beyond it. */
export function reachAt(outline: readonly Point[], axis: 0 | 1, value: number): readonly [number, number] | null {
  const other = axis === 0 ? 1 : 0
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  let before = outline[outline.length - 1] ?? [0, 0]
  for (const here of outline) {
    if (here[axis] > value !== before[axis] > value) {
      const share = (value - before[axis]) / (here[axis] - before[axis])
      const at = before[other] + share * (here[other] - before[other])
      if (at < least) least = at
      if (at > most) most = at
    }
    before = here
  }
  return least > most ? null : [least, most]
}

/** An outline as a polygon of few points, for measuring along it. */
export const polygonOf = (outline: Curve): readonly Point[] => fewer(flattened(outline, 6))

/**
 * How far a line has to move so that it keeps clear of an outline by a distance: to the left of it (`-1`) or to the
 * right (`1`); both are compared at the heights of the line.
 */
export function clearOf(line: Curve, outline: readonly Point[], side: -1 | 1, by: number): number {
  const needs = flattened(line, 8).map(([u, v]) => {
    const reach = reachAt(outline, 1, v)
    return reach === null ? 0 : side === 1 ? reach[1] + by - u : u - (reach[0] - by)
  })
  return side * Math.max(0, ...needs)
}

/** Left, top, right and bottom of a curve. */
export function extentOf(curve: Curve): { left: number; top: number; right: number; bottom: number } {
  const { u, v, width, height } = boundsOf(flattened(curve, 8))
  return { left: u, top: v, right: u + width, bottom: v + height }
}

/** Moves a curve on its sheet. */
export const shifted = (curve: Curve, du: number, dv: number): Curve => moved(curve, ([u, v]) => [u + du, v + dv])
