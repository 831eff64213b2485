import type { Exhibit, Measurement } from '../../../shared-types/exhibit.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import type { KeptTape } from '../../../shared-types/tape-answer.ts'
import { heldTogether } from '../../parts-of-page/held-together.ts'
import { ReferenceLink } from '../../parts-of-page/ReferenceLink.tsx'
import { RegisterTable } from '../../parts-of-page/RegisterTable.tsx'
import { usePanelNames } from '../../store/panel-names.ts'
import { useShownUnits } from '../../store/shown-units.ts'
import { timeText } from '../identity/day-text.ts'
import { wholeCar } from './measured-panel.ts'
import { measuredText } from './measured-text.ts'

/** An exhibit with the measurement it holds. */
export interface MeasuredRow {
  readonly exhibit: Exhibit
  readonly measurement: Measurement
}

/** The measurements among the exhibits, in their order. */
export const measuredRows = (record: RecordView): readonly MeasuredRow[] =>
  record.exhibits.flatMap((exhibit) =>
    exhibit.measurement === null ? [] : [{ exhibit, measurement: exhibit.measurement }],
  )

interface MeasurementTableProps {
  readonly rows: readonly MeasuredRow[]
  /** What comes of the readings of a measurement by tape, by the number of its exhibit. */
  readonly tapeOf: ReadonlyMap<number, KeptTape>
  readonly onOpen: (row: MeasuredRow) => void
}

/** The measurements of the record; Enter opens one again. */
export function MeasurementTable({ rows, tapeOf, onOpen }: MeasurementTableProps) {
  const nameOf = usePanelNames()
  const units = useShownUnits()
  return (
    <RegisterTable
      label="Measurements"
      rows={rows}
      keyOf={({ exhibit }) => String(exhibit.number)}
      onOpen={onOpen}
      whenEmpty="No measurement yet. M adds one: what was measured, with what, how, and how exactly."
      columns={[
        {
          id: 'number',
          head: 'exhibit',
          cell: ({ exhibit }) => <ReferenceLink reference={{ kind: 'exhibit', key: String(exhibit.number) }} />,
        },
        {
          id: 'what',
          head: 'what',
          names: true,
          cell: ({ exhibit, measurement }) => (
            <>
              {measurement.what}
              <span className="under-line">{heldTogether(tapeOf.get(exhibit.number)?.caption ?? exhibit.caption)}</span>
            </>
          ),
        },
        {
          id: 'value',
          head: 'value',
          figures: true,
          cell: ({ exhibit, measurement }) => (
            <>
              <span className="quantity">{measuredText(measurement, units)}</span>
              <span className="under-line">{tapeOf.get(exhibit.number)?.answer.verdict}</span>
            </>
          ),
        },
        {
          id: 'method',
          head: 'method and instrument',
          cell: ({ exhibit, measurement }) => (
            <>
              {heldTogether(tapeOf.get(exhibit.number)?.method ?? measurement.method) || 'method not stated'}
              <span className="under-line">
                {measurement.instrument === '' ? 'instrument not stated' : measurement.instrument}
              </span>
            </>
          ),
        },
        {
          id: 'panel',
          head: 'panel',
          cell: ({ exhibit }) => (exhibit.panelId === null ? wholeCar : nameOf(exhibit.panelId)),
        },
        {
          id: 'when',
          head: 'by, when',
          cell: ({ exhibit }) => (
            <>
              {exhibit.madeBy === '' ? 'by whom not stated' : exhibit.madeBy}
              <span className="under-line quantity">{timeText(exhibit.addedAt)}</span>
            </>
          ),
        },
      ]}
    />
  )
}
