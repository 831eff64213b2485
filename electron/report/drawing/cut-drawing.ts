import type { CutFigure, FigurePlace } from '../../../shared-types/coating-cut.ts'
import { lineWeights, printedMarks } from '../../../shared-types/tokens.ts'
import type { PageCanvas } from '../document/page-canvas.ts'
import type { StructureElement } from '../document/structure-tree.ts'
import type { Composer } from '../layout/composer.ts'
import { breakLines, measure } from '../layout/line-breaking.ts'
import { FIELD_WIDTH_MM, LINE_MM } from '../layout/page-geometry.ts'
import { drawLine } from '../layout/text-block.ts'
import { inks, styles } from '../layout/text-style.ts'
import { figure as figureText, NARROW } from '../wording/numbers.ts'
import { pathOperators } from './path-operators.ts'
import { WordRoom } from './word-room.ts'

const BOX_LINES = 7
const LEFT_MM = 12
const RIGHT_MM = 2
const TICK_MM = 1
const RING_MM = 0.6
const ARROW_MM = 2.2
const WORD_MM = 2.6
/** Lines above the box for the unit, and below it for the figures of the axis. */
const ABOVE_LINES = 1
const BELOW_LINES = 1

const ink = { weightMm: printedMarks.dimension, colour: inks.ink }

export interface CutDrawing {
  readonly lines: number
  draw(page: PageCanvas, topMm: number, owner: StructureElement): void
}

/** The cut of a panel on the page, by the very geometry the screen draws. */
export function cutDrawing(composer: Composer, cut: CutFigure, leftMm: number, widthMm: number): CutDrawing {
  return {
    lines: ABOVE_LINES + BOX_LINES + BELOW_LINES,
    draw: (page, topMm, owner) => {
      const box = {
        left: leftMm + LEFT_MM,
        right: leftMm + widthMm - RIGHT_MM,
        top: topMm + ABOVE_LINES * LINE_MM,
        foot: topMm + (ABOVE_LINES + BOX_LINES) * LINE_MM,
      }
      const hand: Hand = { composer, page, owner, box, pageHeightMm: composer.geometry.heightMm }
      page.belongTo(owner)
      drawStretches(hand, cut)
      drawAxes(hand, cut)
      drawReadings(hand, cut)
    },
  }
}

/** The hand that draws one cut: on which page, in which box. */
interface Hand {
  readonly composer: Composer
  readonly page: PageCanvas
  readonly owner: StructureElement
  readonly box: { readonly left: number; readonly right: number; readonly top: number; readonly foot: number }
  readonly pageHeightMm: number
}

const xOf = ({ box }: Hand, share: number): number => box.left + share * (box.right - box.left)
const yOf = ({ box }: Hand, share: number): number => box.foot - share * (box.foot - box.top)

/** Operators of a path through places of the figure. */
function operators(hand: Hand, places: readonly FigurePlace[], closed: boolean): string {
  const text = places.map(({ x, y }) => `${xOf(hand, x).toFixed(2)} ${yOf(hand, y).toFixed(2)}`).join('L')
  const onPage = { leftMm: 0, topMm: 0, scale: 1, u: 0, v: 0, pageHeightMm: hand.pageHeightMm }
  return pathOperators(`M${text}${closed ? 'Z' : ''}`, onPage)
}

function drawStretches(hand: Hand, cut: CutFigure): void {
  const { page, box } = hand
  const level = (share: number, style: Parameters<PageCanvas['line']>[4]) =>
    page.line(box.left, yOf(hand, share), box.right, yOf(hand, share), style)
  for (const { band } of cut.stretches)
    page.rawPath(operators(hand, band, true), 'B', { weightMm: lineWeights.form.mm, colour: inks.soft }, inks.hair)
  for (const share of [cut.paint.low, cut.paint.high])
    level(share, { weightMm: lineWeights.form.mm, colour: inks.ink, dashMm: [0.4, 0.6] })
  level(cut.paint.middle, { weightMm: lineWeights.detail.mm, colour: inks.ink, dashMm: [1.4, 0.7] })
  level(cut.threshold, { weightMm: lineWeights.shut.mm, colour: inks.soft })
  for (const { from, to } of cut.blanks) {
    const left = xOf(hand, from)
    page.rectangle(left, box.top, xOf(hand, to) - left, box.foot - box.top, null, inks.paper)
  }
  for (const { middle } of cut.stretches)
    page.rawPath(operators(hand, middle, false), 'S', {
      weightMm: lineWeights.outline.mm,
      colour: inks.ink,
      round: true,
    })
}

function drawAxes(hand: Hand, cut: CutFigure): void {
  const { page, box, owner } = hand
  page.belongTo(owner)
  page.line(box.left, box.top, box.left, box.foot, ink)
  page.line(box.left, box.foot, box.right, box.foot, ink)
  for (const { at } of cut.along) page.line(xOf(hand, at), box.foot, xOf(hand, at), box.foot + TICK_MM, ink)
  for (const { at } of cut.up) page.line(box.left, yOf(hand, at), box.left - TICK_MM, yOf(hand, at), ink)
  const last = cut.along.at(-1)
  for (const mark of cut.along) {
    const unit = mark === last ? `${NARROW}${cut.lengthUnit}` : ''
    const text = `${figureText(mark.value, mark.decimals)}${unit}`
    const wide = measure(text, styles.lettering)
    const left = Math.min(xOf(hand, mark.at) - wide / 2, box.right - wide)
    letter(hand, text, left, box.foot + TICK_MM + WORD_MM)
  }
  const beside = (text: string, baseline: number) =>
    letter(hand, text, box.left - TICK_MM - 0.6 - measure(text, styles.lettering), baseline)
  for (const mark of cut.up) beside(figureText(mark.value, mark.decimals), yOf(hand, mark.at) + 0.8)
  beside(cut.thicknessUnit, box.top - 1)
}

/** Readings as rings; one that went beyond the gauge has an arrow up, because it stands for more. */
function drawReadings(hand: Hand, cut: CutFigure): void {
  const { page, owner, box } = hand
  const room = new WordRoom({ left: box.left, right: box.right })
  const readings = cut.readings.map((reading) => ({ ...reading, px: xOf(hand, reading.x), py: yOf(hand, reading.y) }))
  for (const { px, py } of readings) room.take(px, py, RING_MM)
  for (const { px, py, spot, orMore } of readings) {
    const ring = { weightMm: printedMarks.ringLine, colour: inks.ink }
    page.belongTo(owner)
    if (orMore) {
      const tip = py - RING_MM - ARROW_MM
      page.line(px, py - RING_MM, px, tip, ring)
      page.line(px, tip, px - 0.6, tip + 0.8, ring)
      page.line(px, tip, px + 0.6, tip + 0.8, ring)
      room.take(px, tip + ARROW_MM / 2, ARROW_MM / 2)
    }
    page.circle(px, py, RING_MM, ring, inks.paper)
    const text = `R${NARROW}${spot}`
    const place = room.beside({ width: measure(text, styles.lettering), height: WORD_MM }, px, py, RING_MM)
    if (place !== null) letter(hand, text, place.left, place.foot - 0.6)
  }
}

function letter({ composer, page, owner }: Hand, text: string, x: number, baseline: number): void {
  const [line] = breakLines([{ text, style: styles.lettering }], FIELD_WIDTH_MM)
  if (line !== undefined) drawLine(composer.document, page, line, x, baseline, owner)
}
