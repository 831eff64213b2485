import { coatingMeasures } from '../../../shared-types/coating-measures.ts'
import { printedMarks, printedRules } from '../../../shared-types/tokens.ts'
import { sheetScaleFor } from '../drawing/scales.ts'
import { drawViewPlain } from '../drawing/view-drawing.ts'
import type { Composer } from '../layout/composer.ts'
import { breakLines, measure } from '../layout/line-breaking.ts'
import { BASELINE_MM, FIELD_WIDTH_MM, LINE_MM } from '../layout/page-geometry.ts'
import { drawLine } from '../layout/text-block.ts'
import { inks, styles } from '../layout/text-style.ts'

const BELOW_GROUND_MM = 20
/** From the ground to the caption's baseline, which is one of the page's: the picture stands on whole lines. */
const CAPTION_MM = BELOW_GROUND_MM - 2 * LINE_MM + BASELINE_MM

/** The car's own left side on a ground line that runs off both edges of the page, with its dimensions as drawn. */
export function drawTitlePicture(composer: Composer, topMm: number, heightMm: number): void {
  const { flow, geometry, section, content, document } = composer
  const view = content.plan.sheets.flatMap(({ views }) => views).find(({ id }) => id === 'left')
  if (view === undefined) return
  const { length } = coatingMeasures(content.record.commission)
  const unitWord = length.unit === 'in' ? 'inches' : length.unit
  const { lengthMm, heightMm: carHeightMm, wheelbaseMm } = content.plan.dimensions
  const scale = sheetScaleFor(
    view.box.width,
    Math.max(view.box.height, carHeightMm),
    FIELD_WIDTH_MM + 1,
    heightMm - BELOW_GROUND_MM,
  )
  const owner = section.add('Figure', {
    alternative: `Left side of the car at 1 : ${scale}, line drawing. ${content.plan.textAlternative}`,
  })
  const { page } = flow
  page.belongTo(owner)
  const ground = topMm + heightMm - BELOW_GROUND_MM
  const left = geometry.leftMm + (FIELD_WIDTH_MM - view.box.width / scale) / 2
  const placement = {
    leftMm: left,
    // Views of the flanks count v upwards negative from the ground.
    topMm: ground + view.box.v / scale,
    scale: 1 / scale,
    u: view.box.u,
    v: view.box.v,
    pageHeightMm: page.heightMm,
  }
  drawViewPlain(page, view, placement)
  // Over the view's own line, so that it is one from edge to edge.
  page.line(0, ground, page.widthMm, ground, { weightMm: printedRules.ground, colour: inks.ink })
  const middle = left + view.box.width / scale / 2
  dimension(
    composer,
    owner,
    middle - lengthMm / scale / 2,
    middle + lengthMm / scale / 2,
    ground + 8,
    length.figure(lengthMm),
  )
  const caption = `Left side, 1 : ${scale}. Length over all as drawn in the body plan, ${unitWord}; wheelbase ${length.figure(wheelbaseMm)}, height ${length.figure(carHeightMm)}. Left and right are as seen from the driver’s seat.`
  const lines = breakLines([{ text: caption, style: styles.running }], FIELD_WIDTH_MM)
  const captionOwner = section.add('P')
  lines.forEach((line, index) => {
    drawLine(document, page, line, geometry.leftMm, ground + CAPTION_MM + index * LINE_MM, captionOwner)
  })
}

function dimension(
  composer: Composer,
  owner: ReturnType<Composer['section']['add']>,
  from: number,
  to: number,
  y: number,
  text: string,
): void {
  const { page } = composer.flow
  const style = { weightMm: printedMarks.dimension, colour: inks.ink }
  const width = measure(text, styles.lettering) + 4
  const middle = (from + to) / 2
  page.line(from, y, middle - width / 2, y, style)
  page.line(middle + width / 2, y, to, y, style)
  for (const x of [from, to]) page.line(x, y - 4, x, y + 1.2, style)
  const [line] = breakLines([{ text, style: styles.lettering }], 60)
  if (line !== undefined) drawLine(composer.document, page, line, middle - width / 2 + 2, y + 0.9, owner)
}
