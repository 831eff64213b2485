import { format } from 'date-fns'
import { useState } from 'react'
import type { KnownRecord } from '../../../shared-types/record.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { EmptyPlace } from '../../parts-of-page/EmptyPlace.tsx'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { useRecordStore } from '../../store/record-store.ts'
import { useAnswer } from '../../store/use-answer.ts'
import { OpenByPath } from './OpenByPath.tsx'
import { OpenRecord } from './OpenRecord.tsx'
import { useRecordActs } from './record-acts.ts'
import { showDesk } from './sheets/sheet-desk-store.ts'

function RecordRow({ known, onOpen }: { readonly known: KnownRecord; readonly onOpen: () => void }) {
  return (
    <li>
      <button type="button" className="record-row" onClick={onOpen} disabled={known.missing}>
        <span className="strong">{known.title}</span>
        <span className="figures">{known.recordNumber}</span>
        <span className="quiet">
          {known.missing
            ? 'missing: moved or thrown away'
            : `changed ${format(new Date(known.changedAt), 'd MMM yyyy, HH:mm')}`}
        </span>
        <span className="record-path figures">{known.path}</span>
      </button>
    </li>
  )
}

/** Recent records, and the ways into one: new, open, the demonstration car. */
export function RecordsList({ onNew }: { readonly onNew: () => void }) {
  const record = useRecordStore((state) => state.record)
  const known = useAnswer('records.list', {}, [record?.path, record?.journalNumber])
  const acts = useRecordActs()
  const [typing, setTyping] = useState(false)
  useKeys('Records', [
    { keys: 'N', does: 'begin a new record', run: onNew },
    { keys: 'O', does: 'open a record that is not listed', run: () => setTyping(true) },
    { keys: 'D', does: 'open the demonstration car', run: acts.demonstration },
    { keys: 'S', does: 'reference sheets of your own', run: () => showDesk(true) },
  ])
  const rows = known.value ?? []
  return (
    <div className="records-columns">
      <div>
        <Section head="Records" level="column" beside="newest first; Enter opens">
          <ProblemNote problem={known.problem} />
          {rows.length === 0 && !known.busy && known.problem === null ? (
            <EmptyPlace head="No record yet">
              <p>
                A record holds one car: what was seen, measured and told, photographs and issued reports, in one file.
              </p>
              <p>Begin a record for the car in front of you, or look at the demonstration car first.</p>
            </EmptyPlace>
          ) : (
            <ul className="record-rows">
              {rows.map((row) => (
                <RecordRow key={row.path} known={row} onOpen={() => acts.open(row.path, false)} />
              ))}
            </ul>
          )}
        </Section>
        <div className="place-acts">
          <ActionKey keys="N" label="new record" onAct={onNew} />
          <ActionKey keys="O" label="open another" onAct={() => setTyping(true)} />
          <ActionKey keys="D" label="demonstration car" onAct={acts.demonstration} />
          <ActionKey keys="S" label="reference sheets" onAct={() => showDesk(true)} />
        </div>
        {typing ? <OpenByPath onOpen={acts.open} onLeave={() => setTyping(false)} /> : null}
        <p role="status" className="note">
          {acts.doing ?? (known.busy ? 'reading the list' : acts.said)}
        </p>
        <ProblemNote
          problem={acts.problem}
          onInstead={(choice) => {
            if (acts.refusedPath !== null && /read/iu.test(choice)) acts.open(acts.refusedPath, true)
          }}
        />
      </div>
      {record === null ? null : <OpenRecord record={record} acts={acts} />}
    </div>
  )
}
