import type { PlanMarks, PlanSheet, PlanTableRow } from '../../../shared-types/figure.ts'
import type { Composer } from '../layout/composer.ts'
import type { Rich } from '../layout/line-breaking.ts'
import { FIELD_WIDTH_MM } from '../layout/page-geometry.ts'
import type { Column, TableContent } from '../layout/table.ts'
import { styles, type TextStyle } from '../layout/text-style.ts'
import { place } from '../wording/references.ts'
import { panelStateWords } from '../wording/sentences.ts'

const NUMBER_MM = 7
const SEE_MM = 16

const cell = (text: string, style: TextStyle = styles.cell): Rich => [{ text, style }]

/** Rows of the panels a sheet shows, in walking order. */
export function rowsOfSheet(sheet: PlanSheet, marks: PlanMarks): readonly PlanTableRow[] {
  const onSheet = new Set(sheet.views.flatMap(({ panels }) => panels.map(({ panelId }) => panelId)))
  return marks.table.filter(({ panelId }) => onSheet.has(panelId))
}

type Columns = Pick<TableContent, 'columns' | 'rows'>

const numberOf = (composer: Composer, row: PlanTableRow): Rich => [
  composer.linked(String(row.stop), styles.cellReference, place.panel(row.panelId)),
]
const nameOf = (composer: Composer, row: PlanTableRow): Rich => [
  composer.linked(row.name, styles.cell, place.panel(row.panelId)),
]
const anchorsOf = (row: PlanTableRow): readonly string[] => [place.planRow(row.panelId)]

const findingsOf = ({ content }: Composer, { panelId }: PlanTableRow): readonly number[] =>
  content.record.findings.filter((finding) => finding.panelId === panelId).map(({ number }) => number)
const exhibitsOf = ({ content }: Composer, { panelId }: PlanTableRow): readonly number[] =>
  content.record.exhibits.filter((exhibit) => exhibit.panelId === panelId).map(({ number }) => number)

/** Beside the figure: the panel and under it what was seen, findings and under them exhibits. */
export function narrowRows(composer: Composer, rows: readonly PlanTableRow[], widthMm: number): Columns {
  const columns: readonly Column[] = [
    { head: '', widthMm: NUMBER_MM },
    { head: 'panel; metal; paint', widthMm: widthMm - NUMBER_MM - SEE_MM },
    { head: 'see', widthMm: SEE_MM },
  ]
  const see = (row: PlanTableRow): Rich => {
    const [findings, exhibits] = [findingsOf(composer, row), exhibitsOf(composer, row)]
    if (findings.length === 0) return composer.exhibits(exhibits)
    if (exhibits.length === 0) return composer.findings(findings)
    return [...composer.findings(findings), { text: '\n', style: styles.cell }, ...composer.exhibits(exhibits)]
  }
  return {
    columns,
    rows: rows.map((row) => ({
      anchors: anchorsOf(row),
      cells: [
        numberOf(composer, row),
        [
          ...nameOf(composer, row),
          { text: '\n', style: styles.cell },
          { text: panelStateWords(row), style: styles.cellSoft },
        ],
        see(row),
      ],
    })),
  }
}

/** Over the whole field, where the table runs on. */
export function wideRows(composer: Composer, rows: readonly PlanTableRow[]): Columns {
  const [panel, inspection, metal, paint, findings] = [50, 23, 31, 23, 17]
  const columns: readonly Column[] = [
    { head: '', widthMm: NUMBER_MM },
    { head: 'panel', widthMm: panel },
    { head: 'inspection', widthMm: inspection },
    { head: 'metal', widthMm: metal },
    { head: 'paint', widthMm: paint },
    { head: 'findings', widthMm: findings },
    { head: 'exhibits', widthMm: FIELD_WIDTH_MM - NUMBER_MM - panel - inspection - metal - paint - findings },
  ]
  return {
    columns,
    rows: rows.map((row) => ({
      anchors: anchorsOf(row),
      cells: [
        numberOf(composer, row),
        nameOf(composer, row),
        cell(row.inspection, row.inspection === 'inspected' ? styles.cell : styles.cellSoft),
        cell(row.metal === 'not inspected' ? '—' : row.metal),
        cell(row.paint === 'not inspected' ? '—' : row.paint),
        composer.findings(findingsOf(composer, row)),
        composer.exhibits(exhibitsOf(composer, row)),
      ],
    })),
  }
}
