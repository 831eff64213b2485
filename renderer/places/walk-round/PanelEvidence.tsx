import { memo } from 'react'
import type { PanelDefinition } from '../../../shared-types/panel.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { CautionLines } from '../../parts-of-page/CautionLines.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { ExhibitRow } from './ExhibitRow.tsx'
import { ImportNote } from './ImportNote.tsx'
import { ReadingTable } from './ReadingTable.tsx'
import { enter, useWalkStore } from './walk-store.ts'
import { stateOfPanel } from './walking.ts'

interface PanelEvidenceProps {
  readonly panel: PanelDefinition
  readonly record: RecordView
}

/** What was shown and read on the panel in hand, what is still open on it, and what can hurt somebody there. */
export const PanelEvidence = memo(function PanelEvidence({ panel, record }: PanelEvidenceProps) {
  const questions = useWalkStore((state) => state.judgement?.openQuestions)
  const { coatingUnit } = record.commission
  const { note } = stateOfPanel(record.panels, panel.id)
  const spots = record.spots.filter((spot) => spot.panelId === panel.id)
  const exhibits = record.exhibits.filter((exhibit) => exhibit.panelId === panel.id)
  const open = (questions ?? []).filter((question) =>
    question.references.some((reference) => reference.kind === 'panel' && reference.key === panel.id),
  )
  return (
    <>
      <Section
        head="Exhibits"
        action={<ActionKey keys="E" label="add" name="Add an exhibit" onAct={() => enter({ kind: 'exhibit' })} />}
      >
        <ExhibitRow exhibits={exhibits} />
        <ImportNote panelId={panel.id} />
      </Section>
      <Section
        head="Coating"
        beside={coatingUnit}
        action={
          <ActionKey keys="R" label="read" name="Add readings" onAct={() => enter({ kind: 'reading', amends: null })} />
        }
      >
        <ReadingTable key={panel.id} spots={spots} gauges={record.gauges} unit={coatingUnit} />
      </Section>
      {note === '' ? (
        <div className="sheet-quick">
          <ActionKey keys="T" label="note" name="Note on the panel" onAct={() => enter({ kind: 'note' })} />
        </div>
      ) : (
        <Section head="Note" action={<ActionKey keys="T" label="amend" onAct={() => enter({ kind: 'note' })} />}>
          <p className="panel-note">{note}</p>
        </Section>
      )}
      {open.length === 0 ? null : (
        <Section head="Still open">
          {open.map((question) => (
            <p key={question.text} className="open-question">
              {question.text} <span className="quiet">{question.wouldSettle}</span>
            </p>
          ))}
        </Section>
      )}
      <CautionLines of={panel.cautions} />
    </>
  )
})
