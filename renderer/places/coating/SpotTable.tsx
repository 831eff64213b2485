import { memo, useMemo } from 'react'
import { coatingFigure } from '../../../shared-types/coating-measures.ts'
import type { Spot } from '../../../shared-types/reading.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import type { CoatingUnit } from '../../../shared-types/units.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { leastForm } from '../../parts-of-page/number-forms.ts'
import { RegisterTable } from '../../parts-of-page/RegisterTable.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { usePanelNames } from '../../store/panel-names.ts'
import { useRecordStore } from '../../store/record-store.ts'
import { useAnswer } from '../../store/use-answer.ts'
import { declaredErrorUm } from './gauge-difference.ts'
import { type SpotSummary, summaryOf, type ThicknessOrMore } from './spot-summary.ts'

interface SpotRow {
  readonly spot: Spot
  readonly summary: SpotSummary
  readonly panel: string
  /** The panel's name stands on its first spot only. */
  readonly first: boolean
}

interface SpotTableProps {
  readonly record: RecordView
  readonly chosen: string | null
  readonly onOpen: (key: string | null) => void
  /** Begins the walk over the grid of the panel shown. */
  readonly onGrid: () => void
  /** Takes readings in from pasted columns. */
  readonly onColumns: () => void
}

const said = (thickness: ThicknessOrMore | null, unit: CoatingUnit): string =>
  thickness === null ? '–' : leastForm(coatingFigure(thickness.um, unit), thickness.orMore)

function useSpotRows(record: RecordView): readonly SpotRow[] {
  const nameOf = usePanelNames()
  const panels = useRecordStore((state) => state.panelList?.panels)
  return useMemo(() => {
    const stopOf = new Map((panels ?? []).map((panel) => [panel.id, panel.stop]))
    const stop = (spot: Spot) => stopOf.get(spot.panelId) ?? Number.MAX_SAFE_INTEGER
    const ordered = record.spots.toSorted(
      (one, other) => stop(one) - stop(other) || one.panelId.localeCompare(other.panelId) || one.number - other.number,
    )
    return ordered.map((spot, place) => ({
      spot,
      summary: summaryOf(spot.values),
      panel: nameOf(spot.panelId),
      first: ordered[place - 1]?.panelId !== spot.panelId,
    }))
  }, [record.spots, panels, nameOf])
}

const valuesText = (spot: Spot, unit: CoatingUnit): string =>
  spot.values
    .map((value) =>
      value.kind === 'no reading'
        ? 'no reading'
        : `${value.kind === 'more than' ? '>\u202f' : ''}${coatingFigure(value.um, unit)}`,
    )
    .join(' \u2002')

/** Every spot by panel in walking order: values as read, mean, median, half the range, and what the gauge allows. */
export const SpotTable = memo(function SpotTable({ record, chosen, onOpen, onGrid, onColumns }: SpotTableProps) {
  const unit = record.commission.coatingUnit
  const rows = useSpotRows(record)
  const { value: car } = useAnswer('coating.car', {}, record.journalNumber)
  const marked = new Map((car?.marked ?? []).map(({ spot, why }) => [spot, why]))
  const limitOf = ({ spot, summary }: SpotRow): string => {
    const gauge = record.gauges.find((row) => row.number === spot.gauge)
    if (gauge === undefined || summary.median === null) return 'not stated'
    const limit = declaredErrorUm(gauge, summary.median.um)
    return limit === null ? 'not stated' : coatingFigure(limit, unit)
  }
  return (
    <Section
      head={`Coating, ${unit}`}
      level="column"
      beside={`${rows.length} ${rows.length === 1 ? 'spot' : 'spots'}`}
      action={
        <>
          <ActionKey keys="W" label="walk a grid" onAct={onGrid} disabled={record.readOnly} />
          <ActionKey keys="I" label="from columns" onAct={onColumns} disabled={record.readOnly} />
          <ActionKey keys="R" label="add" name="Add a spot" onAct={() => onOpen(null)} disabled={record.readOnly} />
        </>
      }
    >
      <RegisterTable
        label="Coating spots by panel"
        rows={rows}
        keyOf={({ spot }) => String(spot.number)}
        onOpen={({ spot }) => onOpen(String(spot.number))}
        chosen={chosen}
        whenEmpty="No reading yet. G adds the gauge, H checks it on bare metal and a shim; then W walks a grid over one panel and calls out every place, some 25 for a first map. R adds a single spot."
        columns={[
          {
            id: 'panel',
            head: 'panel',
            names: true,
            cell: ({ panel, first }) => <span className={first ? 'strong' : 'repeated-panel'}>{panel}</span>,
          },
          {
            id: 'spot',
            head: 'spot',
            cell: ({ spot }) => (
              <>
                <span className="figures">{`R\u202f${spot.number}`}</span>
                {marked.has(spot.number) ? <span className="strong"> marked</span> : null}
                <span className="under-line">{spot.where === '' ? 'place not noted' : spot.where}</span>
                {marked.has(spot.number) ? (
                  <span className="under-line">{marked.get(spot.number)?.join('; ')}</span>
                ) : null}
              </>
            ),
          },
          { id: 'values', head: 'values', figures: true, cell: ({ spot }) => valuesText(spot, unit) },
          { id: 'n', head: 'n', figures: true, cell: ({ summary }) => summary.n },
          { id: 'mean', head: 'mean', figures: true, cell: ({ summary }) => said(summary.mean, unit) },
          {
            id: 'median',
            head: 'median',
            figures: true,
            cell: ({ summary }) => <span className="strong">{said(summary.median, unit)}</span>,
          },
          {
            id: 'spread',
            head: 'half range',
            figures: true,
            cell: ({ summary }) => (summary.spread === null ? '–' : said(summary.spread, unit)),
          },
          { id: 'limit', head: 'declared error', figures: true, cell: limitOf },
          {
            id: 'mode',
            head: 'mode',
            cell: ({ spot }) => (
              <>
                <span>{spot.mode}</span>
                {spot.substrate === 'unknown' ? null : <span className="under-line">over {spot.substrate}</span>}
                <span className="under-line">{spot.gauge === null ? 'gauge not noted' : `G\u202f${spot.gauge}`}</span>
              </>
            ),
          },
        ]}
      />
      <p className="place-note">
        Half range is half the difference of the largest and the smallest value. “&gt;” is a gauge out of range: more
        than that. The declared error is what the gauge’s maker declares at the median, a + b · t either way; it is not
        the uncertainty of the coating. A reading that failed is in no mean. The map is computed from these readings, as
        read.
      </p>
    </Section>
  )
})
