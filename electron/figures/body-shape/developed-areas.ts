import { boundsOf, flattened, isInside, type Point } from '../cubic-path.ts'
import type { Shape } from '../label-point.ts'
import { readOutline } from '../path-text.ts'
import type { PlanViewFile } from '../plan-sheet-file.ts'
import type { Face } from './face.ts'
import { walked } from './line-net.ts'
import type { OutsideWork } from './outside-work.ts'
import { panelOf } from './part-names.ts'
import { type Cubic3, imageOf, mixed, type OutsideView, type Point3 } from './space.ts'

/** Views of the outside as drawn. */
export type OutsideViews = readonly PlanViewFile[]

type Surface = 'lower' | 'top' | 'roof' | 'flat'

/**
 * Developed outer area of each panel of the left half and the middle, m², windows and openings left out. Flank, bonnet
 * and roof are summed over small cells of their surface in space, each
 * given to the panel it lies in where a view shows it square; narrow posts, rails and screens by the vector area of
 * their edge (M. E. Newell's method), which is exact for flat pieces and a little small for curved ones. Metal turned
 * in at the edges is not counted.
 */
export function developedAreas(work: OutsideWork, views: OutsideViews): Map<string, number> {
  const areas = new Map<string, number>()
  const add = (panelId: string, areaMm2: number) => areas.set(panelId, (areas.get(panelId) ?? 0) + areaMm2)
  const twice = (panelId: string) => (panelId.endsWith('.L') ? 1 : 2)
  const side = shapesIn(views, 'left')
  const above = shapesIn(views, 'roof')
  const ends = { front: shapesIn(views, 'front'), rear: shapesIn(views, 'rear') }
  for (const { cells, view, shapes } of [
    { cells: lowerCells(work, 0, 1), view: 'front', shapes: ends.front },
    { cells: lowerCells(work, 1, 2), view: 'left', shapes: side },
    { cells: lowerCells(work, 2, 3), view: 'rear', shapes: ends.rear },
  ] as const) {
    for (const cell of cells) {
      // Ends are drawn for both halves: the left one lies on the other side of the middle when seen from behind.
      const panelId = panelAt(shapes, imageOf(view, cell.middle))
      if (panelId) add(panelId, cell.areaMm2 * twice(panelId))
    }
  }
  for (const [surface, cells] of [
    ['top', topCells(work)],
    ['roof', roofCells(work)],
  ] as const) {
    const own = new Set(
      work.faces
        .filter((face) => surfaceOf(face) === surface)
        .map(({ part }) => panelOf(part, work.form.body, work.conditions)),
    )
    for (const cell of cells) {
      const panelId = panelAt(above, imageOf('roof', cell.middle))
      if (panelId && own.has(panelId)) add(panelId, cell.areaMm2 * twice(panelId))
    }
  }
  for (const face of work.faces) {
    if (surfaceOf(face) !== 'flat' || face.part.startsWith('open ')) continue
    const panelId = panelOf(face.part, work.form.body, work.conditions)
    add(panelId, vectorArea(face.steps.flatMap(walked)) * twice(panelId))
  }
  for (const { panelId, within, edge } of work.set) {
    const area = vectorArea(edge)
    areas.set(panelId, area)
    if (areas.has(within)) add(within, -area)
  }
  for (const { part, middle, edge } of work.glass) {
    const panelId = panelOf(part, work.form.body, work.conditions)
    add(panelId, -vectorArea(edge) * (middle ? 1 : twice(panelId)))
  }
  return new Map([...areas].map(([panelId, areaMm2]) => [panelId, areaMm2 / 1e6]))
}

/** The surface a face lies on, from the lines it is bordered by. */
function surfaceOf({ steps }: Face): Surface {
  const borders = (...starts: string[]) => steps.some(({ edge }) => starts.some((start) => edge.id.startsWith(start)))
  if (borders('fullest', 'nose lamp outside', 'tail lamp outside', 'tail lid edge')) return 'lower'
  if (borders('roof centre')) return 'roof'
  return borders('top centre', 'bonnet side', 'lid side') ? 'top' : 'flat'
}

interface Cell {
  readonly middle: Point3
  readonly areaMm2: number
}

