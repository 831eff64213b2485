import type { JournalEntry, NumberedRegister, RegisterName } from '../../shared-types/record.ts'
import { canonical, sha256 } from './canonical.ts'
import type { Connection, Row, Step } from './connection.ts'
import { type AnyRow, asRead } from './register-table.ts'
import type { Stacks } from './undo-stacks.ts'

export interface JournalledChange {
  readonly register: RegisterName
  readonly key: string
  readonly before: AnyRow | null
  readonly after: AnyRow | null
}

/**
 * What one journal row says, and all of what its hash covers.
 *
 * The changed rows are journalled beside the input, though the input and the code would give them, because a later
 * program must be able to rebuild the tables without the code that decided at the time.
 */
export interface JournalContent extends Stacks {
  readonly number: number
  readonly commandId: string
  readonly at: string
  readonly who: string
  readonly command: string
  readonly input: unknown
  readonly changes: readonly JournalledChange[]
  /** What was done in words; for undo and redo, the words of the deed that was undone or done again. */
  readonly label: string
  /** Number given to a new row; null when none was. */
  readonly given: number | null
  /** Last number taken in each register by this command. */
  readonly taken: { readonly [R in NumberedRegister]?: number }
  /** Journal row whose changes this one turns back; null for a plain command. */
  readonly undoes: number | null
}

/** A journal row with its place in the chain. */
export interface JournalRow {
  readonly content: JournalContent
  readonly text: string
  readonly previousHash: string
  readonly hash: string
}

/** The hash before the first row. */
export const NO_HASH = '0'.repeat(64)
export const UNDO = 'journal.undo'
export const REDO = 'journal.redo'
const PAGE = 500

/** Hash of a row: SHA-256 over the previous hash, as 64 hexadecimal letters, and the canonical text of the row. */
export const chainHash = (previousHash: string, text: string): string => sha256(previousHash, text)

/** Puts a row behind the row whose hash is given. */
export function seal(content: JournalContent, previousHash: string): JournalRow {
  const text = canonical(content)
  return { content: JSON.parse(text), text, previousHash, hash: chainHash(previousHash, text) }
}

/** The step that appends a sealed row. The other columns of the table are read out of the text by SQLite itself. */
export const appendStep = (row: JournalRow): Step => [
  'INSERT INTO journal (number, content, previous_hash, hash) VALUES (?, ?, ?, ?)',
  row.content.number,
  row.text,
  row.previousHash,
  row.hash,
]

const SELECT = 'SELECT number, content, previous_hash, hash FROM journal'

function contentOf(text: string): JournalContent {
  const content: JournalContent = JSON.parse(text)
  const changes = content.changes.map((change) => ({
    ...change,
    before: change.before && asRead(change.register, change.before),
    after: change.after && asRead(change.register, change.after),
  }))
  return { ...content, changes }
}

const read = (row: Row): JournalRow => ({
  content: contentOf(String(row.content)),
  text: String(row.content),
  previousHash: String(row.previous_hash),
  hash: String(row.hash),
})

export async function lastRow(connection: Connection): Promise<JournalRow | null> {
  const row = await connection.get(`${SELECT} ORDER BY number DESC LIMIT 1`)
  return row ? read(row) : null
}

export async function rowByNumber(connection: Connection, number: number): Promise<JournalRow | null> {
  const row = await connection.get(`${SELECT} WHERE number = ?`, number)
  return row ? read(row) : null
}

export async function rowByCommand(connection: Connection, commandId: string): Promise<JournalRow | null> {
  const row = await connection.get(`${SELECT} WHERE command_id = ?`, commandId)
  return row ? read(row) : null
}

/** All rows from the first to the last, a page at a time, so that memory stays flat. */
export async function* everyRow(connection: Connection): AsyncGenerator<JournalRow> {
  for (let after = 0; ; ) {
    const rows = await connection.all(`${SELECT} WHERE number > ? ORDER BY number LIMIT ${PAGE}`, after)
    for (const row of rows) yield read(row)
    const last = rows.at(-1)
    if (!last) return
    after = Number(last.number)
  }
}

/** True when the row's hash, its number and its link to the row before all hold. */
export const rowIsSound = (row: JournalRow, number: number, previousHash: string): boolean =>
  row.content.number === number && row.previousHash === previousHash && row.hash === chainHash(previousHash, row.text)

/** Recomputes the chain from the first row; `head` is the row the open record knows as its last. */
export async function verifyChain(
  connection: Connection,
  head: { readonly number: number; readonly hash: string },
): Promise<{ readonly rows: number; readonly sound: boolean; readonly firstBad: number | null }> {
  let rows = 0
  let hash = NO_HASH
  try {
    for await (const row of everyRow(connection)) {
      if (!rowIsSound(row, rows + 1, hash)) return { rows, sound: false, firstBad: rows + 1 }
      rows += 1
      hash = row.hash
      if (rows === head.number && hash !== head.hash) return { rows, sound: false, firstBad: rows }
    }
  } catch (fault) {
    // A text that is no JSON any more is a bad row; anything else is for the caller to say.
    if (fault instanceof SyntaxError) return { rows, sound: false, firstBad: rows + 1 }
    throw fault
  }
  return rows < head.number ? { rows, sound: false, firstBad: rows + 1 } : { rows, sound: true, firstBad: null }
}

const spoken = ({ command, label }: JournalContent): string => {
  if (command === UNDO) return `Undone: ${label}`
  return command === REDO ? `Done again: ${label}` : label
}

/** A page of the journal, newest first, of rows older than `before`. */
export async function journalPage(
  connection: Connection,
  before: number | null,
  limit: number,
): Promise<{ readonly entries: readonly JournalEntry[]; readonly more: boolean }> {
  const bound = before ?? Number.MAX_SAFE_INTEGER
  const rows = await connection.all(`${SELECT} WHERE number < ? ORDER BY number DESC LIMIT ?`, bound, limit + 1)
  const entries = rows.slice(0, limit).map((row): JournalEntry => {
    const { content, hash } = read(row)
    const { number, at, who, command, undoes, changes } = content
    return { number, at, who, command, label: spoken(content), hash, undoes, changes }
  })
  return { entries, more: rows.length > limit }
}
