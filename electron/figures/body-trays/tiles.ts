import { between, type Cubic, distance, type Point, reversed, straight } from '../cubic-path.ts'
import { backwards, type Curve, endOf, lines, mirroredDown, moved, smooth, startOf } from '../curve.ts'

/** Share of a corner's legs that makes a quarter circle. */
const ROUND = 0.5522847

const micrometre = (value: number): number => Math.round(value * 1000) / 1000 + 0

/** Points on the micrometre, so that neighbours and mirror images agree exactly once written. */
export const settled = (curve: Curve): Curve => moved(curve, ([u, v]) => [micrometre(u), micrometre(v)])

/** An edge of a sheet: smooth through its points, with the given directions at its ends. */
export const edge = (points: readonly Point[], start?: Point, end?: Point): Curve => settled(smooth(points, start, end))

/** An edge of straight stretches. */
export const straightEdge = (...points: Point[]): Curve => settled(lines(...points))

/** An edge of straight stretches with rounded corners. */
export function roundedEdge(points: readonly Point[], radius: number): Curve {
  const [first, last] = [points[0], points.at(-1)]
  if (first === undefined || last === undefined) return []
  const bends = points.slice(1, -1).map((corner, index): Cubic => {
    const [before, after] = [points[index] ?? corner, points[index + 2] ?? corner]
    const from = between(corner, before, Math.min(radius / distance(corner, before), 0.49))
    const to = between(corner, after, Math.min(radius / distance(corner, after), 0.49))
    return [from, between(from, corner, ROUND), between(to, corner, ROUND), to]
  })
  const stops = [first, ...bends.flatMap((bend) => [bend[0], bend[3]]), last]
  return settled(
    bends
      .flatMap((bend, index) => [straight(stops[2 * index] ?? first, bend[0]), bend])
      .concat([straight(stops.at(-2) ?? first, last)]),
  )
}

/** Part of an ellipse from one angle to another, radians; 0 is forward, a quarter turn is away from the centre line. */
export function ellipseEdge(middle: Point, along: number, across: number, from: number, to: number): Curve {
  const handle = (4 / 3) * Math.tan((to - from) / 4)
  const at = (angle: number): Point => [middle[0] - along * Math.cos(angle), middle[1] + across * Math.sin(angle)]
  const slope = (angle: number): Point => [along * Math.sin(angle), across * Math.cos(angle)]
  const [a, d, da, dd] = [at(from), at(to), slope(from), slope(to)]
  const cubic: Cubic = [
    a,
    [a[0] + da[0] * handle, a[1] + da[1] * handle],
    [d[0] - dd[0] * handle, d[1] - dd[1] * handle],
    d,
  ]
  return settled([cubic])
}

const same = (one: Point, other: Point): boolean => one[0] === other[0] && one[1] === other[1]

/**
 * Edges in the order they are met going round a face, each turned so that it begins where the last one ended.
 * Throws when two of them do not meet: a mistake of the sheet, never of the dimensions.
 */
export function chain(...edges: Curve[]): Curve {
  const [first, second] = edges
  if (first === undefined) return []
  const startsWell = second === undefined || same(endOf(first), startOf(second)) || same(endOf(first), endOf(second))
  const pieces: Cubic[] = [...(startsWell ? first : backwards(first))]
  for (const next of edges.slice(1)) {
    const here = endOf(pieces)
    if (same(startOf(next), here)) pieces.push(...next)
    else if (same(endOf(next), here)) pieces.push(...backwards(next))
    else throw new Error(`An edge does not begin at ${here.join(' ')}: it runs ${startOf(next)} to ${endOf(next)}.`)
  }
  return pieces
}

/** Part of a tiling. `middle` faces are half, from the centre line back to it; `side` faces lie on the driver's left. */
export interface Tile {
  readonly name: string
  readonly lies: 'middle' | 'side'
  readonly path: Curve
  /** No panel: a hole of the silhouette. */
  readonly open: boolean
}

export const middleTile = (name: string, ...edges: Curve[]): Tile => tile(name, 'middle', false, edges)
export const sideTile = (name: string, ...edges: Curve[]): Tile => tile(name, 'side', false, edges)
export const openTile = (...edges: Curve[]): Tile => tile('open', 'middle', true, edges)

function tile(name: string, lies: Tile['lies'], open: boolean, edges: readonly Curve[]): Tile {
  const path = chain(...edges)
  const closes = lies === 'middle' ? startOf(path)[1] === 0 && endOf(path)[1] === 0 : same(startOf(path), endOf(path))
  if (!closes) throw new Error(`The edges of ${name} do not close.`)
  return { name, lies, path, open }
}

/** A half from the centre line back to it, closed by its mirror image. */
export const wholeOf = (half: Curve): Curve => [...half, ...backwards(mirroredDown(half))]

/** The outer silhouette: the edges that only one tile has, walked from the front of the centre line to its rear. */
export function silhouetteOf(tiles: readonly Tile[]): Curve {
  const single = new Map<string, Cubic>()
  for (const piece of tiles.flatMap(({ path }) => path)) {
    const key = keyOf(piece)
    if (!single.delete(key)) single.set(key, piece)
  }
  const left = [...single.values()]
  const take = (at: (piece: Cubic) => boolean): Cubic | undefined => {
    const index = left.findIndex(at)
    return index < 0 ? undefined : left.splice(index, 1)[0]
  }
  const ends = left.flatMap(([a, , , d]) => [a, d]).filter(([, v]) => v === 0)
  const start = ends.reduce((a, b) => (b[0] < a[0] ? b : a), [Number.POSITIVE_INFINITY, 0] as Point)
  const half: Cubic[] = []
  for (let here = start; half.length === 0 || here[1] !== 0; ) {
    const next = take(([a, , , d]) => same(a, here) || same(d, here))
    if (next === undefined) throw new Error(`The silhouette breaks off at ${here.join(' ')}.`)
    const turned = same(next[0], here) ? next : reversed(next)
    half.push(turned)
    here = turned[3]
  }
  if (left.length > 0) throw new Error(`The silhouette leaves out ${left.length} edges, one from ${left[0]?.[0]}.`)
  return wholeOf(half)
}

function keyOf([a, b, c, d]: Cubic): string {
  const forward = a[0] < d[0] || (a[0] === d[0] && a[1] < d[1])
  const [from, one, other, to] = forward ? [a, b, c, d] : [d, c, b, a]
  return `${from} ${one} ${other} ${to}`
}
