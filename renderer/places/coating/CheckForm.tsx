import { useMemo } from 'react'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { type GaugeCheckDraft, gaugeCheckDraft } from '../../../shared-types/reading.ts'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import { EntrySheet } from '../../parts-of-page/EntrySheet.tsx'
import { NumberField } from '../../parts-of-page/NumberField.tsx'
import { TextField } from '../../parts-of-page/TextField.tsx'
import { useEntry } from '../../parts-of-page/useEntry.ts'
import { change } from '../../store/ask.ts'
import { useRecordStore } from '../../store/record-store.ts'
import { differenceOf } from './gauge-difference.ts'
import { plainLine, readingsFrom, thicknessText } from './reading-entry.ts'

/** The check as it stands in the form: readings as they were called out. */
interface CheckEntry {
  readonly when: GaugeCheckDraft['when']
  readonly shimUm: number | null
  readonly readLine: string
  readonly note: string
}

/** Adds a check of a gauge against a shim or bare metal, and says what it shows before it is kept. */
export function CheckForm({ gauge, onLeave }: { readonly gauge: number | null; readonly onLeave: () => void }) {
  const gauges = useRecordStore((state) => state.record?.gauges)
  const unit = useRecordStore((state) => state.record?.commission.coatingUnit ?? 'µm')
  const checked = gauges?.find((row) => row.number === gauge)
  const initial = useMemo<CheckEntry>(() => ({ when: 'before', shimUm: null, readLine: '', note: '' }), [])
  const read = (line: string): readonly number[] => {
    const said = readingsFrom(line, unit)
    return 'values' in said ? said.values.flatMap((value) => (value.kind === 'value' ? [value.um] : [])) : []
  }
  const entry = useEntry<CheckEntry>({
    name: `gaugeCheck.add ${gauge}`,
    initial,
    keep: async ({ when, shimUm, readLine, note }) => {
      if (gauge === null) throw new ProblemError('input-refused', 'Add the gauge first with G, then check it.')
      const readUm = [...read(readLine)]
      const written = readingsFrom(readLine, unit)
      if ('refused' in written) throw new ProblemError('input-refused', written.refused, { field: 'readLine' })
      if (readUm.length !== written.values.length) {
        throw new ProblemError('input-refused', 'A check takes plain values only; a gauge out of range is no check.', {
          field: 'readLine',
        })
      }
      if (shimUm === null) {
        throw new ProblemError('input-refused', 'Write the thickness of the shim; 0 is bare metal.', {
          field: 'shimUm',
        })
      }
      await change('gaugeCheck.add', {
        draft: { gauge, when, at: new Date().toISOString(), shimUm, readUm, note },
      })
    },
    kept: onLeave,
  })
  const { draft, field } = entry
  const readUm = [...read(draft.readLine)]
  const shows =
    checked === undefined || draft.shimUm === null || readUm.length === 0
      ? null
      : differenceOf({ shimUm: draft.shimUm, readUm }, checked)
  return (
    <EntrySheet
      title={gauge === null ? 'A gauge check' : `Check of gauge G ${gauge}`}
      over={checked?.name ?? 'add the gauge first'}
      entry={entry}
      onLeave={onLeave}
    >
      <ChoiceField
        label="When, against the readings"
        choices={gaugeCheckDraft.shape.when.options}
        autoFocus
        {...field('when')}
      />
      <NumberField label="Shim" quantity="coating" least={0} hint="0 is bare metal" {...field('shimUm')} />
      <TextField
        label={`Read, ${unit}`}
        figures
        hint={`up to ten values, such as ${plainLine([101, 103, 102], unit)}`}
        {...field('readLine')}
      />
      <TextField label="Note" {...field('note')} />
      {shows === null ? null : (
        <p className="note" role="status">
          Difference {thicknessText(shows.differenceUm, unit)} {unit}
          {shows.declaredUm === null ? '' : `, declared error ${thicknessText(shows.declaredUm, unit)} ${unit}`}:{' '}
          {shows.word}.
        </p>
      )}
    </EntrySheet>
  )
}
