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
import {
  chordsOf,
  cross,
  crossesItself,
  edgesOf,
  type OutlineReader,
  outlineReader,
  type ReadOutline,
  sameEdges,
  unsharedEdges,
} from '../outline-geometry.ts'

/** Everything wrong with the geometry of a sheet, in words; empty when all is well. */
export function faultsOf(sheet: PlanSheetFile): string[] {
  return sheet.views.flatMap((view) => {
    const read = outlineReader(10)
    const outlines = new Map(view.panels.map(({ panelId, outline }) => [panelId, read(outline)]))
    const polygons = new Map([...outlines].map(([panelId, { points }]) => [panelId, points]))
    return [
      ...view.panels.flatMap(({ panelId, outline, label, areaMm2 }) =>
        panelFaults(read(outline), [label.u, label.v], areaMm2).map((fault) => `${panelId} ${fault}`),
      ),
      ...(new Set(view.panels.map(({ panelId }) => panelId)).size === view.panels.length
        ? []
        : ['a panel is drawn twice']),
      ...setFaults(view, polygons),
      ...(sheet.id === 'bay' || sheet.id === 'floor' ? tilingFaults(view, read) : apartFaults(view, polygons)),
      ...(sheet.id === 'openings' ? [] : mirrorFaults(view, outlines)),
      ...boxFaults(view, polygons),
    ].map((fault) => `${sheet.id}: ${fault}`)
  })
}

function panelFaults({ path, points: polygon }: ReadOutline, label: Point, areaMm2: number): string[] {
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

function tilingFaults(view: PlanViewFile, read: OutlineReader): string[] {
  const set = new Set(view.set.map(({ panelId }) => panelId))
  const tiles = [
    ...view.panels.filter(({ panelId }) => !set.has(panelId)).map(({ outline }) => read(outline)),
    ...view.open.map(read),
  ]
  const silhouette = read(view.silhouette)
  const covered = tiles.reduce((sum, { path }) => sum + Math.abs(signedArea(path)), 0)
  const error = Math.abs(covered / Math.abs(signedArea(silhouette.path)) - 1)
  const wrong = unsharedEdges([...tiles, silhouette])
  return [
    ...(error < 0.001 ? [] : [`tiles miss the silhouette by ${(error * 100).toFixed(2)} per cent`]),
    ...(wrong === 0 ? [] : [`${wrong} edges are not shared by exactly two`]),
    ...(crossesItself(flattened(silhouette.path, 8)) ? ['the silhouette crosses itself'] : []),
  ]
}

const firstOf = (polygon: readonly Point[]): Point => polygon[0] ?? [0, 0]

/** Pieces that lie loose must not overlap; on the underside they must lie within the silhouette too. */
function apartFaults(view: PlanViewFile, polygons: ReadonlyMap<string, readonly Point[]>): string[] {
  const all = view.panels.map(({ panelId, label }) => {
    const polygon = polygons.get(panelId) ?? []
    return { panelId, polygon, label: [label.u, label.v] as const, box: boundsOf(polygon), chords: chordsOf(polygon) }
  })
  /** Also where two outlines run alike, so that neither crosses the other. */
  const covers = (one: (typeof all)[number], other: (typeof all)[number]) =>
    isInside(one.polygon, firstOf(other.polygon)) || isInside(one.polygon, other.label)
  const overlapping = all.flatMap((one, index) =>
    all.slice(index + 1).flatMap((other) => {
      const [a, b] = [one.box, other.box]
      if (a.u > b.u + b.width || b.u > a.u + a.width || a.v > b.v + b.height || b.v > a.v + a.height) return []
      const lies = covers(one, other) || covers(other, one)
      return lies || cross(one.chords, other.chords) ? [`${one.panelId} overlaps ${other.panelId}`] : []
    }),
  )
  if (view.silhouette === '') return overlapping
  const outline = flattened(readOutline(view.silhouette), 12)
  const edge = chordsOf(outline)
  const out = all.filter(({ polygon, chords }) => !isInside(outline, firstOf(polygon)) || cross(chords, edge))
  return [...overlapping, ...out.map(({ panelId }) => `${panelId} lies outside the silhouette`)]
}

function mirrorFaults(view: PlanViewFile, outlines: ReadonlyMap<string, ReadOutline>): string[] {
  return view.panels.flatMap(({ panelId }) => {
    const other = outlines.get(panelId.replace(/L$/, 'R'))
    if (!panelId.endsWith('.L') || other === undefined) return []
    const flipped = (outlines.get(panelId)?.path ?? []).map(
      (piece) => piece.map(([u, v]) => [u, -v]) as unknown as Cubic,
    )
    return sameEdges(edgesOf(flipped), other.edges) ? [] : [`${panelId} and its other side do not mirror`]
  })
}

function boxFaults({ box, panels }: PlanViewFile, polygons: ReadonlyMap<string, readonly Point[]>): string[] {
  const outside = ([u, v]: Point) => u < box.u || v < box.v || u > box.u + box.width || v > box.v + box.height
  return panels
    .filter(({ panelId }) => (polygons.get(panelId) ?? []).some(outside))
    .map(({ panelId }) => `${panelId} leaves the box`)
}
