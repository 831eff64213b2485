import type { PlanView } from '../../shared-types/figure.ts'
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

/** Where a look is kept. Drawings hear of a new one without being rendered anew. */
export interface LookSource {
  now(): PlanLook
  subscribe(hear: () => void): () => void
}

/** What is shown when nothing is moved, mm. */
export interface SheetSize {
  readonly widthMm: number
  readonly heightMm: number
}

interface ScreenPlace {
  readonly x: number
  readonly y: number
}

/** A room the drawing has, px. */
export interface Room {
  readonly width: number
  readonly height: number
}

export const wholeSheet: PlanLook = { zoom: 1, middle: null }
/** The whole sheet is the farthest; nearer than this there is nothing more to see. */
const NEAREST_ZOOM = 12

/** Paper left free round the drawing for captions, callouts and the height scale, px. */
const MARGIN = { left: 40, right: 20, top: 24, bottom: 34 }

const innerRoom = ({ width, height }: Room): Room => ({
  width: Math.max(80, width - MARGIN.left - MARGIN.right),
  height: Math.max(80, height - MARGIN.top - MARGIN.bottom),
})

/** Fits a sheet into the room there is, then applies how the reader has moved it. */
export function scaleFor(sheet: SheetSize, room: Room, look: PlanLook): PlanScale {
  const inner = innerRoom(room)
  const fitted = Math.min(inner.width / sheet.widthMm, inner.height / sheet.heightMm)
  const pixelsPerMm = fitted * look.zoom
  if (look.middle === null && look.zoom === 1) {
    return {
      pixelsPerMm,
      originX: MARGIN.left,
      originY: MARGIN.top + (inner.height - sheet.heightMm * pixelsPerMm) / 2,
    }
  }
  const middle = look.middle ?? { x: sheet.widthMm / 2, y: sheet.heightMm / 2 }
  return {
    pixelsPerMm,
    originX: MARGIN.left + inner.width / 2 - middle.x * pixelsPerMm,
    originY: MARGIN.top + inner.height / 2 - middle.y * pixelsPerMm,
  }
}

/** The look after zooming by a factor and moving by pixels, with the sheet held fast under a place of the screen. */
export function lookAbout(
  sheet: SheetSize,
  room: Room,
  look: PlanLook,
  { factor, at, by }: { readonly factor: number; readonly at: ScreenPlace; readonly by: ScreenPlace },
): PlanLook {
  const zoom = Math.min(NEAREST_ZOOM, Math.max(1, look.zoom * factor))
  if (zoom === 1) return wholeSheet
  const before = scaleFor(sheet, room, look)
  const nearer = before.pixelsPerMm * (zoom / look.zoom)
  const inner = innerRoom(room)
  const held = { x: (at.x - before.originX) / before.pixelsPerMm, y: (at.y - before.originY) / before.pixelsPerMm }
  const within = (mm: number, most: number) => Math.min(most, Math.max(0, mm))
  return {
    zoom,
    middle: {
      x: within(held.x + (MARGIN.left + inner.width / 2 - at.x - by.x) / nearer, sheet.widthMm),
      y: within(held.y + (MARGIN.top + inner.height / 2 - at.y - by.y) / nearer, sheet.heightMm),
    },
  }
}

/** How a drawing made for the whole sheet is moved to show a look: screen px = zoom · px + (x, y). */
export function movementTo(sheet: SheetSize, room: Room, look: PlanLook): { zoom: number; x: number; y: number } {
  const whole = scaleFor(sheet, room, wholeSheet)
  const now = scaleFor(sheet, room, look)
  const zoom = now.pixelsPerMm / whole.pixelsPerMm
  return { zoom, x: now.originX - zoom * whole.originX, y: now.originY - zoom * whole.originY }
}

/** Screen place of a point of a view. */
export function onScreen(view: PlanView, point: PlanPoint, scale: PlanScale): ScreenPlace {
  return sheetOnScreen({ x: view.at.x + point.u - view.box.u, y: view.at.y + point.v - view.box.v }, scale)
}

/** Screen place of a point in sheet millimetres. */
export function sheetOnScreen(at: ScreenPlace, scale: PlanScale): ScreenPlace {
  return { x: scale.originX + at.x * scale.pixelsPerMm, y: scale.originY + at.y * scale.pixelsPerMm }
}

/** SVG transform that takes view millimetres to screen pixels. */
export function viewTransform(view: PlanView, scale: PlanScale): string {
  const { x, y } = onScreen(view, { u: 0, v: 0 }, scale)
  return `translate(${x.toFixed(2)} ${y.toFixed(2)}) scale(${scale.pixelsPerMm})`
}
