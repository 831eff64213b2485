import {
  boundsOf,
  type Cubic,
  distanceToEdge,
  flattened,
  isInside,
  type Point,
  signedArea,
} from '../../../electron/figures/cubic-path.ts'
import { readOutline } from '../../../electron/figures/path-text.ts'
import type { PlanSheetFile, PlanViewFile } from '../../../electron/figures/plan-sheet-file.ts'

/** Everything wrong with the geometry of a sheet, in words; empty when all is well. */
export function faultsOf(sheet: PlanSheetFile): string[] {
  return sheet.views.flatMap((view) => {
    const paths = new Map(view.panels.map(({ panelId, outline }) => [panelId, readOutline(outline)]))
    const polygons = new Map([...paths].map(([panelId, path]) => [panelId, flattened(path, 10)]))
    return [
      ...view.panels.flatMap(({ panelId, label, areaMm2 }) =>
        panelFaults(paths.get(panelId) ?? [], polygons.get(panelId) ?? [], [label.u, label.v], areaMm2).map(
          (fault) => `${panelId} ${fault}`,
        ),
      ),
      ...(new Set(view.panels.map(({ panelId }) => panelId)).size === view.panels.length
        ? []
        : ['a panel is drawn twice']),
      ...setFaults(view, polygons),
      ...(sheet.id === 'bay' || sheet.id === 'floor' ? tilingFaults(view) : apartFaults(view, polygons)),
      ...(sheet.id === 'openings' ? [] : mirrorFaults(view, paths)),
      ...boxFaults(view, polygons),
    ].map((fault) => `${sheet.id}: ${fault}`)
  })
}

function panelFaults(path: readonly Cubic[], polygon: readonly Point[], label: Point, areaMm2: number): string[] {
  const joins = path.every((piece, index) => {
    const next = path[(index + 1) % path.length]?.[0]
    return next !== undefined && piece[3][0] === next[0] && piece[3][1] === next[1]
  })
  return [
    ...(joins ? [] : ['is not one closed path']),
    ...(path.flat(2).every(Number.isFinite) ? [] : ['has a point that is no number']),
    ...(crossesItself(polygon) ? ['crosses itself'] : []),
    ...(signedArea(path) > 0 ? [] : ['does not run clockwise']),
    ...(isInside(polygon, label) && distanceToEdge(polygon, label) > 3 ? [] : ['has its label not well inside']),
    ...(areaMm2 > 0 ? [] : ['has no area']),
  ]
}

function setFaults(view: PlanViewFile, polygons: ReadonlyMap<string, readonly Point[]>): string[] {
  return view.set.flatMap(({ panelId, within }) => {
    const around = polygons.get(within) ?? []
    const inside = (polygons.get(panelId) ?? []).every((point) => isInside(around, point))
    return inside ? [] : [`${panelId} does not lie in ${within}`]
  })
}

/** Pieces as text without direction: the same edge walked either way gives the same text. */
const edgesOf = (path: readonly Cubic[]): string[] =>
  path.map((piece) => {
    const there = piece.map((point) => point.map((value) => (Math.round(value * 1000) / 1000 + 0).toFixed(3)).join(' '))
    return [there.join(';'), [...there].reverse().join(';')].sort()[0] ?? ''
  })

function tilingFaults(view: PlanViewFile): string[] {
  const set = new Set(view.set.map(({ panelId }) => panelId))
  const tiles = [
    ...view.panels.filter(({ panelId }) => !set.has(panelId)).map(({ outline }) => readOutline(outline)),
    ...view.open.map(readOutline),
  ]
  const silhouette = readOutline(view.silhouette)
  const covered = tiles.reduce((sum, path) => sum + Math.abs(signedArea(path)), 0)
  const error = Math.abs(covered / Math.abs(signedArea(silhouette)) - 1)
  const counts = new Map<string, number>()
  for (const edge of [...tiles, silhouette].flatMap(edgesOf)) counts.set(edge, (counts.get(edge) ?? 0) + 1)
  const wrong = [...counts.values()].filter((count) => count !== 2).length
  return [
    ...(error < 0.001 ? [] : [`tiles miss the silhouette by ${(error * 100).toFixed(2)} per cent`]),
    ...(wrong === 0 ? [] : [`${wrong} edges are not shared by exactly two`]),
    ...(crossesItself(flattened(silhouette, 8)) ? ['the silhouette crosses itself'] : []),
  ]
}

