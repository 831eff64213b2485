import { type Cubic, flattened, isInside, signedArea } from '../../electron/figures/cubic-path.ts'
import { readOutline } from '../../electron/figures/path-text.ts'
import type { PlanViewFile } from '../../electron/figures/plan-sheet-file.ts'
import { jointBetween } from '../../electron/sheets/joint-list.ts'
import type { BodyStyle } from '../../shared-types/words.ts'

/** A view by its name; throws where there is none. */
export const named = (views: readonly PlanViewFile[], id: string): PlanViewFile => {
  const view = views.find((one) => one.id === id)
  if (!view) throw new Error(`No view ${id}`)
  return view
}
const area = (path: string) => Math.abs(signedArea(readOutline(path)))

/** Pieces as text without direction: the same edge walked either way gives the same text. */
const edgesOf = (path: readonly Cubic[]): string[] =>
  path.map((piece) => {
    const there = piece.map((point) => point.map((value) => (value + 0).toFixed(3)).join(' '))
    return [there.join(';'), [...there].reverse().join(';')].sort()[0] ?? ''
  })

/** What is wrong with one view, in words; empty when nothing is. */
export function faultsOf(view: PlanViewFile): string[] {
  const faults: string[] = []
  const set = new Set(view.set.map(({ panelId }) => panelId))
  const ids = view.panels.map(({ panelId }) => panelId)
  if (new Set(ids).size !== ids.length) faults.push(`${view.id}: a panel has two outlines`)
  for (const { panelId, outline, label } of view.panels) {
    const path = readOutline(outline)
    const points = flattened(path, 6)
    if (path.some((piece, index) => String(piece[3]) !== String(path[(index + 1) % path.length]?.[0]))) {
      faults.push(`${view.id} ${panelId} is not closed`)
    }
    if (signedArea(path) <= 0) faults.push(`${view.id} ${panelId} runs the wrong way`)
    if (crossesItself(points)) faults.push(`${view.id} ${panelId} crosses itself`)
    if (!isInside(points, [label.u, label.v])) faults.push(`${view.id} ${panelId}: label outside`)
  }
  const tiles = [...view.panels.filter(({ panelId }) => !set.has(panelId)).map(({ outline }) => outline), ...view.open]
  const covered = tiles.reduce((sum, path) => sum + area(path), 0)
  if (Math.abs(covered / area(view.silhouette) - 1) >= 0.001)
    faults.push(`${view.id}: panels do not fill the silhouette`)
  const counts = new Map<string, number>()
  for (const edge of [...tiles, view.silhouette].flatMap((path) => edgesOf(readOutline(path)))) {
    counts.set(edge, (counts.get(edge) ?? 0) + 1)
  }
  const odd = [...counts].filter(([, count]) => count !== 2)
  if (odd.length > 0) faults.push(`${view.id}: ${odd.length} edges are not shared by exactly two`)
  for (const { panelId, within } of view.set) {
    const [inner, outer] = [panelId, within].map(
      (id) => view.panels.find((panel) => panel.panelId === id)?.outline ?? '',
    )
    const around = flattened(readOutline(outer ?? ''), 10)
    if (flattened(readOutline(inner ?? '')).some((point) => !isInside(around, point))) {
      faults.push(`${view.id}: ${panelId} is not within ${within}`)
    }
  }
  return faults
}

/** Lines may touch within the breadth of a hair; a crossing counts where both lie this far on either side, mm. */
const HAIR_MM = 0.05

function crossesItself(points: readonly (readonly [number, number])[]): boolean {
  type At = readonly [number, number]
  const off = (a: At, b: At, c: At) =>
    ((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])) / (Math.hypot(b[0] - a[0], b[1] - a[1]) || 1)
  const apart = (one: number, other: number) => one * other < 0 && Math.abs(one) > HAIR_MM && Math.abs(other) > HAIR_MM
  return points.some((a, i) => {
    const b = points[(i + 1) % points.length] ?? a
    return points.slice(i + 2).some((c, k) => {
      const j = i + 2 + k
      const d = points[(j + 1) % points.length] ?? c
      if (i === 0 && j === points.length - 1) return false
      if (Math.max(a[0], b[0]) < Math.min(c[0], d[0]) || Math.max(c[0], d[0]) < Math.min(a[0], b[0])) return false
      return apart(off(a, b, c), off(a, b, d)) && apart(off(c, d, a), off(c, d, b))
    })
  })
}

/** The two elevations are one drawing under exchanged names; plan and ends are their own mirror images. */
export function mirrorFaults(views: readonly PlanViewFile[]): string[] {
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
    const panels = new Map(sides(id).map((panel) => [panel.panelId, readOutline(panel.outline)]))
    for (const [panelId, path] of panels) {
      const other = panels.get(panelId.replace(/L$/, 'R'))
      const flipped = path.map(
        (piece) => piece.map(([u, v]) => (id === 'roof' ? [u, -v] : [-u, v])) as unknown as Cubic,
      )
      if (!panelId.endsWith('R') && (!other || String(edgesOf(flipped).sort()) !== String(edgesOf(other).sort()))) {
        faults.push(`${id} ${panelId}`)
      }
    }
  }
  return faults
}

/**
 * Corners of a panel that side, plan and an end all show must be one point in space: the stations of the side and of
 * the plan, the heights of the side and of the end, the breadths of plan and end.
 */
export function registrationFaults(views: readonly PlanViewFile[]): string[] {
  const corners = (id: string, panelId: string) =>
    readOutline(named(views, id).panels.find((panel) => panel.panelId === panelId)?.outline ?? '').map(
      ([start]) => start,
    )
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
