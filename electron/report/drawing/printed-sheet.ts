import type { PlanSheet, PlanView } from '../../../shared-types/figure.ts'
import { planPage } from '../../../shared-types/tokens.ts'
import { FIELD_WIDTH_MM } from '../layout/page-geometry.ts'
import { sheetScaleFor } from './scales.ts'
import { isTurned, turnView } from './turned.ts'

/** Paper between the right side and the ends beneath it, in millimetres of the car: a callout and a name fit. */
const BETWEEN_VIEWS_MM = 373

export interface PrintedSheet {
  readonly sheet: PlanSheet
  /** 1 : scale, a round one. */
  readonly scale: number
  /** Whether its table stands beside it. */
  readonly beside: boolean
}

/**
 * A sheet of the plan as it stands on the page beside its table, and its scale. Where front and rear stand beside the
 * sides, they move beneath them, and what lies along the page is turned, so that a narrow column holds the car at the
 * scale the whole field would. What would come out too small all the same stands across the page.
 */
export function printedSheet(sheet: PlanSheet): PrintedSheet {
  const alongThePage = sheet.views.length === 1 && sheet.views.every(isTurned)
  const upright = alongThePage ? turned(sheet) : setUpright(sheet)
  const leastTableMm = planPage.leastTableMm[sheet.views.length === 1 ? 'oneView' : 'severalViews']
  const widthMm = FIELD_WIDTH_MM - planPage.gutterMm - leastTableMm
  const scale = sheetScaleFor(upright.widthMm, upright.heightMm, widthMm, planPage.drawingHeightMm)
  if (scale <= planPage.smallestScale) return { sheet: upright, scale, beside: true }
  // Marks of turned views are turned, so that these stay as they are.
  const wide = alongThePage ? upright : sheet
  const across = sheetScaleFor(wide.widthMm, wide.heightMm, FIELD_WIDTH_MM, planPage.drawingHeightMm)
  return { sheet: wide, scale: across, beside: false }
}

/** A sheet of one view, turned with it; the room above and beside the view stays what it was. */
function turned(sheet: PlanSheet): PlanSheet {
  const views = sheet.views.map(turnView)
  const [before, after] = [sheet.views[0]?.box, views[0]?.box]
  if (before === undefined || after === undefined) return sheet
  return {
    ...sheet,
    widthMm: sheet.widthMm + after.width - before.width,
    heightMm: sheet.heightMm + after.height - before.height,
    views,
  }
}

/** Views beside the widest ones go beneath them, flush with their edges: sides and roof, then the ends. */
function setUpright(sheet: PlanSheet): PlanSheet {
  const widest = sheet.views.reduce((found, view) => Math.max(found, view.box.width), 0)
  const first = sheet.views.find(({ box }) => box.width === widest)
  if (first === undefined) return sheet
  const [left, right] = [first.at.x, first.at.x + widest]
  const isBeside = ({ at }: PlanView) => at.x >= right
  const [ends, column] = [sheet.views.filter(isBeside), sheet.views.filter((view) => !isBeside(view))]
  const endsMm = ends.reduce((sum, { box }) => sum + box.width, 0)
  if (ends.length === 0 || endsMm > widest) return sheet
  const foot = (views: readonly PlanView[]) => Math.max(...views.map(({ at, box }) => at.y + box.height))
  const rowHeight = Math.max(...ends.map(({ box }) => box.height))
  const top = foot(column) + BETWEEN_VIEWS_MM
  const apart = ends.length > 1 ? (widest - endsMm) / (ends.length - 1) : 0
  let x = left
  const moved = new Map<PlanView, PlanView>()
  for (const view of ends) {
    // The ends stand on one ground line, as the sides do.
    moved.set(view, { ...view, at: { x, y: top + rowHeight - view.box.height } })
    x += view.box.width + apart
  }
  return {
    ...sheet,
    widthMm: right + left,
    heightMm: top + rowHeight + sheet.heightMm - foot(sheet.views),
    views: sheet.views.map((view) => moved.get(view) ?? view),
  }
}
