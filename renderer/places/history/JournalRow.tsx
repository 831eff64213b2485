import { useId, useState } from 'react'
import type { JournalEntry } from '../../../shared-types/record.ts'
import { timeText } from '../identity/day-text.ts'
import { DifferenceTable } from './DifferenceTable.tsx'

/** One row of the journal; opened, it shows what each changed row was before and is after. */
export function JournalRow({ entry }: { readonly entry: JournalEntry }) {
  const [open, setOpen] = useState(false)
  const detail = useId()
  return (
    <li>
      <button
        type="button"
        className="journal-row"
        aria-expanded={open}
        aria-controls={open ? detail : undefined}
        onClick={() => setOpen(!open)}
      >
        <span className="figures quiet">{entry.number}</span>
        <span>
          {entry.label}
          {entry.undoes === null ? null : <span className="quiet"> (reverses entry {entry.undoes})</span>}
        </span>
        <span className="note">
          {timeText(entry.at)} · {entry.who === '' ? 'nobody named' : entry.who}
        </span>
      </button>
      {open ? (
        <div id={detail} className="journal-detail">
          {entry.changes.map((change) => (
            <DifferenceTable
              key={`${change.register} ${change.key}`}
              register={change.register}
              rowKey={change.key}
              before={change.before}
              after={change.after}
            />
          ))}
          <p className="edition-hash figures">SHA-256 {entry.hash}</p>
        </div>
      ) : null}
    </li>
  )
}
