import {
  type Cubic,
  cutAt,
  distance,
  flattened,
  isInside,
  type Point,
  pointAt,
  reversed,
  signedArea,
  slopeAt,
} from '../../electron/figures/cubic-path.ts'
import type { Curve } from './curve.ts'

/** Ends closer than this to another curve are made to lie on it, mm. */
const SNAP_MM = 0.8
const CHORDS = 20

interface HalfEdge {
  readonly cubic: Cubic
  readonly from: number
  readonly to: number
  /** Direction in which it leaves its start, radians. */
  readonly angle: number
  readonly twin: number
}

/** A face of the arrangement: one closed path, clockwise on the sheet. */
export type Face = readonly Cubic[]

/**
 * Cuts curves at all their crossings, drops loose ends and walks round every face of what is left (half-edge walk;
 * de Berg and others, Computational Geometry, 3rd edition, chapter 2). Neighbouring faces share their edges exactly,
 * because each edge exists once.
 */
export function arrange(curves: readonly Curve[]): { faces: Face[]; outsides: Face[] } {
  const pieces = cutAtCrossings(curves.flat())
  const { nodes, edges } = gathered(pieces)
  const kept = withoutLooseEnds(nodes.length, edges)
  return walk(kept)
}

function cutAtCrossings(cubics: readonly Cubic[]): Cubic[] {
  const chains = cubics.map((cubic) => Array.from({ length: CHORDS + 1 }, (_, i) => pointAt(cubic, i / CHORDS)))
  const boxes = chains.map((chain) => {
    const us = chain.map((p) => p[0])
    const vs = chain.map((p) => p[1])
    return [Math.min(...us) - 1, Math.min(...vs) - 1, Math.max(...us) + 1, Math.max(...vs) + 1] as const
  })
  const cuts: number[][] = cubics.map(() => [])
  for (let i = 0; i < cubics.length; i++) {
    for (let j = i + 1; j < cubics.length; j++) {
      const a = boxes[i] as readonly [number, number, number, number]
      const b = boxes[j] as readonly [number, number, number, number]
      if (a[0] > b[2] || b[0] > a[2] || a[1] > b[3] || b[1] > a[3]) continue
      for (const [t, s] of crossings(cubics[i] as Cubic, cubics[j] as Cubic, chains[i] ?? [], chains[j] ?? [])) {
        cuts[i]?.push(t)
        cuts[j]?.push(s)
      }
      for (const end of [0, 1]) {
        const s = touching(cubics[j] as Cubic, pointAt(cubics[i] as Cubic, end))
        if (s !== null) cuts[j]?.push(s)
        const t = touching(cubics[i] as Cubic, pointAt(cubics[j] as Cubic, end))
        if (t !== null) cuts[i]?.push(t)
      }
    }
  }
  return cubics.flatMap((cubic, index) => cutAtAll(cubic, cuts[index] ?? []))
}

function cutAtAll(cubic: Cubic, cuts: readonly number[]): Cubic[] {
  const pieces: Cubic[] = []
  let rest = cubic
  let done = 0
  for (const t of [...cuts].sort((a, b) => a - b)) {
    if (distance(pointAt(cubic, t), rest[0]) < SNAP_MM || distance(pointAt(cubic, t), cubic[3]) < SNAP_MM) continue
    const [first, second] = cutAt(rest, (t - done) / (1 - done))
    pieces.push(first)
    rest = second
    done = t
  }
  return [...pieces, rest]
}

function crossings(one: Cubic, other: Cubic, oneChain: readonly Point[], otherChain: readonly Point[]) {
  const found: [number, number][] = []
  for (let i = 0; i < CHORDS; i++) {
    for (let j = 0; j < CHORDS; j++) {
      const start = chordCrossing(
        oneChain[i] as Point,
        oneChain[i + 1] as Point,
        otherChain[j] as Point,
        otherChain[j + 1] as Point,
      )
      if (start) found.push(refined(one, other, (i + start[0]) / CHORDS, (j + start[1]) / CHORDS))
    }
  }
  return found
}

function chordCrossing(a: Point, b: Point, c: Point, d: Point): [number, number] | null {
  const across = (b[0] - a[0]) * (d[1] - c[1]) - (b[1] - a[1]) * (d[0] - c[0])
  if (Math.abs(across) < 1e-12) return null
  const t = ((c[0] - a[0]) * (d[1] - c[1]) - (c[1] - a[1]) * (d[0] - c[0])) / across
  const s = ((c[0] - a[0]) * (b[1] - a[1]) - (c[1] - a[1]) * (b[0] - a[0])) / across
  return t >= 0 && t <= 1 && s >= 0 && s <= 1 ? [t, s] : null
}

function refined(one: Cubic, other: Cubic, t0: number, s0: number): [number, number] {
  let [t, s] = [t0, s0]
  for (let round = 0; round < 12; round++) {
    const p = pointAt(one, t)
    const q = pointAt(other, s)
    const dp = slopeAt(one, t)
    const dq = slopeAt(other, s)
    const determinant = -dp[0] * dq[1] + dp[1] * dq[0]
    if (Math.abs(determinant) < 1e-9) break
    t += ((p[0] - q[0]) * dq[1] - (p[1] - q[1]) * dq[0]) / determinant
    s += ((p[0] - q[0]) * dp[1] - (p[1] - q[1]) * dp[0]) / determinant
    t = Math.max(0, Math.min(1, t))
    s = Math.max(0, Math.min(1, s))
  }
  return [t, s]
}

