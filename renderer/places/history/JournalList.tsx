import { useCallback, useEffect, useState } from 'react'
import type { Problem } from '../../../shared-types/problem.ts'
import type { JournalEntry } from '../../../shared-types/record.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { ask, problemOf } from '../../store/ask.ts'
import { JournalRow } from './JournalRow.tsx'

const ROWS_AT_ONCE = 60

interface Pages {
  readonly entries: readonly JournalEntry[]
  readonly more: boolean
}

/** Rows of the journal as far back as was asked for; newer rows are put on top as they come. */
function useJournal(journalNumber: number) {
  const [pages, setPages] = useState<Pages | null>(null)
  const [problem, setProblem] = useState<Problem | null>(null)
  const [busy, setBusy] = useState(false)
  const read = useCallback(async (before: number | null, sofar: readonly JournalEntry[]) => {
    setBusy(true)
    try {
      const { entries, more } = await ask('record.journal', { before, limit: ROWS_AT_ONCE })
      setPages({ entries: [...sofar, ...entries], more })
      setProblem(null)
    } catch (thrown) {
      setProblem(problemOf(thrown))
    } finally {
      setBusy(false)
    }
  }, [])
  useEffect(() => {
    if (journalNumber >= 0) void read(null, [])
  }, [journalNumber, read])
  const older = () => {
    const oldest = pages?.entries.at(-1)
    if (!busy && pages?.more === true && oldest !== undefined) void read(oldest.number, pages.entries)
  }
  return { pages, problem, busy, older }
}

/** The journal in words, newest first. */
export function JournalList({ journalNumber }: { readonly journalNumber: number }) {
  const { pages, problem, busy, older } = useJournal(journalNumber)
  useKeys('Journal', [{ keys: 'M', does: 'show older entries', run: older }])
  const entries = pages?.entries ?? []
  return (
    <Section head="Journal" level="column" beside={`${journalNumber} entries; Enter opens one`}>
      <ProblemNote problem={problem} />
      {pages !== null && entries.length === 0 ? (
        <p className="place-note">Nothing has been changed yet. The first entry is written with the first change.</p>
      ) : null}
      <ol className="journal">
        {entries.map((entry) => (
          <JournalRow key={entry.number} entry={entry} />
        ))}
      </ol>
      <p className="note" role="status">
        {busy ? 'reading the journal' : ''}
      </p>
      {pages?.more === true ? <ActionKey keys="M" label="older entries" onAct={older} /> : null}
    </Section>
  )
}