const firstOf = (polygon: readonly Point[]): Point => polygon[0] ?? [0, 0]

/** Pieces that lie loose must not overlap; on the underside they must lie within the silhouette too. */
function apartFaults(view: PlanViewFile, polygons: ReadonlyMap<string, readonly Point[]>): string[] {
  const all = [...polygons].map(([panelId, polygon]) => ({
    panelId,
    polygon,
    box: boundsOf(polygon),
    chords: chordsOf(polygon),
  }))
  const overlapping = all.flatMap((one, index) =>
    all.slice(index + 1).flatMap((other) => {
      const [a, b] = [one.box, other.box]
      if (a.u > b.u + b.width || b.u > a.u + a.width || a.v > b.v + b.height || b.v > a.v + a.height) return []
      const lies = isInside(other.polygon, firstOf(one.polygon)) || isInside(one.polygon, firstOf(other.polygon))
      return lies || cross(one.chords, other.chords) ? [`${one.panelId} overlaps ${other.panelId}`] : []
    }),
  )
  if (view.silhouette === '') return overlapping
  const outline = flattened(readOutline(view.silhouette), 12)
  const edge = chordsOf(outline)
  const out = all.filter(({ polygon, chords }) => !isInside(outline, firstOf(polygon)) || cross(chords, edge))
  return [...overlapping, ...out.map(({ panelId }) => `${panelId} lies outside the silhouette`)]
}

function mirrorFaults(view: PlanViewFile, paths: ReadonlyMap<string, readonly Cubic[]>): string[] {
  return view.panels.flatMap(({ panelId }) => {
    const other = paths.get(panelId.replace(/L$/, 'R'))
    if (!panelId.endsWith('.L') || other === undefined) return []
    const flipped = (paths.get(panelId) ?? []).map((piece) => piece.map(([u, v]) => [u, -v]) as unknown as Cubic)
    const [a, b] = [edgesOf(flipped).sort().join('|'), edgesOf(other).sort().join('|')]
    return a === b ? [] : [`${panelId} and its other side do not mirror`]
  })
}

function boxFaults({ box, panels }: PlanViewFile, polygons: ReadonlyMap<string, readonly Point[]>): string[] {
  const outside = ([u, v]: Point) => u < box.u || v < box.v || u > box.u + box.width || v > box.v + box.height
  return panels
    .filter(({ panelId }) => (polygons.get(panelId) ?? []).some(outside))
    .map(({ panelId }) => `${panelId} leaves the box`)
}

interface Chord {
  readonly from: Point
  readonly to: Point
  readonly least: number
  readonly most: number
}
/** Chords of a closed polygon in the order of their least station. */
const chordsOf = (polygon: readonly Point[]): Chord[] =>
  polygon
    .map((from, index): Chord => {
      const to = polygon[(index + 1) % polygon.length] ?? from
      return { from, to, least: Math.min(from[0], to[0]), most: Math.max(from[0], to[0]) }
    })
    .sort((one, other) => one.least - other.least)

const turn = (a: Point, b: Point, c: Point) => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
const meet = ({ from: a, to: b }: Chord, { from: c, to: d }: Chord) =>
  turn(a, b, c) * turn(a, b, d) < -1e-6 && turn(c, d, a) * turn(c, d, b) < -1e-6

function cross(one: readonly Chord[], other: readonly Chord[]): boolean {
  return one.some((chord) => {
    for (const facing of other) {
      if (facing.least > chord.most) return false
      if (facing.most >= chord.least && meet(chord, facing)) return true
    }
    return false
  })
}

/** Whether a closed polygon crosses itself, by a sweep along the first axis. */
export function crossesItself(points: readonly Point[]): boolean {
  const chords = chordsOf(points)
  return chords.some((chord, index) => {
    for (let next = index + 1; next < chords.length; next++) {
      const facing = chords[next]
      if (facing === undefined || facing.least > chord.most) return false
      if (meet(chord, facing)) return true
    }
    return false
  })
}
