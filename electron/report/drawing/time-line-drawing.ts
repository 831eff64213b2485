import type { FigureSpan, TimeLineFigure, TimeLineFigureRow } from '../../../shared-types/time-line-view.ts'
import { printedMarks } from '../../../shared-types/tokens.ts'
import type { PageCanvas } from '../document/page-canvas.ts'
import type { StructureElement } from '../document/structure-tree.ts'
import type { Composer } from '../layout/composer.ts'
import type { Piece } from '../layout/flow.ts'
import { breakLines, measure } from '../layout/line-breaking.ts'
import { BASELINE_MM, FIELD_WIDTH_MM, LINE_MM } from '../layout/page-geometry.ts'
import { drawLine } from '../layout/text-block.ts'
import { inks, styles, type TextStyle } from '../layout/text-style.ts'
import { drawHatch, rectangleOperators } from './hatching.ts'

const LABEL_MM = 40
const BESIDE_MM = 20
const CONFLICT_MM = 10
const BAR_MM = 1.8
const LEAST_BAR_MM = 0.7
const AXIS_LINES = 2

const hair = { weightMm: printedMarks.axis, colour: inks.hair }
const ink = { weightMm: printedMarks.dimension, colour: inks.ink }
const dashed = { ...ink, dashMm: [0.6, 0.6] }

/** The hand that draws one figure: where its axis stands and to which element its marks belong. */
interface Hand {
  readonly composer: Composer
  readonly owner: StructureElement
  readonly figure: TimeLineFigure
  readonly left: number
  at(place: number): number
}

/** The time line as pieces of one line each, so that it may run over a page; the axis is drawn again there. */
export function timeLinePieces(composer: Composer, owner: StructureElement, figure: TimeLineFigure): Piece[] {
  const left = composer.geometry.leftMm
  const from = left + LABEL_MM + BESIDE_MM
  const width = FIELD_WIDTH_MM - LABEL_MM - BESIDE_MM - CONFLICT_MM
  const hand: Hand = { composer, owner, figure, left, at: (place) => from + place * width }
  const axis: Piece = { lines: AXIS_LINES, keep: true, draw: (page, topMm) => drawAxis(hand, page, topMm) }
  const rows = figure.rows.map(
    (row, at): Piece => ({
      lines: 1,
      // Three rows stand together at either end.
      keep: at < 2 || (at >= figure.rows.length - 3 && at < figure.rows.length - 1),
      draw: (page, topMm) => drawRow(hand, page, topMm, row, at),
      onBreak: () => [axis],
    }),
  )
  return [axis, ...rows, keyPiece(hand)]
}

function letter(hand: Hand, page: PageCanvas, text: string, style: TextStyle, x: number, baseline: number): void {
  const [line] = breakLines([{ text, style }], FIELD_WIDTH_MM)
  if (line !== undefined) drawLine(hand.composer.document, page, line, x, baseline, hand.owner)
}

/** A word cut to the room it has; the table beside the figure has it whole. */
function fitted(text: string, style: TextStyle, room: number): string {
  if (measure(text, style) <= room) return text
  let kept = Array.from(text)
  while (kept.length > 1 && measure(`${kept.join('').trim()}…`, style) > room) kept = kept.slice(0, -1)
  return `${kept.join('').trim()}…`
}

function drawAxis(hand: Hand, page: PageCanvas, topMm: number): void {
  const y = topMm + AXIS_LINES * LINE_MM - 0.6
  page.belongTo(hand.owner)
  for (const { from, to } of hand.figure.stretches) page.line(hand.at(from), y, hand.at(to), y, ink)
  hand.figure.stretches.slice(1).forEach(({ from }, at) => {
    const before = hand.at(hand.figure.stretches[at]?.to ?? 0)
    for (const x of [before, hand.at(from)]) page.line(x - 0.4, y + 0.9, x + 0.4, y - 0.9, ink)
  })
  for (const { at, kind } of hand.figure.ticks)
    page.line(hand.at(at), y, hand.at(at), y - (kind === 'year' ? 1.6 : 0.8), ink)
  for (const { at, kind, label } of hand.figure.ticks)
    if (label !== '') letter(hand, page, label, styles.lettering, hand.at(at) - (kind === 'year' ? 0.2 : 0), y - 2.3)
}

