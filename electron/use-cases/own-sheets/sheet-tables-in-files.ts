import { mkdir, open, readFile, stat, writeFile } from 'node:fs/promises'
import { basename, join } from 'node:path'
import type { RequestInput } from '../../../shared-types/contract.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { SheetDraft, SheetMessage, TablesBrought, TablesDraft } from '../../../shared-types/sheet-desk.ts'
import { messageOf, readDraft, tablesDraft } from '../../sheets/reference/draft-sheet.ts'
import type { Row } from '../../sheets/reference/read-csv.ts'
import { MOST_SHEET_BYTES } from '../../sheets/reference/read-sheet.ts'
import { rowsOfTable, tooLong } from '../../sheets/reference/read-tables.ts'
import { problemText } from '../../sheets/reference/sheet-problem.ts'
import { HEAD_TABLE, headingsOf, sheetTables } from '../../sheets/reference/sheet-tables.ts'
import { rowsOfWorkbook, workbookOf } from '../../sheets/reference/sheet-workbook.ts'
import {
  isZip,
  MOST_WORKBOOK_BYTES,
  tooLongAWorkbook,
  WorkbookFault,
} from '../../sheets/reference/workbook/workbook-parts.ts'
import { csvOfGrids } from '../../sheets/reference/write-tables.ts'
import type { Program } from '../program.ts'
import { folderOfSheets } from './sheet-folder.ts'

const NAMES = [HEAD_TABLE, ...sheetTables.map(({ name }) => name)]

/** A draft as tables, whichever way it is written; refused while it cannot be read. */
function asTables(draft: SheetDraft): TablesDraft {
  if (draft.written === 'as tables') return draft
  const { sheet, problems } = readDraft(draft)
  if (sheet !== null) return tablesDraft(sheet)
  const [first] = problems
  const message = `It has no tables until it can be read. ${first === undefined ? '' : problemText(first)}`
  throw new ProblemError('input-refused', message, { field: 'draft' })
}

/** Name of the table a file holds, from the name of the file: `values.csv`, `My values (2).csv`. */
const tableNamed = (fileName: string): string => {
  const words = basename(fileName.replaceAll('\\', '/'))
    .replace(/\.(csv|tsv|txt)$/i, '')
    .toLowerCase()
  const whole = words.replace(/\s*\(\d+\)$/, '').trim()
  return NAMES.find((name) => name.toLowerCase() === whole) ?? whole
}

type Handed = RequestInput<'sheets.bringTables'>

/** Reads a workbook, which is told by how it begins; null for any other file. What is too long is never read at all. */
async function workbookIn(path: string, byteLength: number): Promise<(() => Promise<Uint8Array>) | null> {
  const file = await open(path)
  try {
    const { buffer } = await file.read({ buffer: new Uint8Array(4), length: 4, position: 0 })
    if (!isZip(buffer)) return null
  } finally {
    await file.close()
  }
  if (byteLength > MOST_WORKBOOK_BYTES) return () => Promise.reject(tooLongAWorkbook(byteLength))
  return () => readFile(path)
}

/**
 * Puts tables handed in as CSV in the place of those of a draft, and says what that changes. What keeps a table from being
 * read is a fault and nothing is brought in; a content that is wrong is brought in and told by the checker, cell by cell.
 */
