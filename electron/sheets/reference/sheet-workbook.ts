import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { TablesDraft } from '../../../shared-types/sheet-desk.ts'
import { type ComplainOfTable, REMARK, type Row, rowsUnderHeadings } from './read-csv.ts'
import { HEAD_TABLE, headingsOf, sheetTables } from './sheet-tables.ts'
import { tableForms } from './table-forms.ts'
import { readWorkbook } from './workbook/read-workbook.ts'
import { columnLetters, type TableToWrite, writeWorkbook } from './workbook/write-workbook.ts'

const NAMES = [HEAD_TABLE, ...sheetTables.map(({ name }) => name)]
/** The table of a workbook that says how the others are filled; passed over when it is read. */
const GUIDE = 'how to fill it in'
/** No spreadsheet takes more characters in one cell (ECMA-376 leaves it open; spreadsheets hold to this). */
const MOST_IN_A_CELL = 32_767

const guide = (): TableToWrite => ({
  name: GUIDE,
  grey: new Set(),
  rows: [
    ['table', 'column', 'what belongs in it', 'one of', 'for example'],
    [
      'Every table has its own tab. A line that begins with # is an example and is passed over. The first two tables to fill are variables and values.',
    ],
    ...tableForms().flatMap(({ name, says, columns, example: [first = []] }) => [
      [name, '', says],
      ...columns.map(({ heading, says: own, choices }, at) => [
        name,
        heading,
        own,
        choices.join(', '),
        first[at] ?? '',
      ]),
    ]),
  ],
})

/**
 * The tables of a draft as one workbook, a tab for each, with a tab that says what belongs where; a table still empty has a
 * line of the worked example that is passed over when the workbook is brought in.
 * @throws ProblemError for a cell longer than a spreadsheet takes.
 */
export function workbookOf({ tables }: TablesDraft): Uint8Array {
  const written = tableForms().map(({ name, example }): TableToWrite => {
    const rows = tables[name] ?? []
    for (const [line, row] of rows.entries()) {
      const column = row.findIndex((cell) => cell.length > MOST_IN_A_CELL)
      if (column < 0) continue
      const message = `Cell ${columnLetters(column)}${line + 2} of ${name} is longer than a spreadsheet takes. Write the tables as CSV instead.`
      throw new ProblemError('input-refused', message, { field: 'draft' })
    }
    if (rows.some((row) => row.some((cell) => cell !== '')))
      return { name, rows: [headingsOf(name), ...rows], grey: new Set() }
    const examples = example.map(([first = '', ...others]) => [`${REMARK} ${first}`, ...others])
    return { name, rows: [headingsOf(name), ...examples], grey: new Set(examples.map((_, at) => at + 2)) }
  })
  return writeWorkbook([guide(), ...written])
}

/**
 * Rows of every table of a workbook by its name. What keeps one from being taken over is told with its cell.
 * @throws WorkbookFault when it cannot be opened at all.
 */
export function rowsOfWorkbook(
  bytes: Uint8Array,
  complain: (table: string, ...about: Parameters<ComplainOfTable>) => void,
): ReadonlyMap<string, readonly Row[]> {
  const found = new Map<string, readonly Row[]>()
  for (const { name, rows, inTheWay } of readWorkbook(bytes)) {
    const own = NAMES.find((known) => known.toLowerCase() === name.trim().toLowerCase())
    const lines = [...rows].map(([line, cells]) => ({ line, cells: Array.from(cells, (cell) => cell ?? '') }))
    const filled = lines.some(({ cells }) => cells.some((cell) => cell !== ''))
    if (name.trim().toLowerCase() === GUIDE || (own === undefined && !filled)) continue
    if (own === undefined) {
      complain(
        name,
        null,
        'There is no table of this name.',
        `Rename the tab or take it out. The tables are ${NAMES.join(', ')}.`,
      )
      continue
    }
    for (const { line, what, cure } of inTheWay) complain(own, line, what, cure)
    found.set(
      own,
      rowsUnderHeadings(lines, headingsOf(own), (...about) => complain(own, ...about)),
    )
  }
  return found
}
