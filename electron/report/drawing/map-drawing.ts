import type { CoatingMap, MapLayer } from '../../../shared-types/coating-map.ts'
import type { PlanPanel } from '../../../shared-types/figure.ts'
import { lineWeights, printedMarks } from '../../../shared-types/tokens.ts'
import type { PageCanvas } from '../document/page-canvas.ts'
import type { StructureElement } from '../document/structure-tree.ts'
import type { Composer } from '../layout/composer.ts'
import { breakLines, measure } from '../layout/line-breaking.ts'
import { FIELD_WIDTH_MM, LINE_MM } from '../layout/page-geometry.ts'
import { drawLine } from '../layout/text-block.ts'
import { inks, styles } from '../layout/text-style.ts'
import { onPage, type Placement, pathBox, pathOperators, UNSTROKED } from './path-operators.ts'
import { sheetScaleFor } from './scales.ts'

const TALLEST_MM = 72
const SPOT_RADIUS_MM = 0.6
const CROSS_MM = 1.4
const SWATCH_MM = { width: 6, height: 3 }

export interface MapDrawing {
  readonly scale: number
  readonly lines: number
  draw(page: PageCanvas, topMm: number, owner: StructureElement): void
}

/** One panel with the bands of a layer cut to its outline, spots with their figures, crosses to read next, and the legend. */
export function mapDrawing(composer: Composer, panel: PlanPanel, map: CoatingMap, layer: MapLayer): MapDrawing {
  const { leftMm } = composer.geometry
  const plain = { leftMm: 0, topMm: 0, scale: 1, u: 0, v: 0, pageHeightMm: composer.geometry.heightMm }
  const box = pathBox(panel.outline, plain)
  const [width, height] = [box.right - box.left, box.bottom - box.top]
  const scale = sheetScaleFor(width, height, FIELD_WIDTH_MM - 20, TALLEST_MM)
  const drawnLines = Math.ceil(height / scale / LINE_MM) + 1
  return {
    scale,
    lines: drawnLines + 2,
    draw: (page, topMm, owner) => {
      page.belongTo(owner)
      const placement: Placement = { ...plain, leftMm, topMm, scale: 1 / scale, u: box.left, v: box.top }
      const outline = pathOperators(panel.outline, placement)
      page.saved(() => {
        page.rawPath(outline, 'W n', UNSTROKED)
        for (const { path, colour } of layer.bands) page.rawPath(pathOperators(path, placement), 'f', UNSTROKED, colour)
      })
      page.rawPath(outline, 'S', { weightMm: lineWeights.silhouette.mm, colour: inks.ink, round: true })
      drawSpots(composer, page, owner, map, placement)
      map.next.forEach(({ at }, index) => {
        const { x, y } = onPage(placement, at.u, at.v)
        const style = { weightMm: lineWeights.inHand.mm, colour: inks.ink }
        page.line(x - CROSS_MM, y, x + CROSS_MM, y, style)
        page.line(x, y - CROSS_MM, x, y + CROSS_MM, style)
        word(composer, page, owner, String.fromCharCode(97 + index), x + CROSS_MM + 0.6, y + CROSS_MM + 1.2)
      })
      drawLegend(composer, page, owner, layer, leftMm, topMm + drawnLines * LINE_MM + 1)
    },
  }
}

/** A figure or a word on a patch of paper, so that it reads on every colour. */
function word(
  composer: Composer,
  page: PageCanvas,
  owner: StructureElement,
  text: string,
  x: number,
  baseline: number,
) {
  const [line] = breakLines([{ text, style: styles.lettering }], FIELD_WIDTH_MM)
  if (line === undefined) return
  page.rectangle(x - 0.3, baseline - 2, measure(text, styles.lettering) + 0.6, 2.6, null, inks.paper)
  drawLine(composer.document, page, line, x, baseline, owner)
}

function drawSpots(
  composer: Composer,
  page: PageCanvas,
  owner: StructureElement,
  { spots }: CoatingMap,
  placement: Placement,
): void {
  const style = { weightMm: printedMarks.ringLine, colour: inks.ink }
  for (const { at, um, orMore } of spots) {
    const { x, y } = onPage(placement, at.u, at.v)
    page.circle(x, y, SPOT_RADIUS_MM, style, inks.paper)
    const text = um === null ? 'no reading' : `${orMore ? '> ' : ''}${Math.round(um)}`
    word(composer, page, owner, text, x + SPOT_RADIUS_MM + 0.7, y - 0.4)
  }
}

function drawLegend(
  composer: Composer,
  page: PageCanvas,
  owner: StructureElement,
  { limits, colours, unit }: MapLayer,
  leftMm: number,
  y: number,
): void {
  let x = leftMm
  colours.forEach((colour, level) => {
    const [from, to] = [limits[level - 1], limits[level]]
    const text = from === undefined ? `under ${to}` : to === undefined ? `over ${from} ${unit}` : `${from} to ${to}`
    page.rectangle(
      x,
      y,
      SWATCH_MM.width,
      SWATCH_MM.height,
      { weightMm: lineWeights.detail.mm, colour: inks.ink },
      colour,
    )
    const [line] = breakLines([{ text, style: styles.lettering }], FIELD_WIDTH_MM)
    if (line !== undefined)
      drawLine(composer.document, page, line, x + SWATCH_MM.width + 1, y + SWATCH_MM.height - 0.6, owner)
    x += SWATCH_MM.width + measure(text, styles.lettering) + 3.5
  })
}
