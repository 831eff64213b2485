import type { PlanSheet, PlanView } from '../../shared-types/figure.ts'
import type { PlanPoint } from '../../shared-types/finding.ts'

/** Where a sheet of the plan stands on screen: px = origin + mm · pixelsPerMm. */
export interface PlanScale {
  readonly pixelsPerMm: number
  readonly originX: number
  readonly originY: number
}

/** How the reader has moved the sheet: `zoom` times the fitted size, about a point kept in the middle. */
export interface PlanLook {
  readonly zoom: number
  /** Sheet millimetres shown in the middle of the drawing; null for the middle of the sheet. */
  readonly middle: { readonly x: number; readonly y: number } | null
}

/** Paper left free round the drawing for captions, callouts and the height scale, px. */
const MARGIN = { left: 40, right: 20, top: 24, bottom: 34 }

/** Fits a sheet into the room there is, then applies how the reader has moved it. */
export function scaleFor(sheet: PlanSheet, width: number, height: number, look: PlanLook): PlanScale {
  const roomX = Math.max(80, width - MARGIN.left - MARGIN.right)
  const roomY = Math.max(80, height - MARGIN.top - MARGIN.bottom)
  const fitted = Math.min(roomX / sheet.widthMm, roomY / sheet.heightMm)
  const pixelsPerMm = fitted * look.zoom
  if (look.middle === null && look.zoom === 1) {
    return { pixelsPerMm, originX: MARGIN.left, originY: MARGIN.top + (roomY - sheet.heightMm * pixelsPerMm) / 2 }
  }
  const middle = look.middle ?? { x: sheet.widthMm / 2, y: sheet.heightMm / 2 }
  return {
    pixelsPerMm,
    originX: MARGIN.left + roomX / 2 - middle.x * pixelsPerMm,
    originY: MARGIN.top + roomY / 2 - middle.y * pixelsPerMm,
  }
}

/** Screen place of a point of a view. */
export function onScreen(view: PlanView, point: PlanPoint, scale: PlanScale): { x: number; y: number } {
  return sheetOnScreen({ x: view.at.x + point.u - view.box.u, y: view.at.y + point.v - view.box.v }, scale)
}

/** Screen place of a point in sheet millimetres. */
export function sheetOnScreen(
  at: { readonly x: number; readonly y: number },
  scale: PlanScale,
): { x: number; y: number } {
  return { x: scale.originX + at.x * scale.pixelsPerMm, y: scale.originY + at.y * scale.pixelsPerMm }
}

/** SVG transform that takes view millimetres to screen pixels. */
export function viewTransform(view: PlanView, scale: PlanScale): string {
  const { x, y } = onScreen(view, { u: 0, v: 0 }, scale)
  return `translate(${x.toFixed(2)} ${y.toFixed(2)}) scale(${scale.pixelsPerMm})`
}
