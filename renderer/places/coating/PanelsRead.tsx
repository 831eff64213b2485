import { useMemo } from 'react'
import { coatingFigure } from '../../../shared-types/coating-measures.ts'
import type { Spot } from '../../../shared-types/reading.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { Section } from '../../parts-of-page/Section.tsx'
import { usePanelNames } from '../../store/panel-names.ts'
import { useRecordStore } from '../../store/record-store.ts'
import { summaryOf, type ThicknessOrMore } from './spot-summary.ts'

interface PanelRead {
  readonly panelId: string
  readonly spots: number
  readonly least: ThicknessOrMore | null
  readonly most: ThicknessOrMore | null
}

/** Panels with spots in walking order, each with its thinnest and thickest spot. */
function usePanelsRead(spots: readonly Spot[]): readonly PanelRead[] {
  const panels = useRecordStore((state) => state.panelList?.panels)
  return useMemo(() => {
    const stopOf = new Map((panels ?? []).map(({ id, stop }) => [id, stop]))
    const ids = [...new Set(spots.map(({ panelId }) => panelId))]
    const stop = (id: string) => stopOf.get(id) ?? Number.MAX_SAFE_INTEGER
    return ids
      .toSorted((one, other) => stop(one) - stop(other) || one.localeCompare(other))
      .map((panelId) => {
        const own = spots.filter((spot) => spot.panelId === panelId)
        const medians = own
          .flatMap(({ values }) => summaryOf(values).median ?? [])
          .toSorted((one, other) => one.um - other.um)
        return { panelId, spots: own.length, least: medians[0] ?? null, most: medians.at(-1) ?? null }
      })
  }, [panels, spots])
}

/** The panels read, to choose the one whose map is shown: how many spots, and from which thickness to which. */
export function PanelsRead(props: {
  readonly record: RecordView
  readonly shown: string | null
  readonly onShow: (panelId: string) => void
}) {
  const { record, shown, onShow } = props
  const unit = record.commission.coatingUnit
  const nameOf = usePanelNames()
  const rows = usePanelsRead(record.spots)
  const said = (thickness: ThicknessOrMore | null) => (
    <>
      {thickness?.orMore === true ? 'at least ' : ''}
      <span className="figures">{thickness === null ? '–' : coatingFigure(thickness.um, unit)}</span>
    </>
  )
  if (rows.length === 0) return null
  return (
    <Section head="Panels read" level="column" beside={`spots · thinnest to thickest, ${unit}`}>
      <div className="panels-read">
        {rows.map(({ panelId, spots, least, most }) => (
          <button
            key={panelId}
            type="button"
            className="line-button panel-read"
            aria-pressed={panelId === shown}
            onClick={() => onShow(panelId)}
          >
            <span>{nameOf(panelId)}</span>
            <span className="panel-read-from figures">{spots}</span>
            <span className="panel-read-from">
              {said(least)} to {said(most)}
            </span>
          </button>
        ))}
      </div>
    </Section>
  )
}