export async function bringTables(program: Program, { draft, tables }: Handed): Promise<TablesBrought> {
  const before = asTables(draft)
  const faults: SheetMessage[] = []
  const brought = new Map<string, readonly (readonly string[])[]>()
  const take = (name: string, rows: readonly Row[]) => {
    const headings = headingsOf(name)
    brought.set(
      name,
      rows.map(({ cells }) => headings.map((heading) => cells.get(heading) ?? '')),
    )
  }
  let bytesInAll = 0
  for (const { table, source } of tables) {
    const { path, fileName } =
      source.from === 'upload' ? await program.upload(source.upload) : { path: source.path, fileName: source.path }
    const name = table === '' ? tableNamed(fileName) : table
    const within = (own: string, line: number | null, what: string, cure: string) =>
      faults.push(messageOf({ severity: 'error', path: [], line, within: own, what, cure }, true))
    const complain = (line: number | null, what: string, cure: string) => within(name, line, what, cure)
    const byteLength = await stat(path).then(
      ({ size }) => size,
      () => null,
    )
    bytesInAll += byteLength ?? 0
    const book = byteLength === null ? null : await workbookIn(path, byteLength)
    if (byteLength === null) complain(null, 'It cannot be read.', 'Choose the file again.')
    else if (book !== null) {
      try {
        for (const [table, rows] of rowsOfWorkbook(await book(), within))
          if (brought.has(table)) within(table, null, 'Two files hold this table.', 'Choose one of them.')
          else take(table, rows)
      } catch (fault) {
        if (!(fault instanceof WorkbookFault)) throw fault
        within(basename(fileName.replaceAll('\\', '/')), null, fault.what, fault.cure)
      }
    } else if (!NAMES.includes(name))
      complain(null, 'There is no table of this name.', `The tables are ${NAMES.join(', ')}.`)
    else if (brought.has(name)) complain(null, 'Two files hold this table.', 'Choose one of them.')
    else if (bytesInAll > MOST_SHEET_BYTES)
      complain(null, tooLong(bytesInAll), 'Divide the sheet into several that import each other.')
    else {
      take(name, rowsOfTable(name, await readFile(path), complain))
    }
  }
  const after = {
    ...before,
    tables: {
      ...before.tables,
      ...Object.fromEntries([...brought].map(([name, rows]) => [name, rows.map((row) => [...row])])),
    },
  }
  return {
    draft: faults.length === 0 ? after : null,
    tables: [...brought].map(([name, rows]) => ({ name, ...difference(before.tables[name] ?? [], rows) })),
    faults,
  }
}

function difference(before: readonly (readonly string[])[], after: readonly (readonly string[])[]) {
  const times = (rows: readonly (readonly string[])[]) => {
    const counted = new Map<string, number>()
    for (const row of rows) counted.set(JSON.stringify(row), (counted.get(JSON.stringify(row)) ?? 0) + 1)
    return counted
  }
  const [old, fresh] = [times(before), times(after)]
  const beyond = (one: ReadonlyMap<string, number>, other: ReadonlyMap<string, number>) =>
    [...one].reduce((sum, [row, count]) => sum + Math.max(0, count - (other.get(row) ?? 0)), 0)
  return { rowsBefore: before.length, rowsAfter: after.length, added: beyond(fresh, old), gone: beyond(old, fresh) }
}

/** Writes the tables of a draft into a folder that was not there before: what a spreadsheet changed is never written over. */
export async function carryTables(program: Program, { name, draft, as }: RequestInput<'sheets.carryTables'>) {
  const own = asTables(draft)
  const { tables } = own
  if (as === 'one workbook') {
    const bytes = workbookOf(own)
    const folder = await newFolder(program, name)
    await writeFile(join(folder, `${name}.xlsx`), bytes, { flag: 'wx', mode: 0o600 })
    return { folder, files: [`${name}.xlsx`] }
  }
  const written = csvOfGrids(new Map(NAMES.map((table) => [table, tables[table] ?? []])))
  const folder = await newFolder(program, name)
  for (const [table, csv] of written) await writeFile(join(folder, `${table}.csv`), csv, { flag: 'wx', mode: 0o600 })
  return { folder, files: [...written.keys()].map((table) => `${table}.csv`) }
}

async function newFolder(program: Program, name: string): Promise<string> {
  const within = join(folderOfSheets(program.recordsFolder), 'tables')
  await mkdir(within, { recursive: true, mode: 0o700 })
  return freshFolder(join(within, name))
}

async function freshFolder(wanted: string): Promise<string> {
  for (let number = 1; ; number++) {
    const folder = number === 1 ? wanted : `${wanted}-${number}`
    const made = await mkdir(folder, { mode: 0o700 }).then(
      () => true,
      (fault: NodeJS.ErrnoException) => {
        if (fault.code === 'EEXIST') return false
        throw fault
      },
    )
    if (made) return folder
  }
}
