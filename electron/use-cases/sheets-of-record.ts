import { createHash } from 'node:crypto'
import { buffer } from 'node:stream/consumers'
import type { ReferenceSheet } from '../../shared-types/reference-sheet.ts'
import type { CarRecord } from '../record/car-record.ts'
import { type CompiledSheets, compileSheets } from '../sheets/reference/compile-sheets.ts'
import { mergeSheets } from '../sheets/reference/merge-sheets.ts'
import { readSheet } from '../sheets/reference/read-sheet.ts'
import { problemText } from '../sheets/reference/sheet-problem.ts'

/** The sheets of a record, read from its own frozen copies and compiled together. */
export interface SheetsOfRecord {
  /** The same for the same copies: their names and hashes. */
  readonly key: string
  readonly sheets: readonly ReferenceSheet[]
  readonly compiled: CompiledSheets | null
  /** Why they cannot be used, in words; null when they can. */
  readonly problem: string | null
}

const MOST_KEPT = 8
const kept = new Map<string, SheetsOfRecord>()

/** Reads and compiles what the record holds; the same copies are compiled once, whichever record holds them. */
export async function sheetsOfRecord(record: CarRecord): Promise<SheetsOfRecord> {
  const copies = record.view().sheets
  const key = copies.map(({ sheetId, sha256 }) => `${sheetId} ${sha256}`).join('\n')
  const known = kept.get(key)
  if (known !== undefined) return known
  const read = await Promise.all(
    copies.map(async ({ title, sha256 }) => ({ title, ...readSheet(await buffer(record.bytes.read(sha256))) })),
  )
  const made = { key, ...compiledTogether(read) }
  kept.set(key, made)
  const [oldest] = kept.keys()
  if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest)
  return made
}

function compiledTogether(
  read: readonly ({ readonly title: string } & ReturnType<typeof readSheet>)[],
): Omit<SheetsOfRecord, 'key'> {
  const unread = read.find(({ sheet }) => sheet === null)
  if (unread !== undefined) {
    const [fault] = unread.problems
    const problem = `The reference sheet “${unread.title}” cannot be read: ${fault === undefined ? '' : problemText(fault)}`
    return { sheets: [], compiled: null, problem }
  }
  const known = new Map(read.flatMap(({ sheet }) => (sheet === null ? [] : [[sheet.sheetId, sheet] as const])))
  return mergedAndCompiled([...known.keys()], known)
}

function mergedAndCompiled(
  wanted: readonly string[],
  known: ReadonlyMap<string, ReferenceSheet>,
): Omit<SheetsOfRecord, 'key'> {
  const { sheets, problems } = mergeSheets(wanted, known)
  const compiled = sheets.length === 0 ? null : compileSheets(sheets)
  const fault = [...problems, ...(compiled?.problems ?? [])].find(({ severity }) => severity === 'error')
  return { sheets, compiled, problem: fault === undefined ? null : problemText(fault) }
}

/** Sheets that no record holds together, compiled: a sheet being written, or a record's with another edition of one. */
export function sheetsTogether(wanted: readonly string[], known: ReadonlyMap<string, ReferenceSheet>): SheetsOfRecord {
  const made = mergedAndCompiled(wanted, known)
  const key = createHash('sha256').update(JSON.stringify(made.sheets)).digest('hex')
  return { key: `together ${key}`, ...made }
}
