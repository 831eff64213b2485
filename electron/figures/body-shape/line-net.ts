import { apart, type Cubic3, cubicReversed, type Point3 } from './space.ts'

/** A line of the body: a curve in space over a range of its parameter. */
export interface BodyLine {
  readonly at: (t: number) => Point3
  readonly from: number
  readonly to: number
  /** Parameters at which the curve changes its formula; pieces end there. */
  readonly breaks?: readonly number[]
  /** Lies in the plane of symmetry: it is its own mirror image. */
  readonly centre?: boolean
}

/** One edge of the network: a stretch of a line between two neighbouring nodes. */
export interface Edge {
  readonly id: string
  readonly centre: boolean
  readonly start: string
  readonly end: string
  readonly pieces: readonly Cubic3[]
}

/** An edge walked from its start, or backwards from its end. */
export interface Step {
  readonly edge: Edge
  readonly backwards: boolean
}

const PIECE_MM = 200
const PIECE_TURN = 0.3
const TOLERANCE_MM = 0.5

/**
 * Lines of a body with named nodes where they meet. A stretch between two nodes exists once, whoever borders on it, so
 * neighbours share it exactly, and its two neighbours give the seam its name.
 */
export class LineNet {
  readonly #lines = new Map<string, BodyLine & { readonly marks: { node: string; t: number }[] }>()
  readonly #nodes = new Map<string, Point3>()
  readonly #edges = new Map<string, Edge>()

  line(name: string, line: BodyLine): void {
    if (this.#lines.has(name)) throw new Error(`The line ${name} is drawn twice.`)
    this.#lines.set(name, { ...line, marks: [] })
  }

  /** Puts a node on a line. The first line that names a node says where it is; others must pass through it. */
  mark(line: string, node: string, t: number): void {
    const known = this.#nodes.get(node)
    const here = this.#line(line).at(t)
    if (known && apart(known, here) > TOLERANCE_MM) {
      throw new Error(`${line} misses ${node} by ${apart(known, here).toFixed(1)} mm: ${here} instead of ${known}`)
    }
    if (!known) this.#nodes.set(node, here)
    const { marks } = this.#line(line)
    marks.push({ node, t })
    marks.sort((a, b) => a.t - b.t)
  }

  /** Draws a line from one node to another; `at` runs from 0 to 1. Nodes not known yet take its ends. */
  link(name: string, start: string, end: string, at: (t: number) => Point3, centre = false): void {
    this.line(name, { at, from: 0, to: 1, centre })
    this.mark(name, start, 0)
    this.mark(name, end, 1)
  }

  node(name: string): Point3 {
    const point = this.#nodes.get(name)
    if (!point) throw new Error(`No node is called ${name}.`)
    return point
  }

  /** Every step along a line from one node to another. */
  along(name: string, start: string, end: string): Step[] {
    const { marks } = this.#line(name)
    const [from, to] = [start, end].map((node) => marks.findIndex((mark) => mark.node === node))
    if (from === undefined || to === undefined || from < 0 || to < 0) {
      throw new Error(`${name} does not pass ${from === undefined || from < 0 ? start : end}.`)
    }
    const [low, high] = [Math.min(from, to), Math.max(from, to)]
    const steps = Array.from({ length: high - low }, (_, index) => ({
      edge: this.#edge(name, low + index),
      backwards: from > to,
    }))
    return from > to ? steps.reverse() : steps
  }

  #line(name: string) {
    const line = this.#lines.get(name)
    if (!line) throw new Error(`No line is called ${name}.`)
    return line
  }

  #edge(name: string, index: number): Edge {
    const line = this.#line(name)
    const [one, other] = [line.marks[index], line.marks[index + 1]]
    if (!one || !other) throw new Error(`${name} has no stretch ${index}.`)
    const id = `${name}: ${one.node} to ${other.node}`
    const known = this.#edges.get(id)
    if (known) return known
    const pieces = fitted(line, one.t, other.t, this.node(one.node), this.node(other.node))
    const edge: Edge = { id, centre: line.centre ?? false, start: one.node, end: other.node, pieces }
    this.#edges.set(id, edge)
    return edge
  }
}

/** Pieces of an edge in walking direction. */
export const walked = ({ edge, backwards }: Step): Cubic3[] =>
  backwards ? [...edge.pieces].reverse().map(cubicReversed) : [...edge.pieces]

/** Cubic pieces through points of a curve with its own slopes there (Hermite form); ends are the nodes themselves. */
function fitted(line: BodyLine, from: number, to: number, start: Point3, end: Point3): Cubic3[] {
  const inner = (line.breaks ?? []).filter((t) => t > from + 1e-6 && t < to - 1e-6)
  const stops = [from, ...inner, to]
  const ranges = stops.slice(1).flatMap((stop, index) => {
    const begin = stops[index] ?? from
    const count = pieceCount(line.at, begin, stop)
    return Array.from({ length: count }, (_, piece): readonly [number, number] => [
      begin + ((stop - begin) * piece) / count,
      begin + ((stop - begin) * (piece + 1)) / count,
    ])
  })
  const pieces = ranges.map(([low, high]) => hermite(line.at, low, high))
  return pieces.map((piece, index) => {
    const a = index === 0 ? start : piece[0]
    const d = index === pieces.length - 1 ? end : piece[3]
    return [a, moved(piece[1], piece[0], a), moved(piece[2], piece[3], d), d]
  })
}

const moved = (point: Point3, old: Point3, now: Point3): Point3 => [
  point[0] + now[0] - old[0],
  point[1] + now[1] - old[1],
  point[2] + now[2] - old[2],
]

/** Pieces a stretch needs: none longer than a hand's span of body, none that turns by more than a sixth of a right angle. */
function pieceCount(at: (t: number) => Point3, from: number, to: number): number {
  const points = Array.from({ length: 9 }, (_, index) => at(from + ((to - from) * index) / 8))
  let [length, turn] = [0, 0]
  points.slice(1).forEach((here, index) => {
    const before = points[index] ?? here
    const next = points[index + 2]
    length += apart(before, here)
    if (next) turn += angleBetween(before, here, next)
  })
  return Math.max(length > 90 ? 2 : 1, Math.ceil(length / PIECE_MM), Math.ceil(turn / PIECE_TURN))
}

function angleBetween(a: Point3, b: Point3, c: Point3): number {
  const lengths = apart(a, b) * apart(b, c)
  if (lengths < 1e-9) return 0
  const dot = (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]) + (b[2] - a[2]) * (c[2] - b[2])
  return Math.acos(Math.max(-1, Math.min(1, dot / lengths)))
}

/** One piece with the curve's slopes at both ends, taken from inside the piece by three-point differences. */
function hermite(at: (t: number) => Point3, low: number, high: number): Cubic3 {
  const h = (high - low) * 1e-3
  const third = (high - low) / 3
  const [a, a1, a2] = [at(low), at(low + h), at(low + 2 * h)]
  const [d, d1, d2] = [at(high), at(high - h), at(high - 2 * h)]
  const leave = (i: 0 | 1 | 2) => a[i] + ((-3 * a[i] + 4 * a1[i] - a2[i]) / (2 * h)) * third
  const arrive = (i: 0 | 1 | 2) => d[i] - ((3 * d[i] - 4 * d1[i] + d2[i]) / (2 * h)) * third
  return [a, [leave(0), leave(1), leave(2)], [arrive(0), arrive(1), arrive(2)], d]
}
