import type { InkLine, PlanPanel } from '../../../shared-types/figure.ts'
import type { ViewId } from '../../../shared-types/finding.ts'
import { boundsOf, flattened, reversed, signedArea } from '../cubic-path.ts'
import { pathText } from '../path-text.ts'
import { type Curve, mirroredDown } from './curve.ts'
import { labelPoint } from './label-point.ts'
import type { PlanSheetFile, PlanViewFile } from './plan-sheet-file.ts'
import { settled, silhouetteOf, type Tile, wholeOf } from './tiles.ts'
import type { InkCurve } from './tray-ink.ts'

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
  const whole = [...drawing.pieces.map(({ path }) => path), ...drawing.ink.map(({ curve }) => curve)].flat()
  const bounds = boundsOf(flattened(whole, 6))
  const box = {
    u: Math.floor(bounds.u),
    v: Math.floor(bounds.v),
    width: Math.ceil(bounds.width) + 1,
    height: Math.ceil(bounds.height) + 1,
  }
  const view = viewOf(drawing, id, viewName, box, { x: margin[0], y: margin[1] })
  return {
    id,
    name: sheetName,
    widthMm: box.width + 2 * margin[0],
    heightMm: box.height + 2 * margin[1],
    views: [view],
  }
}

function viewOf(
  drawing: TrayDrawing,
  id: ViewId,
  name: string,
  box: PlanViewFile['box'],
  at: PlanViewFile['at'],
): PlanViewFile {
  const { pieces, ink } = drawing
  const covers = ink.filter(({ occlude }) => occlude).map(({ curve }) => curve)
  const panels = pieces.map(({ panelId, path, cutouts }): PlanPanel => {
    const set = pieces.filter(({ within }) => within === panelId).map((inner) => inner.path)
    const off = [...cutouts, ...set].reduce((sum, curve) => sum + Math.abs(signedArea(curve)), 0)
    const label = labelPoint(path, [...covers, ...cutouts, ...set])
    return {
      panelId,
      outline: pathText(clockwise(path), true),
      label,
      areaMm2: Math.round(Math.abs(signedArea(path)) - off),
    }
  })
  const cut = pieces.flatMap(({ cutouts }) => cutouts)
  const lines = [
    ...cut.map((curve) => ({ weight: 'detail' as const, curve, closed: true, occlude: true })),
    ...ink,
  ].map(({ weight, curve, closed, occlude }): InkLine => ({ weight, path: pathText(curve, closed), occlude }))
  return {
    id,
    name,
    box,
    at,
    panels,
    ink: lines,
    silhouette: drawing.silhouette === null ? '' : pathText(clockwise(drawing.silhouette), true),
    open: drawing.open.map((path) => pathText(clockwise(path), true)),
    set: pieces.flatMap(({ panelId, within }) => (within === null ? [] : [{ panelId, within }])),
  }
}
