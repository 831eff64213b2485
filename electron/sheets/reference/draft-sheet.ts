import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import type { SheetCheck, SheetDraft, SheetMessage, TablesDraft } from '../../../shared-types/sheet-desk.ts'
import { checkSheet } from './check-sheet.ts'
import type { Row } from './read-csv.ts'
import { readSheet, type SheetRead } from './read-sheet.ts'
import { readSheetRows } from './read-tables.ts'
import type { SheetProblem } from './sheet-problem.ts'
import { HEAD_TABLE, headColumns, headingsOf, sheetTables } from './sheet-tables.ts'
import { gridsOfSheet } from './write-tables.ts'

/** Reads what is being written. Rows of a table count from 1, those without any content with the others. */
export function readDraft(draft: SheetDraft): SheetRead {
  if (draft.written === 'as text') return readSheet(new TextEncoder().encode(draft.text))
  const tables = new Map(Object.entries(draft.tables))
  return readSheetRows((table) => rowsOf(headingsOf(table), tables.get(table) ?? []))
}

const rowsOf = (headings: readonly string[], rows: readonly (readonly string[])[]): readonly Row[] =>
  rows.flatMap((cells, at) =>
    cells.every((cell) => cell === '')
      ? []
      : [{ line: at + 1, cells: new Map(headings.map((heading, column) => [heading, cells[column] ?? ''])) }],
  )

/** A sheet as rows of its tables, to be written on. @throws ProblemError where two entries share a name. */
export const tablesDraft = (sheet: ReferenceSheet): TablesDraft => ({
  written: 'as tables',
  tables: Object.fromEntries([...gridsOfSheet(sheet)].map(([name, rows]) => [name, rows.map((row) => [...row])])),
})

/** Everything that is wrong or doubtful about a draft, with its place. @param known other sheets at hand, for the imports. */
export function checkDraft(draft: SheetDraft, known: ReadonlyMap<string, ReferenceSheet>): SheetCheck {
  const { sheet, problems, placeOf } = readDraft(draft)
  const all = sheet === null ? problems : [...problems, ...checkSheet(sheet, known, placeOf)]
  const asTables = draft.written === 'as tables'
  return {
    usable: sheet !== null && !all.some(({ severity }) => severity === 'error'),
    messages: all.map((problem) => messageOf(problem, asTables)),
    summary:
      sheet === null
        ? null
        : {
            sheetId: sheet.sheetId,
            title: sheet.title,
            edition: sheet.edition,
            variables: sheet.variables.length,
            rules: sheet.rules.length,
            tells: sheet.tells.length,
          },
  }
}

/** A problem of a sheet with the cell or the line it is about. */
export function messageOf({ severity, path, line, within, what, cure }: SheetProblem, asTables: boolean): SheetMessage {
  if (!asTables) return { severity, table: null, row: null, column: null, line, what, cure }
  const known = within !== null && headingsOf(within).length > 0
  return {
    severity,
    table: known ? within : null,
    row: known && line !== null ? line - 1 : null,
    column: known ? columnOf(within, path) : null,
    line: null,
    what: known || within === null ? what : `${within}: ${what}`,
    cure,
  }
}

/** The column a path ends in, within an entry of the table. */
function columnOf(table: string, path: SheetProblem['path']): string | null {
  const definition = sheetTables.find(({ name }) => name === table)
  if (table !== HEAD_TABLE && definition === undefined) return null
  const within = definition?.within ?? null
  if (within !== null && path.length === 1 && path[0] === within.heading) return within.heading
  const columns = definition?.columns ?? headColumns
  const steps = path.map(String)
  const lengthOfEntry = table === HEAD_TABLE ? 0 : within === null ? 2 : 3 + within.at.length
  const rest = steps.slice(path.length === 1 ? 0 : lengthOfEntry)
  const meets = (at: readonly string[]) =>
    at.every((step, position) => position >= rest.length || rest[position] === step)
  const found = columns.find(({ at }) => rest.length > 0 && meets(at))
  return found?.heading ?? null
}
