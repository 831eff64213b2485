import type { PlanMarks, PlanSheet } from '../../../shared-types/figure.ts'
import { sheetDrawing } from '../drawing/sheet-drawing.ts'
import type { Composer } from '../layout/composer.ts'
import { LINE_MM } from '../layout/page-geometry.ts'
import { textPieces } from '../layout/text-block.ts'
import { styles } from '../layout/text-style.ts'
import { place } from '../wording/references.ts'
import { levelCovers } from '../wording/sentences.ts'

/** Every sheet of the plan that was walked or written on: the drawing with its numbered callouts, and the table that says the same. */
export function composePlans(composer: Composer): void {
  composer.openSection('plans', 'Body plan')
  const sheets = composer.content.plan.sheets.filter(({ id }) => composer.content.marks[id] !== undefined)
  sheets.forEach((sheet, index) => {
    const marks = composer.content.marks[sheet.id]
    if (marks === undefined) return
    if (index > 0) composer.flow.newPage()
    composePlan(composer, sheet, marks)
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

function composePlan(composer: Composer, sheet: PlanSheet, marks: PlanMarks): void {
  const { section, document, geometry, flow } = composer
  const drawing = sheetDrawing(composer, sheet, marks)
  const figure = section.add('Figure', { alternative: alternative(composer, sheet, marks) })
  const lines = Math.ceil(drawing.heightMm / LINE_MM) + 2
  const target = place.sheet(sheet.id)
  const caption = textPieces(
    document,
    [
      { text: `${composer.nextFigure()} `, style: styles.captionStrong },
      {
        text: `${sheet.name}, 1 : ${drawing.scale}. Ring: number in walking order, its dot lies in the panel. Dotted edges: not inspected; crossed as well: not accessible.`,
        style: styles.caption,
      },
    ],
    { leftMm: geometry.leftMm, widthMm: geometry.mainWidthMm + 40, owner: section.add('Caption') },
  )
  composer.bookmark(sheet.name, target)
  flow.place([
    {
      lines,
      keep: true,
      draw: (page, topMm) => {
        document.anchor(target, page, topMm)
        drawing.draw(page, topMm + LINE_MM, figure)
      },
    },
    ...caption,
    { lines: 1, gap: true, draw: () => {} },
  ])
  flow.place(planTable(composer, sheet, marks))
}

function alternative(composer: Composer, sheet: PlanSheet, marks: PlanMarks): string {
  const panels = marks.panels.map((panel) => `${panel.stop} ${panel.name}: ${panel.word}`)
  return `${sheet.name} of the ${composer.content.plan.title}. ${panels.join('; ')}.`
}

function planTable(composer: Composer, sheet: PlanSheet, marks: PlanMarks) {
  const onSheet = new Set(sheet.views.flatMap(({ panels }) => panels.map(({ panelId }) => panelId)))
  const rows = marks.table.filter(({ panelId }) => onSheet.has(panelId))
  const { record } = composer.content
  const cell = (text: string, style = styles.cell) => [{ text, style }]
  return composer.table(
    composer.section,
    {
      caption: cell(`Panels of figure “${sheet.name}”, in walking order.`, styles.caption),
      columns: [
        { head: '', widthMm: 8 },
        { head: 'panel', widthMm: 42 },
        { head: 'inspection', widthMm: 24 },
        { head: 'metal', widthMm: 32 },
        { head: 'paint', widthMm: 24 },
        { head: 'findings', widthMm: 20 },
        { head: 'exhibits', widthMm: 20 },
      ],
      rows: rows.map((row) => ({
        anchors: [place.planRow(row.panelId)],
        cells: [
          [composer.linked(String(row.stop), styles.cellReference, place.panel(row.panelId))],
          [composer.linked(row.name, styles.cell, place.panel(row.panelId))],
          cell(row.inspection, row.inspection === 'inspected' ? styles.cell : styles.cellSoft),
          cell(row.metal === 'not inspected' ? '—' : row.metal),
          cell(row.paint === 'not inspected' ? '—' : row.paint),
          composer.findings(
            record.findings.filter(({ panelId }) => panelId === row.panelId).map(({ number }) => number),
          ),
          composer.exhibits(
            record.exhibits.filter(({ panelId }) => panelId === row.panelId).map(({ number }) => number),
            styles.cell,
          ),
        ],
      })),
    },
    true,
  )
}
