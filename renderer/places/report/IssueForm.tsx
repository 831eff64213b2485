import { useMemo } from 'react'
import type { Paper } from '../../../shared-types/edition.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { EntrySheet } from '../../parts-of-page/EntrySheet.tsx'
import { NoteField } from '../../parts-of-page/TextField.tsx'
import { useEntry } from '../../parts-of-page/useEntry.ts'
import { change } from '../../store/ask.ts'

interface IssueFormProps {
  readonly record: RecordView
  readonly paper: Paper
  readonly onLeave: () => void
  /** Called with the number of the new edition. */
  readonly onIssued: (edition: number) => void
}

/** Issues an edition. From the second on it asks why; there is no way back, and it says so. */
export function IssueForm({ record, paper, onLeave, onIssued }: IssueFormProps) {
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
    >
      <p>
        <strong>An issued edition cannot be undone.</strong> It is frozen in the record with its number, its time and
        its SHA-256. What is amended afterwards goes into the next edition, which lists what changed.
      </p>
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
