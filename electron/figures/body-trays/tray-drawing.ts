import type { InkLine, PlanPanel } from '../../../shared-types/figure.ts'
import { reversed, signedArea } from '../cubic-path.ts'
import { type Curve, mirroredDown } from '../curve.ts'
import type { InkCurve } from '../ink-curve.ts'
import { labelPoint, type Shape, shapeOf } from '../label-point.ts'
import { pathText } from '../path-text.ts'
import type { PlanSheetFile, PlanViewFile } from '../plan-sheet-file.ts'
import { settled, silhouetteOf, type Tile, wholeOf } from './tiles.ts'

/** A panel by its own closed path. */
export interface Piece {
  readonly panelId: string
  readonly path: Curve
  /** The panel it lies in; its area is taken off there. */
  readonly within: string | null
  /** Openings: they hide what is under them and are no part of the panel's area. */
  readonly cutouts: readonly Curve[]
}

/** One sheet before it is written. */
export interface TrayDrawing {
  readonly id: 'openings' | 'bay' | 'floor' | 'under'
  readonly sheetName: string
  readonly viewName: string
  readonly pieces: readonly Piece[]
  readonly open: readonly Curve[]
  /** Null where the pieces lie loose on the sheet. */
  readonly silhouette: Curve | null
  readonly ink: readonly InkCurve[]
  /** Left on the sheet for callouts, mm: beside the drawing, above and below it. */
  readonly margin: readonly [number, number]
}

export const piece = (panelId: string, path: Curve, within: string | null = null, cutouts: Curve[] = []): Piece => ({
  panelId,
  path: settled(path),
  within,
  cutouts,
})

/** A piece for each side of the car, drawn for the driver's left. */
export const bothSides = (name: string, path: Curve, within: string | null = null, cutouts: Curve[] = []): Piece[] => [
  piece(`${name}.L`, path, within && `${within}.L`, cutouts),
  piece(`${name}.R`, mirroredDown(settled(path)), within && `${within}.R`, cutouts.map(mirroredDown)),
]

/** The pieces, holes and silhouette of a tiling, both sides of the car. */
export function tiled(tiles: readonly Tile[]): Pick<TrayDrawing, 'pieces' | 'open' | 'silhouette'> {
  const pieces = tiles
    .filter(({ open }) => !open)
    .flatMap(({ name, lies, path }) => (lies === 'middle' ? [piece(name, wholeOf(path))] : bothSides(name, path)))
  return {
    pieces,
    open: tiles.filter(({ open }) => open).map(({ path }) => wholeOf(path)),
    silhouette: silhouetteOf(tiles),
  }
}

const clockwise = (path: Curve): Curve => (signedArea(path) >= 0 ? path : [...path].reverse().map(reversed))

/** Writes a drawing as a sheet with one view. */
export function sheetOf(drawing: TrayDrawing): PlanSheetFile {
  const { id, sheetName, viewName, margin } = drawing
  const outlines = drawing.pieces.map(({ path }) => shapeOf(path))
  const inks = drawing.ink.map(({ curve }) => shapeOf(curve))
  const box = around([...outlines, ...inks].map((shape) => shape.box))
  const view: PlanViewFile = {
    id,
    name: viewName,
    box,
    at: { x: margin[0], y: margin[1] },
    panels: panelsOf(drawing, outlines, inks),
    ink: inkOf(drawing),
    silhouette: drawing.silhouette === null ? '' : pathText(clockwise(drawing.silhouette), true),
    open: drawing.open.map((path) => pathText(clockwise(path), true)),
    set: drawing.pieces.flatMap(({ panelId, within }) => (within === null ? [] : [{ panelId, within }])),
  }
  return {
    id,
    name: sheetName,
    widthMm: box.width + 2 * margin[0],
    heightMm: box.height + 2 * margin[1],
    views: [view],
  }
}

/** Whole millimetres round all boxes, with one to spare for the bulge of curves between their chords. */
function around(boxes: readonly PlanViewFile['box'][]): PlanViewFile['box'] {
  const u = Math.floor(Math.min(...boxes.map((box) => box.u))) - 1
  const v = Math.floor(Math.min(...boxes.map((box) => box.v))) - 1
  return {
    u,
    v,
    width: Math.ceil(Math.max(...boxes.map((box) => box.u + box.width))) + 1 - u,
    height: Math.ceil(Math.max(...boxes.map((box) => box.v + box.height))) + 1 - v,
  }
}

function panelsOf(
  { pieces, ink, silhouette }: TrayDrawing,
  outlines: readonly Shape[],
  inks: readonly Shape[],
): PlanPanel[] {
  const covers = inks.filter((_, index) => ink[index]?.occlude)
  const labels = new Map<string, PlanPanel['label']>()
  return pieces.map(({ panelId, path, cutouts }, index): PlanPanel => {
    const set = pieces.flatMap(({ within }, at) => (within === panelId ? [at] : []))
    const off = [...cutouts, ...set.map((at) => pieces[at]?.path ?? [])]
    const hidden = [...covers, ...cutouts.map((cutout) => shapeOf(cutout)), ...set.flatMap((at) => outlines[at] ?? [])]
    const other = silhouette === null ? undefined : labels.get(panelId.replace(/R$/, 'L'))
    const label = labelPoint(outlines[index] ?? shapeOf(path), hidden, other ? [other.u, -other.v] : null)
    labels.set(panelId, label)
    return {
      panelId,
      outline: pathText(clockwise(path), true),
      label,
      areaMm2: Math.round(off.reduce((rest, curve) => rest - Math.abs(signedArea(curve)), Math.abs(signedArea(path)))),
    }
  })
}

/** Edges of openings first, then the ink in its order. */
function inkOf({ pieces, ink }: TrayDrawing): InkLine[] {
  const cutouts = pieces.flatMap((one) => one.cutouts)
  return [...cutouts.map((curve) => ({ weight: 'detail' as const, curve, closed: true, occlude: true })), ...ink].map(
    ({ weight, curve, closed, occlude }) => ({ weight, path: pathText(curve, closed), occlude }),
  )
}
