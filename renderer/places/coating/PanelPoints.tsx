import { useMemo } from 'react'
import type { PlanFigure, PlanPanel, PlanView } from '../../../shared-types/figure.ts'
import type { Spot } from '../../../shared-types/reading.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { coatingFigure } from '../../parts-of-page/figure-text.ts'
import { Section } from '../../parts-of-page/Section.tsx'
import { usePanelNames } from '../../store/panel-names.ts'
import { useAnswer } from '../../store/use-answer.ts'
import { summaryOf } from './spot-summary.ts'

interface PanelInView {
  readonly view: PlanView
  readonly panel: PlanPanel
}

function panelInView(figure: PlanFigure | null, panelId: string, spots: readonly Spot[]): PanelInView | null {
  const shown = (figure?.sheets ?? [])
    .flatMap((sheet) => sheet.views)
    .flatMap((view) => view.panels.flatMap((panel) => (panel.panelId === panelId ? [{ view, panel }] : [])))
  const pointsIn = (view: PlanView): number => spots.filter((spot) => spot.view === view.id && spot.at !== null).length
  const [best] = shown.toSorted(
    (one, other) => pointsIn(other.view) - pointsIn(one.view) || other.panel.areaMm2 - one.panel.areaMm2,
  )
  return best ?? null
}

/** Extent of a path's numbers, taken in pairs; curve handles count too, which only widens the margin. */
function boxOf(outline: string): { u: number; v: number; width: number; height: number } {
  const numbers = (outline.match(/-?\d+(?:\.\d+)?/gu) ?? []).map(Number)
  const us = numbers.filter((_, place) => place % 2 === 0)
  const vs = numbers.filter((_, place) => place % 2 === 1)
  const u = Math.min(...us)
  const v = Math.min(...vs)
  return { u, v, width: Math.max(...us) - u, height: Math.max(...vs) - v }
}

/** The outline of one panel with its spots as points, each with its number and median. */
export function PanelPoints({ record, panelId }: { readonly record: RecordView; readonly panelId: string }) {
  const nameOf = usePanelNames()
  const unit = record.commission.coatingUnit
  const plan = useAnswer('figures.plan', { body: record.particulars.body, names: record.commission.names })
  const spots = useMemo(() => record.spots.filter((spot) => spot.panelId === panelId), [record.spots, panelId])
  const shown = useMemo(() => panelInView(plan.value, panelId, spots), [plan.value, panelId, spots])
  if (spots.length === 0) return null
  const placed = spots.filter((spot) => spot.at !== null && spot.view === shown?.view.id)
  const unplaced = spots.length - placed.length
  const box = shown === null ? null : boxOf(shown.panel.outline)
  const scale = box === null ? 1 : Math.max(box.width / 320, box.height / 190)
  const margin = 26 * scale
  return (
    <Section head={nameOf(panelId)} level="column" beside={shown === null ? 'not drawn' : shown.view.name}>
      {box === null || shown === null ? null : (
        <svg
          className="panel-points"
          viewBox={`${box.u - margin} ${box.v - margin} ${box.width + 2 * margin} ${box.height + 2 * margin}`}
          role="img"
          aria-label={`${nameOf(panelId)}: ${placed.length} spots placed; the table says their values`}
        >
          <path d={shown.panel.outline} />
          {placed.map((spot) => {
            const { median } = summaryOf(spot.values)
            const at = spot.at ?? { u: 0, v: 0 }
            return (
              <g key={spot.number}>
                <circle cx={at.u} cy={at.v} r={2.4 * scale} />
                <text x={at.u + 5 * scale} y={at.v - 4 * scale} fontSize={11.5 * scale}>
                  {`R${spot.number} ${median === null ? 'no reading' : `${median.orMore ? '>' : ''}${coatingFigure(median.um, unit)}`}`}
                </text>
              </g>
            )
          })}
        </svg>
      )}
      <p className="note">
        Medians, {unit}.{' '}
        {unplaced === 0 ? '' : `${unplaced} ${unplaced === 1 ? 'spot has' : 'spots have'} no place in this view.`}
      </p>
    </Section>
  )
}