function drawRow(hand: Hand, page: PageCanvas, topMm: number, row: TimeLineFigureRow, at: number): void {
  const { figure, left } = hand
  const baseline = topMm + BASELINE_MM
  const bottom = topMm + LINE_MM
  page.belongTo(hand.owner)
  for (const tick of figure.ticks)
    if (tick.kind === 'year') page.line(hand.at(tick.at), topMm, hand.at(tick.at), bottom, hair)
  if (figure.building !== null)
    for (const edge of [figure.building.from, figure.building.to])
      page.line(hand.at(edge), topMm, hand.at(edge), bottom, dashed)
  const labelStyle = row.isBuilding ? styles.letteringStrong : styles.lettering
  letter(hand, page, fitted(row.label, labelStyle, LABEL_MM - 2), labelStyle, left, baseline)
  if (row.beside !== '')
    letter(hand, page, fitted(row.beside, styles.lettering, BESIDE_MM - 2), styles.lettering, left + LABEL_MM, baseline)
  page.belongTo(hand.owner)
  drawBars(hand, page, topMm + (LINE_MM - BAR_MM) / 2, row)
  for (const conflict of figure.conflicts) drawJoin(hand, page, topMm, conflict, at)
}

function box(hand: Hand, { from, to }: FigureSpan, top: number) {
  const left = hand.at(from)
  return { left, right: Math.max(hand.at(to), left + LEAST_BAR_MM), top, bottom: top + BAR_MM }
}

function drawBars(hand: Hand, page: PageCanvas, top: number, row: TimeLineFigureRow): void {
  const middle = top + BAR_MM / 2
  if (row.leaves !== null) {
    const [from, to] = [hand.at(row.leaves.from), hand.at(row.leaves.to)]
    page.line(from, middle, to, middle, ink)
    for (const x of [from, to]) page.line(x, middle - 0.6, x, middle + 0.6, ink)
  }
  const outline = (span: FigureSpan, style: typeof ink, fill?: string) => {
    const { left, right } = box(hand, span, top)
    page.rectangle(left, top, right - left, BAR_MM, style, fill)
  }
  for (const span of row.dropped) outline(span, dashed, inks.paper)
  for (const span of row.given) outline(span, ink, inks.paper)
  if (row.narrowed === null) return
  const own = box(hand, row.narrowed, top)
  if (row.standing === 'later than the car' || row.standing === 'earlier than usual') {
    page.rectangle(own.left, top, own.right - own.left, BAR_MM, ink, inks.paper)
    drawHatch(page, 'filler-through', rectangleOperators(page, own), own)
  } else if (row.standing !== 'not compared')
    page.rectangle(own.left, top, own.right - own.left, BAR_MM, null, inks.ink)
  else outline(row.narrowed, ink, inks.paper)
}

/** The line at the right that joins the rows of a conflict, with its number in a ring at the last of them. */
function drawJoin(
  hand: Hand,
  page: PageCanvas,
  topMm: number,
  { number, rows }: TimeLineFigure['conflicts'][number],
  at: number,
): void {
  const [first, last] = [rows[0] ?? -1, rows.at(-1) ?? -1]
  if (at < first || at > last) return
  const x = hand.at(1) + 3.5 + (number - 1) * 1.2
  const middle = topMm + LINE_MM / 2
  const style = { weightMm: printedMarks.ringLine, colour: inks.accent }
  page.line(x, at === first ? middle : topMm, x, at === last ? middle : topMm + LINE_MM, style)
  if (rows.includes(at)) page.line(hand.at(1) + 1, middle, x, middle, style)
  if (at !== last) return
  page.circle(x, middle, printedMarks.ringRadius * 0.8, style, inks.paper)
  letter(hand, page, String(number), styles.ring, x - measure(String(number), styles.ring) / 2, middle + 0.8)
  page.belongTo(hand.owner)
}

/** What the bars mean. */
function keyPiece(hand: Hand): Piece {
  const entries: readonly { readonly word: string; draw(page: PageCanvas, left: number, top: number): void }[] = [
    { word: 'said of it alone', draw: (page, left, top) => page.rectangle(left, top, 5, BAR_MM, ink) },
    { word: 'left by everything', draw: (page, left, top) => page.rectangle(left, top, 5, BAR_MM, null, inks.ink) },
    {
      word: 'later than the car',
      draw: (page, left, top) => {
        const own = { left, right: left + 5, top, bottom: top + BAR_MM }
        page.rectangle(left, top, 5, BAR_MM, ink)
        drawHatch(page, 'filler-through', rectangleOperators(page, own), own)
      },
    },
    {
      word: 'building it would leave',
      draw: (page, left, top) => page.line(left, top + BAR_MM / 2, left + 5, top + BAR_MM / 2, ink),
    },
    {
      word: 'building, by everything',
      draw: (page, left, top) => page.line(left + 2.5, top - 0.5, left + 2.5, top + BAR_MM + 0.5, dashed),
    },
  ]
  return {
    lines: 2,
    keep: true,
    draw: (page, topMm) => {
      let x = hand.left
      for (const { word, draw } of entries) {
        page.belongTo(hand.owner)
        draw(page, x, topMm + LINE_MM + (LINE_MM - BAR_MM) / 2)
        letter(hand, page, word, styles.lettering, x + 6.2, topMm + LINE_MM + BASELINE_MM)
        x += 6.2 + measure(word, styles.lettering) + 4
      }
    },
  }
}
