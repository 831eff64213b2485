import { useMemo } from 'react'
import type { ColumnMapping } from '../../../shared-types/coating-import.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import { EntrySheet } from '../../parts-of-page/EntrySheet.tsx'
import { FileChoice } from '../../parts-of-page/FileChoice.tsx'
import { NoteField } from '../../parts-of-page/TextField.tsx'
import { useEntry } from '../../parts-of-page/useEntry.ts'
import { ask, change } from '../../store/ask.ts'
import { usePanelNames } from '../../store/panel-names.ts'
import { useRecordStore } from '../../store/record-store.ts'
import { ColumnsPreview } from './ColumnsPreview.tsx'
import { gaugeNumber, ReadWith, type ReadWithEntry, readWithBefore } from './ReadWith.tsx'

interface ImportEntry extends ReadWithEntry {
  readonly panelId: string
  readonly text: string
  /** Null while the likeliest mapping is taken. */
  readonly mapping: ColumnMapping | null
}

interface ImportFormProps {
  readonly record: RecordView
  readonly panelId: string
  readonly onLeave: () => void
}

/** Takes readings in from pasted columns or the text of a CSV: shown as they would go in, then in by one command. */
export function ImportForm({ record, panelId, onLeave }: ImportFormProps) {
  const nameOf = usePanelNames()
  const panels = useRecordStore((state) => state.panelList?.panels)
  const { gauge, mode, substrate } = readWithBefore(record, panelId)
  const initial = useMemo<ImportEntry>(
    () => ({ panelId, text: '', mapping: null, gauge, mode, substrate }),
    [panelId, gauge, mode, substrate],
  )
  const entry = useEntry<ImportEntry>({
    name: 'coating.columns',
    initial,
    keep: async ({ panelId: own, text, mapping, gauge: read, mode: set, substrate: below }) => {
      const taken = mapping ?? (await ask('coating.columns', { panelId: own, text, mapping: null })).mapping
      await change('spots.import', {
        panelId: own,
        text,
        mapping: taken,
        gauge: gaugeNumber(read),
        mode: set,
        substrate: below,
        readAt: new Date().toISOString(),
      })
    },
    kept: onLeave,
  })
  const { draft, field } = entry
  return (
    <EntrySheet
      title="Readings from columns"
      over="one line is one spot; order is kept"
      entry={entry}
      onLeave={onLeave}
    >
      <NoteField
        label="Columns"
        rows={5}
        autoFocus
        hint="paste from a spreadsheet or a CSV file; one undo takes all of them back"
        {...field('text')}
        onChange={(text) => entry.set({ text, mapping: null })}
      />
      <div className="field">
        <FileChoice
          label="or choose a file of plain text"
          accept=".csv,.txt,.tsv,text/csv,text/plain"
          onFiles={([file]) => void file?.text().then((text) => entry.set({ text, mapping: null }))}
        />
      </div>
      <ChoiceField
        label="Panel"
        choices={(panels ?? []).map((panel) => panel.id)}
        wordsFor={nameOf}
        {...field('panelId')}
      />
      {draft.text.trim() === '' ? null : (
        <ColumnsPreview
          panelId={draft.panelId}
          text={draft.text}
          mapping={draft.mapping}
          onMapping={(mapping) => entry.set({ mapping })}
        />
      )}
      <ReadWith
        gauge={field('gauge')}
        mode={field('mode')}
        substrate={field('substrate')}
        place={{ panelId: draft.panelId, view: 'left', at: null }}
      />
    </EntrySheet>
  )
}
