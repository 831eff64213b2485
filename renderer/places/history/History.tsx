import { useState } from 'react'
import type { RecordView } from '../../../shared-types/record.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { PlacePage } from '../../parts-of-page/PlacePage.tsx'
import { RecordPlace } from '../../parts-of-page/RecordPlace.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { redo, undo } from '../../store/undo.ts'
import { ChainCheck } from './ChainCheck.tsx'
import { CompareEditions } from './CompareEditions.tsx'
import { JournalList } from './JournalList.tsx'
import '../place-lines.css'
import './history.css'

function HistoryPage({ record }: { readonly record: RecordView }) {
  const [verifying, setVerifying] = useState(0)
  const { undoState, readOnly } = record
  useKeys('History', [
    { keys: 'U', does: 'undo the last change', run: undo },
    { keys: 'R', does: 'do again what was undone', run: redo },
    { keys: 'V', does: 'check that the journal is whole', run: () => setVerifying((times) => times + 1) },
  ])
  return (
    <PlacePage name="History">
      <div className="two-columns">
        <JournalList journalNumber={record.journalNumber} />
        <div>
          <Section head="Undo" level="column">
            <div className="undo-state">
              <p className="place-note">
                {undoState.undo === null ? 'Nothing can be undone now.' : `Would undo: ${undoState.undo}`}
              </p>
              <p className="place-note">
                {undoState.redo === null ? 'Nothing has been undone.' : `Would do again: ${undoState.redo}`}
              </p>
            </div>
            <div className="place-acts">
              <ActionKey
                keys="U"
                label="undo"
                name="Undo the last change"
                onAct={undo}
                disabled={undoState.undo === null || readOnly}
              />
              <ActionKey
                keys="R"
                label="do again"
                name="Do again what was undone"
                onAct={redo}
                disabled={undoState.redo === null || readOnly}
              />
            </div>
            <p className="note">Undoing adds an entry that reverses the last one. No entry is ever taken out.</p>
          </Section>
          <ChainCheck
            journalNumber={record.journalNumber}
            times={verifying}
            onVerify={() => setVerifying((times) => times + 1)}
          />
          <CompareEditions record={record} />
        </div>
      </div>
    </PlacePage>
  )
}

/** History: every change of the record in words, from the newest back, and what two editions differ by. */
export function History() {
  return <RecordPlace name="History">{(record) => <HistoryPage record={record} />}</RecordPlace>
}
