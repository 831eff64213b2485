import { gaugeMode, type SpotDraft } from '../../../shared-types/reading.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import type { EntryField } from '../../parts-of-page/useEntry.ts'
import { useRecordStore } from '../../store/record-store.ts'

export const gaugeNotNoted = 'not noted'

/** Number of the gauge a form's word stands for. */
export const gaugeNumber = (word: string): number | null => (word === gaugeNotNoted ? null : Number(word))

/** Gauge and mode a new reading begins with: those of the one before. */
export function gaugeAndModeBefore(record: RecordView | null): {
  readonly gauge: string
  readonly mode: SpotDraft['mode']
} {
  const before = record?.spots.at(-1)
  const gauge = before?.gauge ?? record?.gauges.at(-1)?.number ?? null
  return { gauge: gauge === null ? gaugeNotNoted : String(gauge), mode: before?.mode ?? 'magnetic' }
}

/** The gauge a reading is taken with, and what it is set to. */
export function ReadWith(props: { readonly gauge: EntryField<string>; readonly mode: EntryField<SpotDraft['mode']> }) {
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
    </>
  )
}
