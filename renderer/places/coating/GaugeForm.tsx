import { usualGaugeError } from '../../../shared-types/coating.ts'
import { coatingMeasures } from '../../../shared-types/coating-measures.ts'
import { type Gauge, type GaugeDraft, gaugeDraft } from '../../../shared-types/reading.ts'
import { metricUnits, type ShownUnits } from '../../../shared-types/units.ts'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import { DayField } from '../../parts-of-page/DayField.tsx'
import { EntrySheet } from '../../parts-of-page/EntrySheet.tsx'
import { NumberField } from '../../parts-of-page/NumberField.tsx'
import { TextField } from '../../parts-of-page/TextField.tsx'
import { useEntry } from '../../parts-of-page/useEntry.ts'
import { change } from '../../store/ask.ts'
import { useRecordStore } from '../../store/record-store.ts'
import { thicknessText } from './reading-entry.ts'

const empty: GaugeDraft = {
  name: '',
  serial: '',
  principle: 'magnetic induction',
  rangeUm: null,
  errorUm: null,
  errorPercent: null,
  probeDiameterMm: null,
  certifiedOn: null,
  certificate: '',
}

const supposedError = (units: ShownUnits): string =>
  `${coatingMeasures(units).notedThickness.text(usualGaugeError.constantUm)} + ${usualGaugeError.percent} %`

/** Adds or amends a gauge, with the error its maker declares. */
export function GaugeForm({ row, onLeave }: { readonly row: Gauge | null; readonly onLeave: () => void }) {
  const { number, ...initial } = row ?? { ...empty, number: null }
  const entry = useEntry<GaugeDraft>({
    name: number === null ? 'gauge.add' : `gauge.amend ${number}`,
    initial,
    keep: (draft) => (number === null ? change('gauge.add', { draft }) : change('gauge.amend', { number, draft })),
    kept: onLeave,
  })
  const { field } = entry
  const units = useRecordStore((state) => state.record?.commission ?? metricUnits)
  return (
    <EntrySheet
      title={number === null ? 'A gauge' : `Gauge G ${number}`}
      over="what its sheet declares"
      entry={entry}
      onLeave={onLeave}
    >
      <TextField label="Name" required autoFocus {...field('name')} />
      <TextField label="Serial number" figures {...field('serial')} />
      <ChoiceField
        label="Principle"
        choices={gaugeDraft.shape.principle.options}
        hint="magnetic induction reads on steel, eddy current on aluminium, dual on both"
        {...field('principle')}
      />
      <NumberField
        label="Declared error, constant part a"
        quantity="coating"
        least={0}
        hint={`from its papers; left empty, ${supposedError(units)} is supposed and said (common practice, no source)`}
        {...field('errorUm')}
      />
      <NumberField
        label="Declared error, part of the reading b"
        quantity="plain"
        unit="%"
        least={0}
        most={100}
        {...field('errorPercent')}
      />
      <NumberField
        label="Reads up to"
        quantity="coating"
        least={0}
        hint={`beyond it write > before the figure, such as >${thicknessText(2000, units.coatingUnit)}`}
        {...field('rangeUm')}
      />
      <NumberField
        label="Probe diameter"
        quantity="length"
        least={0}
        hint="measure it: warnings of edges and curves rest on it"
        {...field('probeDiameterMm')}
      />
      <DayField label="Certified on" {...field('certifiedOn')} />
      <TextField label="Certificate" figures {...field('certificate')} />
    </EntrySheet>
  )
}
