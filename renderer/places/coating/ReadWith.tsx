import { coatingSubstrate } from '../../../shared-types/coating.ts'
import { type Gauge, gaugeMode, type SpotDraft } from '../../../shared-types/reading.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import type { EntryField } from '../../parts-of-page/useEntry.ts'
import { useRecordStore } from '../../store/record-store.ts'
import { PlaceLines } from './PlaceLines.tsx'

export const gaugeNotNoted = 'not noted'

/** Number of the gauge a form's word stands for. */
export const gaugeNumber = (word: string): number | null => (word === gaugeNotNoted ? null : Number(word))

/** What a reading is taken with, as words of a form. */
export interface ReadWithEntry {
  readonly gauge: string
  readonly mode: SpotDraft['mode']
  readonly substrate: SpotDraft['substrate']
}

/** What a new reading begins with: gauge and mode of the one before, and what lay below on the same panel; a leaded seam is a place, not a panel. */
export function readWithBefore(record: RecordView | null, panelId: string | null): ReadWithEntry {
  const before = record?.spots.at(-1)
  const gauge = before?.gauge ?? record?.gauges.at(-1)?.number ?? null
  const below = record?.spots.findLast((spot) => spot.panelId === panelId && spot.substrate !== 'lead-loaded seam')
  return {
    gauge: gauge === null ? gaugeNotNoted : String(gauge),
    mode: before?.mode ?? firstMode(record?.gauges.at(-1)),
    substrate: below?.substrate ?? 'unknown',
  }
}

/** A gauge of one principle has one mode; a dual one is set to steel first. */
function firstMode(gauge: Gauge | undefined): SpotDraft['mode'] {
  if (gauge?.principle === 'eddy current' || gauge?.principle === 'ultrasonic') return gauge.principle
  return 'magnetic'
}

interface ReadWithProps {
  readonly gauge: EntryField<string>
  readonly mode: EntryField<SpotDraft['mode']>
  readonly substrate: EntryField<SpotDraft['substrate']>
  /** The place being entered, which may stand too near an edge. */
  readonly place: Pick<SpotDraft, 'panelId' | 'view' | 'at'>
}

/** The gauge a reading is taken with, what it is set to and what lies below, and what it can read there. */
export function ReadWith(props: ReadWithProps) {
  const gauges = useRecordStore((state) => state.record?.gauges)
  return (
    <>
      <ChoiceField
        label="Gauge"
        choices={[gaugeNotNoted, ...(gauges ?? []).map((gauge) => String(gauge.number))]}
        wordsFor={(choice) => {
          const gauge = gauges?.find((candidate) => String(candidate.number) === choice)
          return gauge === undefined ? gaugeNotNoted : `G ${gauge.number} ${gauge.name}`
        }}
        {...props.gauge}
      />
      <ChoiceField label="Mode" choices={gaugeMode.options} {...props.mode} />
      <ChoiceField label="What lies below" choices={coatingSubstrate.options} {...props.substrate} />
      <PlaceLines
        asked={{
          ...props.place,
          gauge: gaugeNumber(props.gauge.value),
          mode: props.mode.value,
          substrate: props.substrate.value,
        }}
      />
    </>
  )
}
