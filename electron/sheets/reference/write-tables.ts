import { stringify } from 'csv-stringify/sync'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import { shielded } from './cell-text.ts'
import { valueAt } from './plain-data.ts'
import { type Column, HEAD_TABLE, headColumns, headingsOf, holdsText, sheetTables } from './sheet-tables.ts'

/** Rows of every table by its name; the cells of a row in the order of its headings, plainly as one reads them. */
export type SheetGrids = ReadonlyMap<string, readonly (readonly string[])[]>

const listAt = (data: unknown, keys: readonly string[]): readonly unknown[] => {
  const found = valueAt(data, keys)
  return Array.isArray(found) ? found : []
}

/**
 * A sheet as rows of its tables.
 * @throws ProblemError when two entries share a name and what belongs to them could not be told apart.
 */
export function gridsOfSheet(sheet: ReferenceSheet): SheetGrids {
  const grids = new Map<string, readonly (readonly string[])[]>([[HEAD_TABLE, [cells(headColumns, sheet)]]])
  for (const { name, list, within, columns } of sheetTables) {
    const owners = listAt(sheet, [list])
    if (within === null) {
      grids.set(
        name,
        owners.map((row) => cells(columns, row)),
      )
      continue
    }
    const ids = owners.map((owner) => String(valueAt(owner, ['id'])))
    const twice = ids.find((id, at) => ids.indexOf(id) !== at)
    if (twice !== undefined) {
      const message = `Two entries of ${list} are called “${twice}”. Rename one, then write the tables.`
      throw new ProblemError('input-refused', message, { field: list })
    }
    const rowsOf = (owner: unknown, at: number) =>
      listAt(owner, within.at).map((row) => [ids[at] ?? '', ...cells(columns, row)])
    grids.set(name, owners.flatMap(rowsOf))
  }
  return grids
}

/**
 * Rows of tables for a spreadsheet: CSV (RFC 4180) in UTF-8 with its mark, by name of the table, empty ones with their
 * headings. Text that a spreadsheet would take for a formula has an apostrophe before it.
 */
export function csvOfGrids(grids: SheetGrids): ReadonlyMap<string, string> {
  return new Map(
    [...grids].map(([name, rows]) => {
      const headings = headingsOf(name)
      const written = rows.map((row) =>
        row.map((cell, at) => (holdsText(name, headings[at] ?? '') ? shielded(cell) : cell)),
      )
      return [name, stringify([[...headings], ...written], { bom: true, record_delimiter: '\r\n', quoted: true })]
    }),
  )
}

/** A sheet as tables of a spreadsheet. @throws ProblemError as `gridsOfSheet` does. */
export const writeSheetTables = (sheet: ReferenceSheet): ReadonlyMap<string, string> => csvOfGrids(gridsOfSheet(sheet))

const cells = (columns: readonly Column[], row: unknown): readonly string[] =>
  columns.map(({ at, kind }) => {
    const value = valueAt(row, at)
    return value === undefined ? '' : kind.write(value)
  })
