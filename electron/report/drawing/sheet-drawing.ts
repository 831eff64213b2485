import type { CalloutMark, PlanMarks, PlanSheet } from '../../../shared-types/figure.ts'
import { lineWeights, printedMarks } from '../../../shared-types/tokens.ts'
import type { PageCanvas } from '../document/page-canvas.ts'
import type { StructureElement } from '../document/structure-tree.ts'
import type { Composer } from '../layout/composer.ts'
import { breakLines, measure } from '../layout/line-breaking.ts'
import { drawLine } from '../layout/text-block.ts'
import { inks, styles } from '../layout/text-style.ts'
import { place } from '../wording/references.ts'
import { printedSheet } from './printed-sheet.ts'
import { drawLegendPatch, drawViewMarked } from './view-drawing.ts'

const { ringRadius: RING_RADIUS_MM, legendRow: LEGEND_ROW_MM, scaleBarRoom: SCALE_BAR_ROOM_MM } = printedMarks
const CAPTION_PITCH_MM = 3.2

export interface SheetDrawing {
  readonly scale: number
  readonly beside: boolean
  readonly widthMm: number
  readonly heightMm: number
  draw(page: PageCanvas, topMm: number, owner: StructureElement): void
}

/** A sheet of the plan with its marks, scale bar and legend, at the left edge of the field. */
export function sheetDrawing(composer: Composer, whole: PlanSheet, marks: PlanMarks): SheetDrawing {
  const { sheet, scale, beside } = printedSheet(whole)
  const widthMm = sheet.widthMm / scale
  const legend = legendRows(marks, widthMm)
  const legendMm = legend.length * LEGEND_ROW_MM + SCALE_BAR_ROOM_MM
  const drawnMm = sheet.heightMm / scale
  const left = composer.geometry.leftMm
  return {
    scale,
    beside,
    widthMm,
    heightMm: drawnMm + legendMm,
    draw(page, topMm, owner) {
      page.belongTo(owner)
      for (const view of sheet.views) {
        drawViewMarked(page, view, marks, {
          leftMm: left + view.at.x / scale,
          topMm: topMm + view.at.y / scale,
          scale: 1 / scale,
          u: view.box.u,
          v: view.box.v,
          pageHeightMm: page.heightMm,
        })
      }
      const onSheet = (point: { x: number; y: number }) => ({ x: left + point.x / scale, y: topMm + point.y / scale })
      for (const { text, at } of marks.captions) {
        const { x, y } = onSheet(at)
        drawCaption(composer, page, owner, text, Math.max(left, x), y, left + widthMm)
      }
      for (const callout of marks.callouts) drawCallout(composer, page, owner, callout, onSheet)
      drawScaleBar(composer, page, owner, scale, topMm + drawnMm + 3)
      drawLegend(composer, page, owner, legend, topMm + drawnMm + SCALE_BAR_ROOM_MM)
    },
  }
}

/** Name of a view; one longer than the drawing is wide grows upwards, away from the view. */
function drawCaption(
  composer: Composer,
  page: PageCanvas,
  owner: StructureElement,
  text: string,
  left: number,
  baseline: number,
  right: number,
): void {
  const lines = breakLines([{ text, style: styles.letteringStrong }], right - left)
  lines.forEach((line, index) => {
    const lift = (lines.length - 1 - index) * CAPTION_PITCH_MM
    drawLine(composer.document, page, line, left, baseline - lift, owner)
  })
}

function letter(
  composer: Composer,
  page: PageCanvas,
  owner: StructureElement,
  text: string,
  left: number,
  baseline: number,
  style: (typeof styles)[keyof typeof styles],
): void {
  const [line] = breakLines([{ text, style }], 120)
  if (line !== undefined) drawLine(composer.document, page, line, left, baseline, owner)
}

function drawCallout(
  composer: Composer,
  page: PageCanvas,
  owner: StructureElement,
  callout: CalloutMark,
  onSheet: (point: { x: number; y: number }) => { x: number; y: number },
): void {
  const ring = onSheet(callout.ring)
  const leader = callout.leader.map(onSheet)
  const style = { weightMm: lineWeights.leader.mm, colour: inks.accent }
  leader.forEach((point, index) => {
    const before = index === 0 ? ring : leader[index - 1]
    if (before !== undefined) page.line(before.x, before.y, point.x, point.y, style)
  })
  const end = leader.at(-1)
  if (end !== undefined) page.circle(end.x, end.y, printedMarks.leaderDot, null, inks.accent)
  page.circle(ring.x, ring.y, RING_RADIUS_MM, { weightMm: printedMarks.ringLine, colour: inks.accent }, inks.paper)
  const width = measure(callout.figure, styles.ring)
  letter(composer, page, owner, callout.figure, ring.x - width / 2, ring.y + 0.78, styles.ring)
  const target = [place.panel(callout.panelId), place.planRow(callout.panelId)].find((name) => composer.isKnown(name))
  if (target === undefined) return
  const box = {
    left: ring.x - RING_RADIUS_MM,
    top: ring.y - RING_RADIUS_MM,
    width: 2 * RING_RADIUS_MM,
    height: 2 * RING_RADIUS_MM,
  }
  page.link(owner.add('Link'), box, target, `${callout.figure} ${composer.panelName(callout.panelId)}`)
  page.belongTo(owner)
}

function drawScaleBar(composer: Composer, page: PageCanvas, owner: StructureElement, scale: number, y: number): void {
  const metre = 1000 / scale
  const left = composer.geometry.leftMm
  const style = { weightMm: printedMarks.dimension, colour: inks.ink }
  page.line(left, y, left + metre, y, style)
  for (const part of [0, 0.25, 0.5, 0.75, 1]) {
    page.line(left + metre * part, y - (part % 1 === 0 ? 1.4 : 0.8), left + metre * part, y, style)
  }
  letter(composer, page, owner, '0', left + 0.6, y - 1.6, styles.lettering)
  letter(composer, page, owner, '1 m', left + metre + 1, y, styles.lettering)
}

type Legend = PlanMarks['legend']

function legendRows(marks: PlanMarks, widthMm: number): readonly Legend[] {
  const rows: PlanMarks['legend'][number][][] = []
  let used = widthMm
  for (const entry of marks.legend) {
    const width = printedMarks.legendPatch.width + 2 + measure(entry.word, styles.lettering) + 5
    if (used + width - 5 > widthMm) {
      rows.push([])
      used = 0
    }
    rows.at(-1)?.push(entry)
    used += width
  }
  return rows
}

function drawLegend(
  composer: Composer,
  page: PageCanvas,
  owner: StructureElement,
  rows: readonly Legend[],
  topMm: number,
): void {
  rows.forEach((row, index) => {
    let left = composer.geometry.leftMm
    const top = topMm + index * LEGEND_ROW_MM
    for (const entry of row) {
      const { widthMm } = drawLegendPatch(page, entry, left, top)
      letter(composer, page, owner, entry.word, left + widthMm + 1.5, top + 2.3, styles.lettering)
      left += widthMm + 2 + measure(entry.word, styles.lettering) + 5
    }
  })
}
