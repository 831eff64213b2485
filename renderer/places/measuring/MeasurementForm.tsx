import { useMemo } from 'react'
import { type Measurement, measurement } from '../../../shared-types/exhibit.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import { EntrySheet } from '../../parts-of-page/EntrySheet.tsx'
import { NumberField } from '../../parts-of-page/NumberField.tsx'
import { NoteField, TextField } from '../../parts-of-page/TextField.tsx'
import { useEntry } from '../../parts-of-page/useEntry.ts'
import { change } from '../../store/ask.ts'
import { usePanelNames } from '../../store/panel-names.ts'
import { useRecordStore } from '../../store/record-store.ts'

/** A measurement as it stands in the form; `value` is null until a number is typed. */
interface MeasurementEntry {
  readonly what: string
  readonly value: number | null
  readonly unit: Measurement['unit']
  readonly uncertainty: number | null
  readonly method: string
  readonly instrument: string
  readonly panelId: string
  readonly madeBy: string
  readonly caption: string
}

const wholeCar = 'whole car'

/** Adds a measurement as an exhibit. Corrections are made by withdrawing it and adding another: its number stays. */
export function MeasurementForm({ onLeave }: { readonly onLeave: () => void }) {
  const examiner = useRecordStore((state) => state.record?.commission.examiner ?? '')
  const place = useRecordStore((state) => state.record?.visits.at(-1)?.place ?? '')
  const panels = useRecordStore((state) => state.panelList?.panels)
  const nameOf = usePanelNames()
  const initial = useMemo<MeasurementEntry>(
    () => ({
      what: '',
      value: null,
      unit: 'mm',
      uncertainty: null,
      method: '',
      instrument: '',
      panelId: wholeCar,
      madeBy: examiner,
      caption: '',
    }),
    [examiner],
  )
  const entry = useEntry<MeasurementEntry>({
    name: 'measurement.add',
    initial,
    keep: async (said) => {
      const { what, value, unit, uncertainty, method, instrument } = said
      if (what.trim() === '') {
        throw new ProblemError('input-refused', 'Write what was measured.', { field: 'what' })
      }
      if (value === null) throw new ProblemError('input-refused', 'Write the value as a number.', { field: 'value' })
      await change('exhibit.add', {
        draft: {
          kind: 'measurement',
          caption: said.caption,
          madeBy: said.madeBy,
          place,
          panelId: said.panelId === wholeCar ? null : said.panelId,
          view: null,
          at: null,
          inReport: true,
          measurement: { what, value, unit, uncertainty, method, instrument },
        },
      })
    },
    kept: onLeave,
  })
  const { field } = entry
  return (
    <EntrySheet title="A measurement" over="kept in the unit it was read in" entry={entry} onLeave={onLeave}>
      <TextField label="What was measured" required autoFocus {...field('what')} />
      <NumberField label="Value" quantity="plain" {...field('value')} />
      <ChoiceField label="Unit" choices={measurement.shape.unit.options} {...field('unit')} />
      <NumberField
        label="Uncertainty U, k = 2"
        quantity="plain"
        least={0}
        hint="the same unit; left empty it is printed as: uncertainty not stated"
        {...field('uncertainty')}
      />
      <TextField label="Method" hint="between what and what, how often" {...field('method')} />
      <TextField label="Instrument" hint="and when it was last checked" {...field('instrument')} />
      <ChoiceField
        label="Panel"
        choices={[wholeCar, ...(panels ?? []).map((panel) => panel.id)]}
        wordsFor={(panelId) => (panelId === wholeCar ? wholeCar : nameOf(panelId))}
        {...field('panelId')}
      />
      <TextField label="By" {...field('madeBy')} />
      <NoteField label="Caption" {...field('caption')} />
    </EntrySheet>
  )
}
