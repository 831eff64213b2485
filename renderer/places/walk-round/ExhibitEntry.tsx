import { useMemo, useRef, useState } from 'react'
import type { ExhibitDraft } from '../../../shared-types/exhibit.ts'
import { type PanelDefinition, panelName } from '../../../shared-types/panel.ts'
import type { NameChoice } from '../../../shared-types/words.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { EditSheet } from '../../parts-of-page/EditSheet.tsx'
import { KeyChoice, type KeyedChoice } from '../../parts-of-page/KeyChoice.tsx'
import { NoteField, TextField } from '../../parts-of-page/TextField.tsx'
import { useEntry } from '../../parts-of-page/useEntry.ts'
import { change } from '../../store/ask.ts'
import { useRecordStore } from '../../store/record-store.ts'
import { ImportNote } from './ImportNote.tsx'
import { importPhotographs } from './import-photographs.ts'
import { PhotographChooser } from './PhotographChooser.tsx'
import { leaveEntry } from './walk-store.ts'

type Kind = 'photograph' | ExhibitDraft['kind']

const kinds: readonly KeyedChoice<Kind>[] = [
  { choice: 'photograph', keys: '1', words: 'photographs' },
  { choice: 'document', keys: '2' },
  { choice: 'statement', keys: '3', means: 'what somebody said, and who' },
  { choice: 'recording', keys: '4' },
]

interface ExhibitEntryProps {
  readonly panel: PanelDefinition
  readonly names: NameChoice
}

/** Evidence for the panel in hand: photographs from files, or a document, statement or recording in words. */
export function ExhibitEntry({ panel, names }: ExhibitEntryProps) {
  const chooser = useRef<HTMLInputElement>(null)
  const [kind, setKind] = useState<Kind>('photograph')
  const examiner = useRecordStore((state) => state.record?.commission.examiner ?? '')
  const entry = useEntry({
    name: `exhibit.add ${panel.id}`,
    initial: useMemo(() => ({ caption: '', madeBy: examiner, place: '' }), [examiner]),
    keep: async (words) => {
      if (kind === 'photograph') {
        chooser.current?.click()
        return
      }
      const { caption, madeBy, place } = words
      const about = { panelId: panel.id, view: null, at: null, inReport: true, measurement: null }
      await change('exhibit.add', { draft: { kind, caption, madeBy, place, ...about } })
    },
    kept: () => {
      if (kind !== 'photograph') leaveEntry()
    },
  })
  return (
    <EditSheet
      title="An exhibit"
      over={
        <span>
          {panel.stop}, {panelName(panel, names)}
        </span>
      }
      onKeep={() => void entry.keep()}
      onLeave={leaveEntry}
      problem={entry.problemOfAll}
      busy={entry.busy}
      keepWord={kind === 'photograph' ? 'choose' : 'keep'}
      onStartOver={entry.begun ? entry.startOver : undefined}
    >
      <KeyChoice
        label="What it is"
        choices={kinds}
        value={kind}
        onChoose={(chosen, byKey) => {
          setKind(chosen)
          if (byKey && chosen === 'photograph') chooser.current?.click()
        }}
        layout="rows"
        autoFocus
      />
      <PhotographChooser chooser={chooser} onFiles={(files) => void importPhotographs(files, panel.id, null)} />
      {kind === 'photograph' ? (
        <>
          <ActionKey keys="1" label="choose photographs" onAct={() => chooser.current?.click()} />
          <p className="note">
            Photographs can also be dropped on a panel of the plan, or pasted while the panel is in hand. Each is kept
            exactly as the camera made it.
          </p>
          <ImportNote panelId={panel.id} />
        </>
      ) : (
        <>
          <NoteField label="What it shows or says" {...entry.field('caption')} onEnter={() => void entry.keep()} />
          <TextField label="Made by" {...entry.field('madeBy')} />
          <TextField label="Where it is kept" {...entry.field('place')} />
        </>
      )}
    </EditSheet>
  )
}
