import { stringify } from 'csv-stringify/sync'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import { valueAt } from './plain-data.ts'
import { type Column, headColumns, sheetTables } from './sheet-tables.ts'

/** Name of the table with the sheet's own lines. */
export const HEAD_TABLE = 'sheet'

const listAt = (data: unknown, keys: readonly string[]): readonly unknown[] => {
  const found = valueAt(data, keys)
  return Array.isArray(found) ? found : []
}

/**
 * A sheet as tables of a spreadsheet: CSV (RFC 4180) in UTF-8 with its mark, by name of the table, empty ones with their
 * headings. Text that a spreadsheet would take for a formula has an apostrophe before it.
 * @throws ProblemError when two entries share a name and what belongs to them could not be told apart.
 */
export function writeSheetTables(sheet: ReferenceSheet): ReadonlyMap<string, string> {
  const written = new Map([[HEAD_TABLE, csv(headColumns, [sheet])]])
  for (const { name, list, within, columns } of sheetTables) {
    if (within === null) {
      written.set(name, csv(columns, listAt(sheet, [list])))
      continue
    }
    const owners = listAt(sheet, [list])
    const ids = owners.map((owner) => String(valueAt(owner, ['id'])))
    const twice = ids.find((id, at) => ids.indexOf(id) !== at)
    if (twice !== undefined)
      throw new ProblemError(
        'input-refused',
        `Two entries of ${list} are called “${twice}”. Rename one, then write the tables.`,
        {
          field: list,
        },
      )
    const rows = owners.flatMap((owner, at) =>
      listAt(owner, within.at).map((row) => [ids[at] ?? '', ...cells(columns, row)]),
    )
    written.set(name, text([[within.heading, ...columns.map(({ heading }) => heading)], ...rows]))
  }
  return written
}

const cells = (columns: readonly Column[], row: unknown): readonly string[] =>
  columns.map(({ at, kind }) => {
    const value = valueAt(row, at)
    return value === undefined ? '' : kind.write(value)
  })

const csv = (columns: readonly Column[], rows: readonly unknown[]): string =>
  text([columns.map(({ heading }) => heading), ...rows.map((row) => cells(columns, row))])

const text = (rows: readonly (readonly string[])[]): string =>
  stringify(
    rows.map((row) => [...row]),
    { bom: true, record_delimiter: '\r\n', quoted: true },
  )
