import { useMemo } from 'react'
import type { Paper } from '../../../shared-types/edition.ts'
import type { MissingLine } from '../../../shared-types/missing-line.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { EntrySheet } from '../../parts-of-page/EntrySheet.tsx'
import { NoteField } from '../../parts-of-page/TextField.tsx'
import { useEntry } from '../../parts-of-page/useEntry.ts'
import { change } from '../../store/ask.ts'

interface IssueFormProps {
  readonly record: RecordView
  readonly paper: Paper
  /** What the report must state and the record does not say yet; null until that is known. */
  readonly toState: readonly MissingLine[] | null
  readonly onLeave: () => void
  /** Called with the number of the new edition. */
  readonly onIssued: (edition: number) => void
}

/** What the edition would be issued without, by name. */
function IssuedWithout({ lines }: { readonly lines: readonly MissingLine[] }) {
  if (lines.length === 0) return <p className="note">Nothing is still to state.</p>
  return (
    <>
      <p>
        <strong>{`${lines.length} ${lines.length === 1 ? 'thing is' : 'things are'} still to state.`}</strong> The
        edition can be issued all the same; it shows that {lines.length === 1 ? 'this is' : 'these are'} not stated:
      </p>
      <ul className="issued-without">
        {lines.map(({ line, missing }) => (
          <li key={`${line} ${missing}`}>{missing}</li>
        ))}
      </ul>
    </>
  )
}

/** Issues an edition. From the second on it asks why; there is no way back, and it says so and what is not stated. */
export function IssueForm({ record, paper, toState, onLeave, onIssued }: IssueFormProps) {
  const next = (record.editions.at(-1)?.number ?? 0) + 1
  const initial = useMemo(() => ({ reason: '' }), [])
  const entry = useEntry<{ readonly reason: string }>({
    name: 'edition.issue',
    initial,
    keep: async ({ reason }) => {
      if (next > 1 && reason.trim() === '') {
        throw new ProblemError('input-refused', `Write why edition ${next} replaces edition ${next - 1}.`, {
          field: 'reason',
        })
      }
      await change('edition.issue', { paper, reason })
    },
    kept: () => {
      onLeave()
      onIssued(next)
    },
  })
  return (
    <EntrySheet
      title={`Issue edition ${next}`}
      over={`on ${paper}, under the name of ${record.commission.examiner}`}
      entry={entry}
      onLeave={onLeave}
      keepWord="issue"
      keepingWord="issuing"
    >
      <p>
        <strong>An issued edition cannot be undone.</strong> It is frozen in the record with its number, its time and
        its SHA-256. What is amended afterwards goes into the next edition, which lists what changed.
      </p>
      {toState === null ? null : <IssuedWithout lines={toState} />}
      {next === 1 ? (
        <p className="note">The first edition needs no reason.</p>
      ) : (
        <NoteField label={`Why it replaces edition ${next - 1}`} rows={3} {...entry.field('reason')} />
      )}
      <p className="note" role="status">
        {entry.busy ? 'composing every page and freezing it' : 'Read the preview to its last page first.'}
      </p>
    </EntrySheet>
  )
}
