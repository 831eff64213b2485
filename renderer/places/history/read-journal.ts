import type { JournalEntry } from '../../../shared-types/record.ts'
import { ask } from '../../store/ask.ts'

const ENTRIES_AT_ONCE = 500

/** Reads the journal rows after `from` up to and including `to`, newest first, page by page. */
export async function journalSpan(from: number, to: number): Promise<readonly JournalEntry[]> {
  const span: JournalEntry[] = []
  let before = to + 1
  for (;;) {
    const { entries, more } = await ask('record.journal', { before, limit: ENTRIES_AT_ONCE })
    span.push(...entries.filter((entry) => entry.number > from))
    const oldest = entries.at(-1)
    if (!more || oldest === undefined || oldest.number <= from) return span
    before = oldest.number
  }
}
