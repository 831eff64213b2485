import { useMemo } from 'react'
import type { Exhibit } from '../../../shared-types/exhibit.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import { EntrySheet } from '../../parts-of-page/EntrySheet.tsx'
import { NumberField } from '../../parts-of-page/NumberField.tsx'
import { TextField } from '../../parts-of-page/TextField.tsx'
import { useEntry } from '../../parts-of-page/useEntry.ts'
import { change } from '../../store/ask.ts'
import { useRecordStore } from '../../store/record-store.ts'
import { useShownUnits } from '../../store/shown-units.ts'
import { BelongsFields } from './BelongsFields.tsx'
import { choiceOf, panelOf } from './measured-panel.ts'
import { TellsFollowing } from './TellsFollowing.tsx'
import { keptValue, typedUnits, typedValue } from './typed-measurement.ts'

/** A metric value is shown as it was typed; of one that was turned into inches so much as its figures bear. */
const SHOWN_DECIMALS = { mm: 6, in: 4 } as const

/** A measurement as it stands in the form; `value` is null until a number is typed. */
interface MeasurementEntry {
  readonly what: string
  readonly value: number | null
  readonly unit: string
  readonly uncertainty: number | null
  readonly method: string
  readonly instrument: string
  readonly panelId: string
  readonly madeBy: string
  readonly caption: string
}

interface MeasurementFormProps {
  /** The kept measurement that is opened again; null for a new one. */
  readonly kept: Exhibit | null
  readonly onLeave: () => void
}

/** A measurement by hand, as an exhibit: a new one, or one that is corrected and keeps its number. */
export function MeasurementForm({ kept, onLeave }: MeasurementFormProps) {
  const examiner = useRecordStore((state) => state.record?.commission.examiner ?? '')
  const units = useShownUnits()
  const place = useRecordStore((state) => state.record?.visits.at(-1)?.place ?? '')
  const initial = useMemo<MeasurementEntry>(
    () => ({
      what: '',
      value: null,
      unit: units.lengthUnit,
      uncertainty: null,
      method: '',
      instrument: '',
      ...kept?.measurement,
      ...(kept?.measurement == null ? {} : typedValue(kept.measurement, units)),
      panelId: choiceOf(kept?.panelId ?? null),
      madeBy: kept?.madeBy ?? examiner,
      caption: kept?.caption ?? '',
    }),
    [kept, examiner, units],
  )
  const entry = useEntry<MeasurementEntry>({
    name: kept === null ? 'measurement.add' : `exhibit.remeasure ${kept.number}`,
    initial,
    keep: async (said) => {
      const { what, value, unit, uncertainty, method, instrument } = said
      if (what.trim() === '') {
        throw new ProblemError('input-refused', 'Write what was measured.', { field: 'what' })
      }
      if (value === null) throw new ProblemError('input-refused', 'Write the value as a number.', { field: 'value' })
      const words = {
        caption: said.caption,
        madeBy: said.madeBy,
        place: kept?.place ?? place,
        panelId: panelOf(said.panelId),
        view: kept?.view ?? null,
        at: kept?.at ?? null,
        inReport: kept?.inReport ?? true,
      }
      const measurement = { what, ...keptValue({ value, uncertainty, unit }), method, instrument }
      await (kept === null
        ? change('exhibit.add', { draft: { ...words, kind: 'measurement', measurement } })
        : change('exhibit.remeasure', { number: kept.number, words, measurement }))
    },
    kept: onLeave,
  })
  const { field, draft } = entry
  return (
    <EntrySheet
      title={kept === null ? 'A measurement' : `Measurement E\u202f${kept.number}`}
      over={units.lengthUnit === 'in' ? 'kept as the metric value of what was read' : 'kept in the unit it was read in'}
      entry={entry}
      onLeave={onLeave}
      withdraw={kept === null ? null : { by: 'exhibit.withdraw', number: kept.number }}
    >
      {kept?.measurement == null ? null : <TellsFollowing number={kept.number} unit={kept.measurement.unit} />}
      <TextField label="What was measured" required autoFocus {...field('what')} />
      <NumberField label="Value" quantity="plain" decimals={SHOWN_DECIMALS} {...field('value')} />
      <ChoiceField label="Unit" choices={typedUnits(units, draft.unit)} {...field('unit')} />
      <NumberField
        label="Uncertainty U, k = 2"
        quantity="plain"
        decimals={SHOWN_DECIMALS}
        least={0}
        hint="the same unit; left empty it is printed as: uncertainty not stated"
        {...field('uncertainty')}
      />
      <TextField label="Method" hint="between what and what, how often" {...field('method')} />
      <TextField label="Instrument" hint="and when it was last checked" {...field('instrument')} />
      <BelongsFields panel={field('panelId')} madeBy={field('madeBy')} caption={field('caption')} />
    </EntrySheet>
  )
}