function cellsOf(at: (a: number, b: number) => Point3, across: number, up: number): Cell[] {
  const corner = Array.from({ length: across + 1 }, (_, i) =>
    Array.from({ length: up + 1 }, (_, j) => at(i / across, j / up)),
  )
  return Array.from({ length: across * up }, (_, index) => {
    const [i, j] = [Math.floor(index / up), index % up]
    const [a, b, c, d] = [corner[i]?.[j], corner[i + 1]?.[j], corner[i + 1]?.[j + 1], corner[i]?.[j + 1]]
    if (!a || !b || !c || !d) return { middle: [0, 0, 0], areaMm2: 0 }
    return { middle: at((i + 0.5) / across, (j + 0.5) / up), areaMm2: triangle(a, b, c) + triangle(a, c, d) }
  })
}

/** Nose (0 to 1), flank (1 to 2) or tail (2 to 3) of the body below the crest. */
const lowerCells = ({ form }: OutsideWork, from: number, to: number): Cell[] =>
  cellsOf((along, level) => form.lower.at(mixed(from, to, along), level * 2), 110, 96)

function topCells({ form }: OutsideWork): Cell[] {
  const { lower, upper, description } = form
  const strip = (from: number, to: number) =>
    cellsOf(
      (along, share) => {
        const x = mixed(from, to, along)
        return upper.onTop(x, lower.crest(lower.roundAt('crest', x))[1] * share)
      },
      70,
      18,
    )
  const front = strip(lower.crest(0)[0] + 0.5, upper.screenCorner[0])
  if (description.tail !== 'deck') return front
  return [...front, ...strip(upper.rearCorner[0], lower.crest(3)[0] - 0.5)]
}

const roofCells = ({ form: { upper } }: OutsideWork): Cell[] =>
  cellsOf(
    (along, share) => {
      const x = mixed(upper.header[0], upper.roofRear[0], along)
      return upper.onRoof(x, upper.gutter(x)[1] * share)
    },
    50,
    14,
  )

type Shapes = readonly { readonly panelId: string; readonly shape: Pick<Shape, 'points' | 'box'> }[]

/** Outlines of a view, those left out that lie in others. */
function shapesIn(views: OutsideViews, id: OutsideView): Shapes {
  const view = views.find((one) => one.id === id)
  const set = new Set(view?.set.map(({ panelId }) => panelId))
  const panels = view?.panels.filter(({ panelId }) => !set.has(panelId)) ?? []
  return panels.map(({ panelId, outline }) => {
    const points = flattened(readOutline(outline), 8)
    return { panelId, shape: { points, box: boundsOf(points) } }
  })
}

/** The panel whose outline a point of a view lies in. */
const panelAt = (shapes: Shapes, [u, v]: Point): string | undefined =>
  shapes.find(
    ({ shape: { box, points } }) =>
      u >= box.u && u <= box.u + box.width && v >= box.v && v <= box.v + box.height && isInside(points, [u, v]),
  )?.panelId

function triangle(a: Point3, b: Point3, c: Point3): number {
  const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]]
  const [vx, vy, vz] = [c[0] - a[0], c[1] - a[1], c[2] - a[2]]
  return Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx) / 2
}

/** Length of the vector area of a closed line in space, mm². */
function vectorArea(edge: readonly Cubic3[]): number {
  const points = edge.flatMap(([a, b, c, d]) => [0, 0.25, 0.5, 0.75].map((t) => onCubic(a, b, c, d, t)))
  let [x, y, z] = [0, 0, 0]
  points.forEach((p, index) => {
    const q = points[(index + 1) % points.length] ?? p
    x += p[1] * q[2] - p[2] * q[1]
    y += p[2] * q[0] - p[0] * q[2]
    z += p[0] * q[1] - p[1] * q[0]
  })
  return Math.hypot(x, y, z) / 2
}

function onCubic(a: Point3, b: Point3, c: Point3, d: Point3, t: number): Point3 {
  const u = 1 - t
  const at = (i: 0 | 1 | 2) => u ** 3 * a[i] + 3 * u * u * t * b[i] + 3 * u * t * t * c[i] + t ** 3 * d[i]
  return [at(0), at(1), at(2)]
}
