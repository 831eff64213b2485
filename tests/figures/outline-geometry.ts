import { type Cubic, flattened, type Point } from '../../electron/figures/cubic-path.ts'
import { readOutline } from '../../electron/figures/path-text.ts'

/** An outline as it is checked: its pieces, chords along them, and its edges without direction. */
export interface ReadOutline {
  readonly path: readonly Cubic[]
  readonly points: readonly Point[]
  readonly edges: readonly string[]
}
export type OutlineReader = (text: string) => ReadOutline

/** Outlines read from path text, each once: the two sides of a car are one text. */
export function outlineReader(chords: number): OutlineReader {
  const known = new Map<string, ReadOutline>()
  return (text) => {
    const before = known.get(text)
    if (before) return before
    const path = readOutline(text)
    const read = { path, points: flattened(path, chords), edges: edgesOf(path) }
    known.set(text, read)
    return read
  }
}

/** Pieces as text without direction, to the micrometre: the same edge walked either way gives the same text. */
export const edgesOf = (path: readonly Cubic[]): string[] => path.map(edgeText)

const micrometres = ([u, v]: Point): string => `${Math.round(u * 1000) + 0} ${Math.round(v * 1000) + 0}`

function edgeText([a, b, c, d]: Cubic): string {
  const [start, leave, arrive, end] = [micrometres(a), micrometres(b), micrometres(c), micrometres(d)]
  const isForward = start < end || (start === end && leave <= arrive)
  return isForward ? `${start},${leave},${arrive},${end}` : `${end},${arrive},${leave},${start}`
}

/** Whether two outlines consist of the same edges. */
export function sameEdges(one: readonly string[], other: readonly string[]): boolean {
  const [edges, others] = [new Set(one), new Set(other)]
  return one.length === other.length && edges.size === others.size && one.every((edge) => others.has(edge))
}

/** Number of edges that are not shared by exactly two of the outlines. */
export function unsharedEdges(outlines: readonly Pick<ReadOutline, 'edges'>[]): number {
  const counts = new Map<string, number>()
  for (const { edges } of outlines) {
    for (const edge of edges) counts.set(edge, (counts.get(edge) ?? 0) + 1)
  }
  return [...counts.values()].filter((count) => count !== 2).length
}

interface Chord {
  readonly from: Point
  readonly to: Point
  readonly least: number
  readonly most: number
  readonly lowest: number
  readonly highest: number
}

/** Chords of a closed polygon in the order of their least station. */
export function chordsOf(polygon: readonly Point[]): readonly Chord[] {
  const chords: Chord[] = []
  let from = polygon[polygon.length - 1]
  for (const to of polygon) {
    if (from !== undefined) {
      const [least, most] = from[0] < to[0] ? [from[0], to[0]] : [to[0], from[0]]
      const [lowest, highest] = from[1] < to[1] ? [from[1], to[1]] : [to[1], from[1]]
      chords.push({ from, to, least, most, lowest, highest })
    }
    from = to
  }
  return chords.sort((one, other) => one.least - other.least)
}

const turn = (a: Point, b: Point, c: Point) => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])

/** Whether the ends of a chord lie on both sides of another, each farther than a hair from the line through it. */
function parts({ from: a, to: b }: Chord, { from: c, to: d }: Chord, hairMm: number): boolean {
  const [one, other] = [turn(a, b, c), turn(a, b, d)]
  if (one * other >= -1e-6) return false
  const breadth = hairMm * Math.hypot(b[0] - a[0], b[1] - a[1])
  return Math.abs(one) > breadth && Math.abs(other) > breadth
}

const meet = (one: Chord, other: Chord, hairMm: number): boolean =>
  one.highest >= other.lowest && other.highest >= one.lowest && parts(one, other, hairMm) && parts(other, one, hairMm)

/** Whether the chords of one polygon cross those of another. */
export function cross(one: readonly Chord[], other: readonly Chord[]): boolean {
  return one.some((chord) => {
    for (const facing of other) {
      if (facing.least > chord.most) return false
      if (facing.most >= chord.least && meet(chord, facing, 0)) return true
    }
    return false
  })
}

/**
 * Whether a closed polygon crosses itself, by a sweep along the first axis. Lines may touch within the breadth of a hair:
 * a crossing counts where both lie that far on either side.
 */
export function crossesItself(points: readonly Point[], hairMm = 0): boolean {
  const chords = chordsOf(points)
  return chords.some((chord, index) => {
    for (let next = index + 1; next < chords.length; next++) {
      const facing = chords[next]
      if (facing === undefined || facing.least > chord.most) return false
      if (meet(chord, facing, hairMm)) return true
    }
    return false
  })
}
