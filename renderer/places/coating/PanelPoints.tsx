import { useMemo } from 'react'
import type { PlanFigure, PlanPanel, PlanView } from '../../../shared-types/figure.ts'
import type { Spot } from '../../../shared-types/reading.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import type { CoatingUnit } from '../../../shared-types/units.ts'
import { PanelDrawing } from '../../drawing/PanelDrawing.tsx'
import type { PanelSpot } from '../../drawing/spot-labels.ts'
import { coatingFigure } from '../../parts-of-page/figure-text.ts'
import { Section } from '../../parts-of-page/Section.tsx'
import { usePanelNames } from '../../store/panel-names.ts'
import { planAsked } from '../../store/plan-asked.ts'
import { useAnswer } from '../../store/use-answer.ts'
import { summaryOf } from './spot-summary.ts'

interface PanelInView {
  readonly view: PlanView
  readonly panel: PlanPanel
}

const standsIn = (spot: Spot, view: PlanView | undefined): boolean => spot.at !== null && spot.view === view?.id

/** The view in which most of the spots stand, and among those the one in which the panel is largest. */
function viewFor(figure: PlanFigure | null, panelId: string, spots: readonly Spot[]): PanelInView | null {
  const shown = (figure?.sheets ?? [])
    .flatMap((sheet) => sheet.views)
    .flatMap((view) => view.panels.flatMap((panel) => (panel.panelId === panelId ? [{ view, panel }] : [])))
  const points = (view: PlanView): number => spots.filter((spot) => standsIn(spot, view)).length
  const [best] = shown.toSorted(
    (one, other) => points(other.view) - points(one.view) || other.panel.areaMm2 - one.panel.areaMm2,
  )
  return best ?? null
}

function pointOf(spot: Spot, unit: CoatingUnit): PanelSpot[] {
  if (spot.at === null) return []
  const { median } = summaryOf(spot.values)
  const figure = median === null ? 'no reading' : `${median.orMore ? '>' : ''}${coatingFigure(median.um, unit)}`
  return [{ letter: `R${spot.number}`, at: spot.at, figure }]
}

/** The outline of one panel with its spots as points, each with its number and median. */
export function PanelPoints({ record, panelId }: { readonly record: RecordView; readonly panelId: string }) {
  const nameOf = usePanelNames()
  const unit = record.commission.coatingUnit
  const plan = useAnswer('figures.plan', planAsked(record))
  const spots = useMemo(() => record.spots.filter((spot) => spot.panelId === panelId), [record.spots, panelId])
  const shown = useMemo(() => viewFor(plan.value, panelId, spots), [plan.value, panelId, spots])
  if (spots.length === 0) return null
  const placed = spots.filter((spot) => standsIn(spot, shown?.view))
  const unplaced = spots.length - placed.length
  return (
    <Section head={nameOf(panelId)} level="column" beside={shown === null ? 'not drawn' : shown.view.name}>
      {shown === null ? null : (
        <PanelDrawing
          view={shown.view}
          panel={shown.panel}
          extents={[]}
          spots={placed.flatMap((spot) => pointOf(spot, unit))}
          cursor={null}
          label={`${nameOf(panelId)}: ${placed.length} spots placed; the table says their values`}
        />
      )}
      <p className="note">
        {`Medians, ${unit}. `}
        {unplaced === 0 ? '' : `${unplaced} ${unplaced === 1 ? 'spot has' : 'spots have'} no place in this view.`}
      </p>
    </Section>
  )
}
