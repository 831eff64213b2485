import { coatingMeasures } from '../../shared-types/coating-measures.ts'
import type { PlaceLine } from '../../shared-types/coating-place.ts'
import type { RequestInput } from '../../shared-types/contract.ts'
import type { PlanPanel } from '../../shared-types/figure.ts'
import type { ViewId } from '../../shared-types/finding.ts'
import type { PanelId } from '../../shared-types/panel.ts'
import type { RecordView } from '../../shared-types/record.ts'
import { placeLines, substrateLines } from '../analysis/coating/place-words.ts'
import { bodyPlan } from '../figures/body-plan.ts'
import { edgeDistanceMm } from '../figures/edge-distance.ts'
import { substrateTable } from '../sheets/coating-lists.ts'
import { placedPanel, surfaceMm2 } from './coating-question.ts'
import type { UseCases } from './program.ts'

/** What is to be known before a reading at a place: what the gauge can read over what lies below, and edge and curve. */
function placeWords(view: RecordView, asked: RequestInput<'coating.place'>): readonly PlaceLine[] {
  const { panelId, view: viewId, at, gauge: number, mode, substrate } = asked
  const measures = coatingMeasures(view.commission)
  const gauge = view.gauges.find((own) => own.number === number)
  const panel = at === null ? placedPanel(view, panelId, [])?.panel : drawnIn(view, panelId, viewId)
  return [
    ...substrateLines(substrateTable(), gauge?.principle ?? null, mode, substrate, measures),
    ...placeLines(
      gauge?.probeDiameterMm ?? null,
      panel === undefined || at === null ? null : edgeDistanceMm(panel.outline, at),
      panel === undefined ? 1 : surfaceMm2(view, panel) / panel.areaMm2,
      measures,
    ),
  ]
}

function drawnIn({ particulars, commission }: RecordView, panelId: PanelId, viewId: ViewId): PlanPanel | undefined {
  const { sheets } = bodyPlan(particulars.body, commission.names, particulars.dimensions, particulars.conditions)
  const view = sheets.flatMap(({ views }) => views).find(({ id }) => id === viewId)
  return view?.panels.find((own) => own.panelId === panelId)
}

export const coatingPlaceUseCases: Pick<UseCases, 'coating.place'> = {
  'coating.place': async (program, asked) => placeWords(program.record().view(), asked),
}
