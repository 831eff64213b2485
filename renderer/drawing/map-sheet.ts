import type { PlanPoint } from '../../shared-types/finding.ts'
import type { ViewBox } from './outline-shape.ts'
import { type PlanLook, type Room, type SheetSize, scaleFor, sheetOnScreen, wholeSheet } from './plan-scale.ts'

/** One panel as a sheet by itself, in the middle of the room it has. */
export interface MapSheet {
  readonly sheet: SheetSize
  readonly room: Room
  /** Screen place of a view point while nothing is moved, px. */
  readonly place: (point: PlanPoint) => { readonly x: number; readonly y: number }
  /** The same in millimetres of the sheet. */
  readonly onSheet: (point: PlanPoint) => { readonly x: number; readonly y: number }
  /** View point under a place of the screen, as the drawing is moved just now. */
  readonly pointAt: (x: number, y: number, look: PlanLook) => PlanPoint
  /** SVG transform that takes view millimetres to pixels while nothing is moved. */
  readonly transform: string
}

const TALLEST_PX = 340
const LEAST_HEIGHT_PX = 120
/** What a sheet keeps free in all across and down, px. */
const [ACROSS_PX, DOWN_PX] = [60, 58]

export function mapSheet(box: ViewBox, width: number): MapSheet {
  const inner = Math.max(80, width - ACROSS_PX)
  const pixelsPerMm = Math.max(0.001, Math.min(inner / box.width, (TALLEST_PX - DOWN_PX) / box.height))
  const height = Math.max(LEAST_HEIGHT_PX, Math.ceil(box.height * pixelsPerMm) + DOWN_PX)
  const room = { width, height }
  const sheet = { widthMm: inner / pixelsPerMm, heightMm: (height - DOWN_PX) / pixelsPerMm }
  const [left, top] = [(sheet.widthMm - box.width) / 2 - box.u, (sheet.heightMm - box.height) / 2 - box.v]
  const whole = scaleFor(sheet, room, wholeSheet)
  const onSheet = ({ u, v }: PlanPoint) => ({ x: u + left, y: v + top })
  const place = (point: PlanPoint) => sheetOnScreen(onSheet(point), whole)
  const origin = place({ u: 0, v: 0 })
  return {
    sheet,
    room,
    place,
    onSheet,
    pointAt: (x, y, look) => {
      const now = scaleFor(sheet, room, look)
      return { u: (x - now.originX) / now.pixelsPerMm - left, v: (y - now.originY) / now.pixelsPerMm - top }
    },
    transform: `translate(${origin.x.toFixed(2)} ${origin.y.toFixed(2)}) scale(${whole.pixelsPerMm})`,
  }
}
