import { type Cubic, flattened, isInside, type Point, signedArea } from '../../electron/figures/cubic-path.ts'
import { readOutline } from '../../electron/figures/path-text.ts'
import type { PlanViewFile } from '../../electron/figures/plan-sheet-file.ts'
import { jointBetween } from '../../electron/sheets/joint-list.ts'
import type { BodyStyle } from '../../shared-types/words.ts'
import {
  crossesItself,
  edgesOf,
  type OutlineReader,
  outlineReader,
  sameEdges,
  unsharedEdges,
} from './outline-geometry.ts'

/** A view by its name; throws where there is none. */
export const named = (views: readonly PlanViewFile[], id: string): PlanViewFile => {
  const view = views.find((one) => one.id === id)
  if (!view) throw new Error(`No view ${id}`)
  return view
}
const area = (path: readonly Cubic[]) => Math.abs(signedArea(path))

/** Lines may touch within the breadth of a hair, mm. */
const HAIR_MM = 0.05

/** What is wrong with the outside of a body, in words; empty when nothing is. */
export function faultsOf(views: readonly PlanViewFile[]): string[] {
  const read = outlineReader(6)
  return [...viewFaults(views, read), ...mirrorFaults(views, read), ...registrationFaults(views, read)]
}

function viewFaults(views: readonly PlanViewFile[], read: OutlineReader): string[] {
  const told = new Map<string, readonly string[]>()
  return views.flatMap((view) => {
    const faults = view.panels.flatMap(({ panelId, outline, label }) => {
      const { path, points } = read(outline)
      const own = told.get(outline) ?? outlineFaults(path, points)
      told.set(outline, own)
      const labelled = isInside(points, [label.u, label.v]) ? own : [...own, 'has its label outside']
      return labelled.map((fault) => `${view.id} ${panelId} ${fault}`)
    })
    const ids = view.panels.map(({ panelId }) => panelId)
    if (new Set(ids).size !== ids.length) faults.push(`${view.id}: a panel has two outlines`)
    return [...faults, ...tilingFaults(view, read), ...setFaults(view, read)]
  })
}

function outlineFaults(path: readonly Cubic[], points: readonly Point[]): string[] {
  const closes = path.every((piece, index) => {
    const next = path[(index + 1) % path.length]?.[0]
    return next !== undefined && piece[3][0] === next[0] && piece[3][1] === next[1]
  })
  return [
    ...(path.length > 1 && closes ? [] : ['is not closed']),
    ...(signedArea(path) > 0 ? [] : ['runs the wrong way']),
    ...(crossesItself(points, HAIR_MM) ? ['crosses itself'] : []),
  ]
}

function tilingFaults(view: PlanViewFile, read: OutlineReader): string[] {
  const set = new Set(view.set.map(({ panelId }) => panelId))
  const panels = view.panels.filter(({ panelId }) => !set.has(panelId)).map(({ outline }) => outline)
  const tiles = [...panels, ...view.open].map(read)
  const silhouette = read(view.silhouette)
  const covered = tiles.reduce((sum, { path }) => sum + area(path), 0)
  const odd = unsharedEdges([...tiles, silhouette])
  return [
    ...(Math.abs(covered / area(silhouette.path) - 1) < 0.001 ? [] : [`${view.id}: panels do not fill the silhouette`]),
    ...(odd === 0 ? [] : [`${view.id}: ${odd} edges are not shared by exactly two`]),
  ]
}

function setFaults({ id, panels, set }: PlanViewFile, read: OutlineReader): string[] {
  return set.flatMap(({ panelId, within }) => {
    const [inner, outer] = [panelId, within].map((name) => {
      return read(panels.find((panel) => panel.panelId === name)?.outline ?? '').path
    })
    const around = flattened(outer ?? [], 10)
    const lies = flattened(inner ?? []).every((point) => isInside(around, point))
    return lies ? [] : [`${id}: ${panelId} is not within ${within}`]
  })
}

/** The two elevations are one drawing under exchanged names; plan and ends are their own mirror images. */
function mirrorFaults(views: readonly PlanViewFile[], read: OutlineReader): string[] {
  const sides = (id: string) => {
    const view = named(views, id)
    const set = new Set(view.set.map(({ panelId }) => panelId))
    return view.panels.filter(({ panelId }) => !set.has(panelId))
  }
  const right = new Map(sides('right').map((panel) => [panel.panelId, panel.outline]))
  const faults = sides('left').flatMap(({ panelId, outline }) =>
    right.get(panelId.replace(/L$/, 'R')) === outline ? [] : [`right ${panelId}`],
  )
  for (const id of ['roof', 'front', 'rear']) {
    const panels = new Map(sides(id).map((panel) => [panel.panelId, read(panel.outline)]))
    for (const [panelId, { path }] of panels) {
      if (panelId.endsWith('R')) continue
      const other = panels.get(panelId.replace(/L$/, 'R'))
      const flipped = path.map(
        (piece) => piece.map(([u, v]) => (id === 'roof' ? [u, -v] : [-u, v])) as unknown as Cubic,
      )
      if (!other || !sameEdges(edgesOf(flipped), other.edges)) faults.push(`${id} ${panelId}`)
    }
  }
  return faults
}

/**
 * Corners of a panel that side, plan and an end all show must be one point in space: the stations of the side and of
 * the plan, the heights of the side and of the end, the breadths of plan and end.
 */
function registrationFaults(views: readonly PlanViewFile[], read: OutlineReader): string[] {
  const corners = (id: string, panelId: string) =>
    read(named(views, id).panels.find((panel) => panel.panelId === panelId)?.outline ?? '').path.map(([start]) => start)
  const faults: string[] = []
  for (const [panelId, end] of [
    ['front-post-upper.L', 'front'],
    ['lamp-housing.L', 'front'],
    ['rear-lamp-housing.L', 'rear'],
  ] as const) {
    const [side, above, ahead] = [corners('left', panelId), corners('roof', panelId), corners(end, panelId)]
    if (side.length === 0) continue
    const sign = end === 'rear' ? -1 : 1
    const inSpace = side.filter(([x, v]) =>
      above.some(
        ([u, y]) =>
          Math.abs(u - x) < 0.0011 &&
          ahead.some(([w, z]) => Math.abs(sign * w - y) < 0.0011 && Math.abs(z - v) < 0.0011),
      ),
    )
    if (inSpace.length !== side.length) {
      faults.push(
        `${panelId}: ${side.length - inSpace.length} of ${side.length} corners stand elsewhere in another view`,
      )
    }
  }
  return faults
}

/** Pairs of panels that share an edge in a view although no joint of the list joins them. */
export function unnamedSeams(body: BodyStyle, views: readonly PlanViewFile[]): string[] {
  const seams = new Set<string>()
  for (const view of views) {
    const owner = new Map<string, string>()
    for (const { panelId, outline } of view.panels) {
      for (const edge of edgesOf(readOutline(outline))) {
        const other = owner.get(edge)
        if (other !== undefined && jointBetween(other, panelId, body) === null)
          seams.add([other, panelId].sort().join(' + '))
        owner.set(edge, panelId)
      }
    }
  }
  return [...seams].sort()
}
