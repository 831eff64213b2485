import {
  boundsOf,
  type Cubic,
  distanceToEdge,
  flattened,
  isInside,
  type Point,
  reversed,
  signedArea,
} from '../../electron/figures/cubic-path.ts'
import { pathText, readOutline } from '../../electron/figures/path-text.ts'
import type { InkLine, PlanPanel, PlanView } from '../../shared-types/figure.ts'
import { arrange, faceAt } from './arrangement.ts'
import type { Curve } from './curve.ts'
import type { ViewDrawing } from './view-drawing.ts'

/** A view cut into panels; `open` are holes of the silhouette, `set` panels that lie in another one. */
export interface CutView extends PlanView {
  readonly open: readonly string[]
  readonly set: readonly { readonly panelId: string; readonly within: string }[]
}

/** Cuts the faces of a drawing into panels. Throws with the place of every face that nobody named. */
export function cutView(drawing: ViewDrawing): CutView {
  const parts = drawing.curves.length > 0 ? namedFaces(drawing) : []
  const areas = new Map<string, number>()
  for (const { panelId, curve } of drawing.cutouts) {
    areas.set(panelId, (areas.get(panelId) ?? 0) + Math.abs(signedArea(curve)))
  }
  const setIn = drawing.setIn.map(({ panelId, curve, within }) => {
    const path = readOutline(pathText(clockwise(curve), true))
    if (within !== null) areas.set(within, (areas.get(within) ?? 0) + signedArea(path))
    return { panelId, path }
  })
  /** What hides a panel: glass, lamps, bumpers, and panels set into it; never an outline of its own. */
  const hiding = (panelId: string): Curve[] => [
    ...drawing.cutouts.map(({ curve }) => curve),
    ...drawing.ink.filter(({ occlude }) => occlude).map(({ curve }) => curve),
    ...drawing.setIn.filter(({ within }) => within === panelId).map(({ curve }) => curve),
  ]
  const panels = [...parts.filter(({ panelId }) => !panelId.startsWith('open ')), ...setIn].map(({ panelId, path }) =>
    panelOf(panelId, path, areas.get(panelId) ?? 0, hiding(panelId)),
  )
  const { id, name, box, at } = drawing
  return {
    id,
    name,
    box,
    at,
    panels,
    ink: [
      ...drawing.cutouts.map(({ weight, curve }) => ({ weight, curve, closed: true, occlude: true })),
      ...drawing.ink,
    ].map(({ weight, curve, closed, occlude }): InkLine => ({ weight, path: pathText(curve, closed), occlude })),
    silhouette: pathText(drawing.silhouette ?? silhouetteOf(drawing), true),
    open: parts.filter(({ panelId }) => panelId.startsWith('open ')).map(({ path }) => pathText(path, true)),
    set: drawing.setIn.flatMap(({ panelId, within }) => (within === null ? [] : [{ panelId, within }])),
  }
}

function panelOf(panelId: string, path: readonly Cubic[], takenOff: number, hidden: readonly Curve[]): PlanPanel {
  return {
    panelId,
    outline: pathText(path, true),
    label: labelPoint(path, hidden),
    areaMm2: Math.round(Math.abs(signedArea(path)) - takenOff),
  }
}

const clockwise = (path: readonly Cubic[]): readonly Cubic[] =>
  signedArea(path) >= 0 ? path : [...path].reverse().map(reversed)

const exchanged = (name: string): string =>
  name.endsWith('.L') ? `${name.slice(0, -1)}R` : name.endsWith('.R') ? `${name.slice(0, -1)}L` : name

const flip = (path: readonly Cubic[], axis: 0 | 1): Cubic[] => {
  const point = ([u, v]: Point): Point => (axis === 0 ? [-u, v] : [u, -v])
  return [...path].reverse().map(([a, b, c, d]) => [point(d), point(c), point(b), point(a)] as const)
}

function halves(drawing: ViewDrawing) {
  const axis: 0 | 1 = drawing.mirror === 'u' ? 0 : 1
  const onMiddle = (piece: Cubic) => piece.every((point) => Math.abs(point[axis]) < 1e-6)
  /** The path without its stretch along the middle, made whole by its mirror image. */
  const completed = (path: readonly Cubic[]): Cubic[] => {
    const start = path.findIndex(
      (piece, index) => onMiddle(piece) && !onMiddle(path[(index + 1) % path.length] as Cubic),
    )
    const turned = [...path.slice(start + 1), ...path.slice(0, start + 1)].filter((piece) => !onMiddle(piece))
    return [...turned, ...flip(turned, axis)]
  }
  return { axis, onMiddle, completed }
}

function silhouetteOf(drawing: ViewDrawing): readonly Cubic[] {
  const { outsides } = arrange(drawing.curves)
  const largest = outsides.reduce((a, b) => (signedArea(b) > signedArea(a) ? b : a))
  return drawing.mirror === 'none' ? largest : halves(drawing).completed(largest)
}

function namedFaces(drawing: ViewDrawing): { panelId: string; path: readonly Cubic[] }[] {
  const { faces } = arrange(drawing.curves)
  const unnamed = new Set(faces)
  const named = Object.entries(drawing.faces).map(([panelId, point]) => {
    const path = faceAt(faces, point)
    if (path === undefined) throw new Error(`${drawing.id}: no face lies at the point given for ${panelId}.`)
    if (!unnamed.delete(path)) throw new Error(`${drawing.id}: the face of ${panelId} was given twice.`)
    return { panelId, path }
  })
  if (unnamed.size > 0) {
    const places = [...unnamed].map((face) => {
      const { u, v } = labelPoint(face)
      return `(${Math.round(u)}, ${Math.round(v)}) ${Math.round(signedArea(face))} mm²`
    })
    throw new Error(`${drawing.id}: faces without a name at ${places.join('; ')}`)
  }
  if (drawing.mirror === 'none') return named
  const { axis, onMiddle, completed } = halves(drawing)
  return named.flatMap(({ panelId, path }) =>
    path.some(onMiddle)
      ? [{ panelId, path: completed(path) }]
      : [
          { panelId, path },
          { panelId: exchanged(panelId), path: flip(path, axis) },
        ],
  )
}

/** A point well inside: the middle of the largest circle that fits, by refining a grid. */
export function labelPoint(path: readonly Cubic[], hidden: readonly Curve[] = []): { u: number; v: number } {
  const polygon = flattened(path, 12)
  const covers = hidden.map((curve) => flattened(curve, 8))
  const free = (point: Point) => isInside(polygon, point) && !covers.some((cover) => isInside(cover, point))
  const roomAt = (point: Point) =>
    covers.reduce((least, cover) => Math.min(least, distanceToEdge(cover, point)), distanceToEdge(polygon, point))
  const box = boundsOf(polygon)
  let best: Point = [box.u + box.width / 2, box.v + box.height / 2]
  let room = free(best) ? roomAt(best) : -1
  let [width, height] = [box.width, box.height]
  let middle = best
  for (let round = 0; round < 5; round++) {
    for (let i = 0; i <= 20; i++) {
      for (let j = 0; j <= 20; j++) {
        const point: Point = [middle[0] + (i / 20 - 0.5) * width, middle[1] + (j / 20 - 0.5) * height]
        if (!free(point)) continue
        const away = roomAt(point)
        if (away > room + 1e-6) {
          room = away
          best = point
        }
      }
    }
    middle = best
    width /= 4
    height /= 4
  }
  return { u: Math.round(best[0] * 10) / 10, v: Math.round(best[1] * 10) / 10 }
}
