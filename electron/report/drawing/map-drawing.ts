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

/** Where a map stands on the page: the large one alone, smaller ones beside each other with spots as points only. */
export interface MapPlace {
  readonly leftMm: number
  readonly widthMm: number
  readonly tallestMm: number
  readonly figures: boolean
}

const SPOT_RADIUS_MM = 0.6
const CROSS_MM = 1.4
const SWATCH_MM = { width: 6, height: 3 }

export interface MapDrawing {
  readonly scale: number
  readonly lines: number
  draw(page: PageCanvas, topMm: number, owner: StructureElement): void
}

/** One panel with the bands of a layer cut to its outline, spots with their figures, crosses to read next, and the legend. */
export function mapDrawing(
  composer: Composer,
  panel: PlanPanel,
  map: CoatingMap,
  layer: MapLayer,
  { leftMm, widthMm, tallestMm, figures }: MapPlace,
): MapDrawing {
  const plain = { leftMm: 0, topMm: 0, scale: 1, u: 0, v: 0, pageHeightMm: composer.geometry.heightMm }
  const box = pathBox(panel.outline, plain)
  const [width, height] = [box.right - box.left, box.bottom - box.top]
  const scale = sheetScaleFor(width, height, widthMm, tallestMm)
  const drawnLines = Math.ceil(height / scale / LINE_MM) + 1
  return {
    scale,
    lines: drawnLines + 1 + legendRows(layer, widthMm),
    draw: (page, topMm, owner) => {
      page.belongTo(owner)
      const placement: Placement = { ...plain, leftMm, topMm, scale: 1 / scale, u: box.left, v: box.top }
      const outline = pathOperators(panel.outline, placement)
      page.saved(() => {
        page.rawPath(outline, 'W n', UNSTROKED)
        for (const { path, colour } of layer.bands) {
          page.rawPath(pathOperators(path, placement), 'f', UNSTROKED, colour)
          page.rawPath(pathOperators(path, placement), 'S', { weightMm: lineWeights.detail.mm, colour: inks.ink })
        }
      })
      page.rawPath(outline, 'S', { weightMm: lineWeights.silhouette.mm, colour: inks.ink, round: true })
      for (const { from, label } of layer.bands) {
        if (label === null) continue
        const { x, y } = onPage(placement, label.u, label.v)
        word(composer, page, owner, String(from), x - 1.6, y + 0.8)
      }
      drawSpots(composer, page, owner, map, placement, figures)
      if (!figures) return drawLegend(composer, page, owner, layer, leftMm, topMm + drawnLines * LINE_MM + 1, widthMm)
      map.next.forEach(({ at }, index) => {
        const { x, y } = onPage(placement, at.u, at.v)
        const style = { weightMm: lineWeights.inHand.mm, colour: inks.ink }
        page.line(x - CROSS_MM, y, x + CROSS_MM, y, style)
        page.line(x, y - CROSS_MM, x, y + CROSS_MM, style)
        word(composer, page, owner, String.fromCharCode(97 + index), x + CROSS_MM + 0.6, y + CROSS_MM + 1.2)
      })
      drawLegend(composer, page, owner, layer, leftMm, topMm + drawnLines * LINE_MM + 1, widthMm)
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
  figures: boolean,
): void {
  const style = { weightMm: printedMarks.ringLine, colour: inks.ink }
  for (const { at, um, orMore, marked } of spots) {
    const { x, y } = onPage(placement, at.u, at.v)
    page.circle(x, y, SPOT_RADIUS_MM, style, inks.paper)
    if (marked)
      page.line(x - 2 * SPOT_RADIUS_MM, y + 2 * SPOT_RADIUS_MM, x + 2 * SPOT_RADIUS_MM, y - 2 * SPOT_RADIUS_MM, style)
    if (!figures) continue
    const text = um === null ? 'no reading' : `${orMore ? '> ' : ''}${Math.round(um)}`
    word(composer, page, owner, text, x + SPOT_RADIUS_MM + 0.7, y - 0.4)
  }
}

const legendText = ({ limits, unit }: MapLayer, level: number): string => {
  const [from, to] = [limits[level - 1], limits[level]]
  return from === undefined ? `under ${to}` : to === undefined ? `over ${from} ${unit}` : `${from} to ${to}`
}

/** Places of the swatches of a legend, in as many rows as its width asks for. */
function legendPlaces(layer: MapLayer, widthMm: number): { x: number; row: number }[] {
  let x = 0
  let row = 0
  return layer.colours.map((_, level) => {
    const own = SWATCH_MM.width + measure(legendText(layer, level), styles.lettering) + 3.5
    if (x > 0 && x + own > widthMm + 3.5) {
      x = 0
      row += 1
    }
    const place = { x, row }
    x += own
    return place
  })
}

const legendRows = (layer: MapLayer, widthMm: number): number => (legendPlaces(layer, widthMm).at(-1)?.row ?? 0) + 1

function drawLegend(
  composer: Composer,
  page: PageCanvas,
  owner: StructureElement,
  layer: MapLayer,
  leftMm: number,
  topMm: number,
  widthMm: number,
): void {
  const places = legendPlaces(layer, widthMm)
  const style = { weightMm: lineWeights.detail.mm, colour: inks.ink }
  layer.colours.forEach((colour, level) => {
    const { x, row } = places[level] ?? { x: 0, row: 0 }
    const y = topMm + row * LINE_MM
    page.rectangle(leftMm + x, y, SWATCH_MM.width, SWATCH_MM.height, style, colour)
    const [line] = breakLines([{ text: legendText(layer, level), style: styles.lettering }], FIELD_WIDTH_MM)
    if (line !== undefined)
      drawLine(composer.document, page, line, leftMm + x + SWATCH_MM.width + 1, y + SWATCH_MM.height - 0.6, owner)
  })
}
