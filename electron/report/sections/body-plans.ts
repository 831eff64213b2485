import type { PlanMarks, PlanSheet } from '../../../shared-types/figure.ts'
import { planPage } from '../../../shared-types/tokens.ts'
import { sheetDrawing } from '../drawing/sheet-drawing.ts'
import { isTurned } from '../drawing/turned.ts'
import type { Composer } from '../layout/composer.ts'
import { gap, type Piece } from '../layout/flow.ts'
import { FIELD_WIDTH_MM, LINE_MM } from '../layout/page-geometry.ts'
import { linesOf, sideBySide, stacked } from '../layout/side-by-side.ts'
import { ROWS_TOGETHER, rowLines, tableHeadLines, tablePieces } from '../layout/table.ts'
import { textPieces } from '../layout/text-block.ts'
import { styles } from '../layout/text-style.ts'
import { place } from '../wording/references.ts'
import { levelCovers } from '../wording/sentences.ts'
import { narrowRows, rowsOfSheet, wideRows } from './plan-table.ts'

/** Between one plan and the next on a page. */
const GAP_LINES = 2

/**
 * Every sheet of the plan that was walked or written on: the drawing with its numbered callouts, and beside it the table
 * that says the same. What does not fit beside it runs on over the whole field.
 */
export function composePlans(composer: Composer): void {
  const sheets = composer.content.plan.sheets.filter(({ id }) => composer.content.marks[id] !== undefined)
  if (sheets.length > 0) composer.flow.newPage()
  composer.openSection('plans', 'Body plan')
  sheets.forEach((sheet, index) => {
    const marks = composer.content.marks[sheet.id]
    if (marks === undefined) return
    composePlan(composer, sheet, marks, index === 0)
  })
  composeNotDrawn(composer)
}

/** Names the sheets that are not drawn, and why: what nobody looked at must not be missing without a word. */
function composeNotDrawn(composer: Composer): void {
  const { plan, marks, record } = composer.content
  const names = plan.sheets.filter(({ id }) => marks[id] === undefined).map(({ name }) => name)
  if (names.length === 0) return
  composer.block({ title: 'Not drawn' }, (owner) =>
    composer.text(owner, [
      {
        text: `${names.join('; ')}. Every panel there is not inspected: ${levelCovers(record.commission.level)}. Each is named under coverage, `,
        style: styles.text,
      },
      composer.page(place.section('coverage'), styles.text),
      { text: '.', style: styles.text },
    ]),
  )
}

function composePlan(composer: Composer, sheet: PlanSheet, marks: PlanMarks, opens: boolean): void {
  const { section, document, geometry, flow } = composer
  const target = place.sheet(sheet.id)
  const figure = planFigure(composer, sheet, marks, target)
  composer.bookmark(sheet.name, target)
  const head = {
    label: composer.nextTable(),
    caption: [{ text: `${figure.name}, in walking order.`, style: styles.caption }],
  }
  const rows = rowsOfSheet(sheet, marks)
  const wide = (from: number) =>
    tablePieces(document, section, geometry.leftMm, {
      ...head,
      ...wideRows(composer, rows.slice(from)),
      continued: from > 0,
    })
  const makeRoom = (lines: number) => {
    if (opens) return
    if (lines + GAP_LINES > flow.linesLeft) flow.newPage()
    else flow.place([gap(GAP_LINES)])
  }
  if (!figure.beside) {
    const table = wide(0)
    makeRoom(linesOf([...figure.pieces, ...table]))
    flow.place([stacked(figure.pieces), gap(1), ...table])
    return
  }
  const leftMm = geometry.leftMm + figure.widthMm + planPage.gutterMm
  const widthMm = FIELD_WIDTH_MM - figure.widthMm - planPage.gutterMm
  const narrow = narrowRows(composer, rows, widthMm)
  const headLines = tableHeadLines(head, widthMm)
  const heights = narrow.rows.map((row) => rowLines(narrow.columns, row))
  makeRoom(
    Math.max(
      linesOf(figure.pieces),
      heights.reduce((sum, height) => sum + height, headLines),
    ),
  )
  const beside = rowsThatFit(heights, flow.linesLeft - headLines)
  const table = tablePieces(document, section, leftMm, { ...head, ...narrow, rows: narrow.rows.slice(0, beside) })
  flow.place([sideBySide(figure.pieces, table)])
  if (beside < rows.length) flow.place(wide(beside))
}

/** How many rows stand in so many lines; those left behind are enough to stand together. */
function rowsThatFit(heights: readonly number[], lines: number): number {
  let used = 0
  const full = heights.findIndex((height) => {
    used += height
    return used > lines
  })
  if (full < 0 || heights.length < 2 * ROWS_TOGETHER) return heights.length
  return Math.max(ROWS_TOGETHER, Math.min(full, heights.length - ROWS_TOGETHER))
}

interface Planned {
  readonly name: string
  readonly widthMm: number
  readonly beside: boolean
  readonly pieces: readonly Piece[]
}

function planFigure(composer: Composer, sheet: PlanSheet, marks: PlanMarks, target: string): Planned {
  const { section, document, geometry } = composer
  const drawing = sheetDrawing(composer, sheet, marks)
  const figure = section.add('Figure', { alternative: alternative(composer, sheet, marks) })
  const drawn: Piece = {
    lines: Math.ceil(drawing.heightMm / LINE_MM) + 2,
    draw: (page, topMm) => {
      document.anchor(target, page, topMm)
      drawing.draw(page, topMm + LINE_MM, figure)
    },
  }
  const label = composer.nextFigure()
  const nose = sheet.views.some(isTurned) ? 'Nose to the top. ' : ''
  const caption = [
    { text: `${label} `, style: styles.captionStrong },
    {
      text: `${sheet.name}, 1 : ${drawing.scale}. ${nose}Ring: number in walking order, its dot lies in the panel. Dotted edges: not inspected; crossed as well: not accessible.`,
      style: styles.caption,
    },
  ]
  const place = { leftMm: geometry.leftMm, widthMm: drawing.widthMm, owner: section.add('Caption') }
  const pieces = [drawn, ...textPieces(document, caption, place)]
  return { name: label.replace('.', ''), widthMm: drawing.widthMm, beside: drawing.beside, pieces }
}

function alternative(composer: Composer, sheet: PlanSheet, marks: PlanMarks): string {
  const panels = marks.panels.map((panel) => `${panel.stop} ${panel.name}: ${panel.word}`)
  return `${sheet.name} of the ${composer.content.plan.title}. ${panels.join('; ')}.`
}
