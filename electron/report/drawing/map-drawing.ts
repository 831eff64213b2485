import type { CutLine } from '../../../shared-types/coating-cut.ts'
import type { CoatingMap, MapLayer } from '../../../shared-types/coating-map.ts'
import { coatingFigure } from '../../../shared-types/coating-measures.ts'
import type { PlanPanel } from '../../../shared-types/figure.ts'
import { lineWeights, printedMarks } from '../../../shared-types/tokens.ts'
import type { CoatingUnit } from '../../../shared-types/units.ts'
import type { PageCanvas } from '../document/page-canvas.ts'
import type { StructureElement } from '../document/structure-tree.ts'
import type { Composer } from '../layout/composer.ts'
import { breakLines, measure } from '../layout/line-breaking.ts'
import { FIELD_WIDTH_MM, LINE_MM } from '../layout/page-geometry.ts'
import { drawLine } from '../layout/text-block.ts'
import { inks, styles } from '../layout/text-style.ts'
import { onPage, type Placement, pathBox, pathOperators, UNSTROKED } from './path-operators.ts'
import { sheetScaleFor } from './scales.ts'
import { WordRoom } from './word-room.ts'

/** Where a map stands on the page: the large one alone, smaller ones beside each other with spots as points only. */
export interface MapPlace {
  readonly leftMm: number
  readonly widthMm: number
  readonly tallestMm: number
  readonly figures: boolean
  /** The line the panel is cut along in another figure; null where it is not shown. */
  readonly cut: CutLine | null
}

const SPOT_RADIUS_MM = 0.6
const CROSS_MM = 1.4
/** Half the bar through a spot whose gauge failed its check. */
const BAR_MM = 2 * SPOT_RADIUS_MM
/** Paper around a word, and height of its patch. */
const PATCH_MM = 0.3
const WORD_MM = 2.6
const CUT_DASH_MM = [3, 0.6, 0.6, 0.6]
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
  { leftMm, widthMm, tallestMm, figures, cut }: MapPlace,
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
      const room = new WordRoom({ left: leftMm, right: leftMm + widthMm })
      const spots = map.spots.map((spot) => ({ spot, ...onPage(placement, spot.at.u, spot.at.v) }))
      const crosses = figures ? map.next.map(({ at }) => onPage(placement, at.u, at.v)) : []
      for (const { x, y } of cut === null ? [] : drawCutLine(composer, page, owner, placement, cut))
        room.take(x, y, WORD_MM / 2)
      for (const { x, y } of spots) room.take(x, y, SPOT_RADIUS_MM)
      for (const { x, y } of crosses) room.take(x, y, CROSS_MM)
      for (const { x, y, spot } of spots) {
        const ring = { weightMm: printedMarks.ringLine, colour: inks.ink }
        page.circle(x, y, SPOT_RADIUS_MM, ring, inks.paper)
        if (spot.marked) page.line(x - BAR_MM, y + BAR_MM, x + BAR_MM, y - BAR_MM, ring)
        if (!figures) continue
        const text = spotText(spot, composer.content.record.commission.coatingUnit)
        word(composer, page, owner, text, room.beside(wordSize(text), x, y, SPOT_RADIUS_MM))
      }
      crosses.forEach(({ x, y }, index) => {
        const style = { weightMm: lineWeights.inHand.mm, colour: inks.ink }
        page.line(x - CROSS_MM, y, x + CROSS_MM, y, style)
        page.line(x, y - CROSS_MM, x, y + CROSS_MM, style)
        const letter = String.fromCharCode(97 + index)
        word(composer, page, owner, letter, room.beside(wordSize(letter), x, y, CROSS_MM))
      })
      for (const { level, places } of layer.bands) {
        const limit = layer.printed.limits[level - 1]
        if (limit === undefined) continue
        const onContour = places.map(({ u, v }) => onPage(placement, u, v))
        word(composer, page, owner, limit, room.atFirst(wordSize(limit), onContour))
      }
      drawLegend(composer, page, owner, layer, leftMm, topMm + drawnLines * LINE_MM + 1, widthMm)
    },
  }
}

/** The line of a cut with its ends numbered, on paper so that it is seen on every colour; answers where they stand. */
function drawCutLine(
  composer: Composer,
  page: PageCanvas,
  owner: StructureElement,
  placement: Placement,
  { from, to }: CutLine,
): readonly { readonly x: number; readonly y: number }[] {
  const [first, second] = [onPage(placement, from.u, from.v), onPage(placement, to.u, to.v)]
  page.line(first.x, first.y, second.x, second.y, { weightMm: lineWeights.detail.mm * 3, colour: inks.paper })
  page.line(first.x, first.y, second.x, second.y, {
    weightMm: lineWeights.detail.mm,
    colour: inks.ink,
    dashMm: CUT_DASH_MM,
  })
  for (const [text, { x, y }] of [
    ['1', first],
    ['2', second],
  ] as const) {
    const { width, height } = wordSize(text)
    word(composer, page, owner, text, { left: x - width / 2, foot: y + height / 2 })
    page.belongTo(owner)
  }
  return [first, second]
}

/** A figure or a word on a patch of paper, so that it reads on every colour; none where there is no room: the table has it. */
function word(
  composer: Composer,
  page: PageCanvas,
  owner: StructureElement,
  text: string,
  place: { readonly left: number; readonly foot: number } | null,
) {
  const [line] = breakLines([{ text, style: styles.lettering }], FIELD_WIDTH_MM)
  if (line === undefined || place === null) return
  const { width, height } = wordSize(text)
  page.rectangle(place.left, place.foot - height, width, height, null, inks.paper)
  drawLine(composer.document, page, line, place.left + PATCH_MM, place.foot - 2 * PATCH_MM, owner)
}

const wordSize = (text: string) => ({ width: measure(text, styles.lettering) + 2 * PATCH_MM, height: WORD_MM })

const spotText = ({ um, orMore }: CoatingMap['spots'][number], unit: CoatingUnit): string =>
  um === null ? 'no reading' : `${orMore ? '> ' : ''}${coatingFigure(um, unit)}`

const legendText = ({ printed: { limits, unit } }: MapLayer, level: number): string => {
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