/** Parameter at which a curve passes a point within the snapping distance, away from its own ends. */
function touching(cubic: Cubic, point: Point): number | null {
  let best = 0
  let least = Number.POSITIVE_INFINITY
  const steps = 60
  for (let step = 0; step <= steps; step++) {
    const away = distance(pointAt(cubic, step / steps), point)
    if (away < least) {
      least = away
      best = step / steps
    }
  }
  let width = 1 / steps
  for (let round = 0; round < 40; round++) {
    for (const candidate of [best - width, best + width]) {
      const t = Math.max(0, Math.min(1, candidate))
      const away = distance(pointAt(cubic, t), point)
      if (away < least) {
        least = away
        best = t
      }
    }
    width *= 0.6
  }
  return least < SNAP_MM ? best : null
}

function gathered(pieces: readonly Cubic[]): { nodes: Point[]; edges: { cubic: Cubic; from: number; to: number }[] } {
  const nodes: Point[] = []
  const nodeAt = (point: Point): number => {
    const known = nodes.findIndex((node) => distance(node, point) < SNAP_MM)
    if (known >= 0) return known
    nodes.push([Math.round(point[0] * 1000) / 1000, Math.round(point[1] * 1000) / 1000])
    return nodes.length - 1
  }
  const edges: { cubic: Cubic; from: number; to: number }[] = []
  for (const piece of pieces) {
    const from = nodeAt(piece[0])
    const to = nodeAt(piece[3])
    if (from === to && distance(piece[0], pointAt(piece, 0.5)) < SNAP_MM) continue
    const cubic = pulled(piece, nodes[from] as Point, nodes[to] as Point)
    const twice = edges.some(
      (edge) =>
        ((edge.from === from && edge.to === to) || (edge.from === to && edge.to === from)) &&
        distance(pointAt(edge.cubic, 0.5), pointAt(cubic, 0.5)) < SNAP_MM,
    )
    if (!twice) edges.push({ cubic, from, to })
  }
  return { nodes, edges }
}

function pulled([a, b, c, d]: Cubic, from: Point, to: Point): Cubic {
  const shift = (point: Point, old: Point, now: Point): Point => [
    point[0] + now[0] - old[0],
    point[1] + now[1] - old[1],
  ]
  return [from, shift(b, a, from), shift(c, d, to), to]
}

function withoutLooseEnds(count: number, edges: readonly { cubic: Cubic; from: number; to: number }[]) {
  let kept = edges
  for (;;) {
    const degree = new Array<number>(count).fill(0)
    for (const { from, to } of kept) {
      degree[from] = (degree[from] ?? 0) + 1
      degree[to] = (degree[to] ?? 0) + 1
    }
    const next = kept.filter(({ from, to }) => (degree[from] ?? 0) > 1 && (degree[to] ?? 0) > 1)
    if (next.length === kept.length) return kept
    kept = next
  }
}

function leavingAngle(cubic: Cubic): number {
  const start = cubic[0]
  for (const t of [0.01, 0.03, 0.1, 0.3, 1]) {
    const point = pointAt(cubic, t)
    if (distance(start, point) > 0.5) return Math.atan2(point[1] - start[1], point[0] - start[0])
  }
  return 0
}

function walk(edges: readonly { cubic: Cubic; from: number; to: number }[]): { faces: Face[]; outsides: Face[] } {
  const halves: HalfEdge[] = edges.flatMap(({ cubic, from, to }, index) => [
    { cubic, from, to, angle: leavingAngle(cubic), twin: 2 * index + 1 },
    { cubic: reversed(cubic), from: to, to: from, angle: leavingAngle(reversed(cubic)), twin: 2 * index },
  ])
  const leaving = new Map<number, number[]>()
  halves.forEach((half, index) => {
    leaving.set(half.from, [...(leaving.get(half.from) ?? []), index])
  })
  for (const list of leaving.values()) {
    list.sort((a, b) => (halves[a] as HalfEdge).angle - (halves[b] as HalfEdge).angle)
  }
  const following = (index: number): number => {
    const half = halves[index] as HalfEdge
    const around = leaving.get(half.to) ?? []
    const place = around.indexOf(half.twin)
    return around[(place - 1 + around.length) % around.length] as number
  }
  const seen = new Set<number>()
  const faces: Face[] = []
  const outsides: Face[] = []
  halves.forEach((_, start) => {
    if (seen.has(start)) return
    const face: Cubic[] = []
    for (let index = start; !seen.has(index); index = following(index)) {
      seen.add(index)
      face.push((halves[index] as HalfEdge).cubic)
    }
    if (signedArea(face) > 0) faces.push(face)
    else outsides.push([...face].reverse().map(reversed))
  })
  return { faces, outsides }
}

/** The face a point lies in, or undefined. */
export const faceAt = (faces: readonly Face[], point: Point): Face | undefined =>
  faces.find((face) => isInside(flattened(face), point))
