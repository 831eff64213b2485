import type { TableForm, TablesDraft } from '../../../../shared-types/sheet-desk.ts'

/** Row and column of a cell, both from 0. */
export interface CellPlace {
  readonly row: number
  readonly column: number
}

type Rows = readonly (readonly string[])[]

export const rowsIn = (draft: TablesDraft, table: string): Rows => draft.tables[table] ?? []
const withRows = (draft: TablesDraft, table: string, rows: Rows): TablesDraft => ({
  ...draft,
  tables: { ...draft.tables, [table]: rows.map((row) => [...row]) },
})

const isEmpty = (row: readonly string[]): boolean => row.every((cell) => cell === '')
/** Rows at the end without any content are dropped: the grid always shows one to write into. */
function trimmed(rows: Rows): Rows {
  let end = rows.length
  while (end > 0 && isEmpty(rows[end - 1] ?? [])) end -= 1
  return rows.slice(0, end)
}

const filled = (row: readonly string[] | undefined, columns: number): readonly string[] =>
  Array.from({ length: columns }, (_, at) => row?.[at] ?? '')

/** Writes a block of cells from one place on; rows that are not there yet are added, cells beyond the last column dropped. */
export function withCells(draft: TablesDraft, form: TableForm, from: CellPlace, block: Rows): TablesDraft {
  const before = rowsIn(draft, form.name)
  const rows = Array.from({ length: Math.max(before.length, from.row + block.length) }, (_, at) => {
    const row = filled(before[at], form.columns.length)
    const written = block[at - from.row]
    if (written === undefined) return row
    return row.map((cell, column) => written[column - from.column] ?? cell)
  })
  return withRows(draft, form.name, trimmed(rows))
}

/** An empty row before the one at that place. */
export const withRowBefore = (draft: TablesDraft, form: TableForm, row: number): TablesDraft =>
  withRows(draft, form.name, rowsIn(draft, form.name).toSpliced(row, 0, [...filled(undefined, form.columns.length)]))

export const withoutRow = (draft: TablesDraft, form: TableForm, row: number): TablesDraft =>
  withRows(draft, form.name, trimmed(rowsIn(draft, form.name).toSpliced(row, 1)))

/** The row exchanged with its neighbour; the same draft where there is none. */
export function withRowMoved(draft: TablesDraft, form: TableForm, row: number, by: 1 | -1): TablesDraft {
  const rows = rowsIn(draft, form.name)
  const [one, other] = [rows[row], rows[row + by]]
  if (one === undefined || other === undefined) return draft
  return withRows(draft, form.name, rows.with(row, other).with(row + by, one))
}

/** Cells as a spreadsheet puts them on the clipboard: tabs between them, quotes where a cell has lines of its own. */
export function cellsOfClipboard(text: string): Rows {
  const rows: string[][] = [[]]
  const cell = /(?:"((?:[^"]|"")*)"|([^\t\n\r]*))(\t|\r\n|\n|\r|$)/y
  while (cell.lastIndex < text.length) {
    const found = cell.exec(text)
    if (found === null) return text.split(/\r\n|\n|\r/).map((line) => line.split('\t'))
    rows.at(-1)?.push(found[1]?.replaceAll('""', '"') ?? found[2] ?? '')
    if (found[3] === '') break
    if (found[3] !== '\t') rows.push([])
    else if (cell.lastIndex === text.length) rows.at(-1)?.push('')
  }
  return rows.at(-1)?.length === 0 ? rows.slice(0, -1) : rows
}
