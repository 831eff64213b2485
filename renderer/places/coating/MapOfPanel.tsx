import { useMemo, useState } from 'react'
import type { CoatingMap, MapLayer, MappedSpot } from '../../../shared-types/coating-map.ts'
import type { PlanFigure, PlanPanel } from '../../../shared-types/figure.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import type { CoatingUnit } from '../../../shared-types/units.ts'
import { CoatingMapDrawing, MapLegend } from '../../drawing/CoatingMapDrawing.tsx'
import type { PanelSpot } from '../../drawing/spot-labels.ts'
import { coatingFigure } from '../../parts-of-page/figure-text.ts'
import { KeyChoice, type KeyedChoice } from '../../parts-of-page/KeyChoice.tsx'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { usePanelNames } from '../../store/panel-names.ts'
import { planAsked } from '../../store/plan-asked.ts'
import { useAnswer } from '../../store/use-answer.ts'
import { MapWords } from './MapWords.tsx'
import './coating-map.css'

function panelIn(figure: PlanFigure | null, map: CoatingMap): { panel: PlanPanel; viewName: string } | null {
  const view = figure?.sheets.flatMap((sheet) => sheet.views).find(({ id }) => id === map.view)
  const panel = view?.panels.find(({ panelId }) => panelId === map.panelId)
  return view === undefined || panel === undefined ? null : { panel, viewName: view.name }
}

const spotOf =
  (unit: CoatingUnit) =>
  ({ spot, at, um, orMore }: MappedSpot): PanelSpot => ({
    letter: `R${spot}`,
    at,
    figure: um === null ? 'no reading' : `${orMore ? '>' : ''}${coatingFigure(um, unit)}`,
  })

const layerChoices: readonly KeyedChoice<MapLayer['id']>[] = [
  { choice: 'thickness', keys: 'T' },
  { choice: 'uncertainty', keys: 'U' },
  { choice: 'filler chance', keys: 'F', words: 'chance of filler' },
]

/** The map of one panel: thickness, its uncertainty or the chance of filler, with area, volume and where to read next. */
export function MapOfPanel({ record, panelId }: { readonly record: RecordView; readonly panelId: string }) {
  const nameOf = usePanelNames()
  const unit = record.commission.coatingUnit
  const plan = useAnswer('figures.plan', planAsked(record))
  const { value: map, problem } = useAnswer('coating.map', { panelId }, record.journalNumber)
  const [chosen, setChosen] = useState<MapLayer['id']>('thickness')
  const placed = useMemo(() => (map === null ? null : panelIn(plan.value, map)), [plan.value, map])
  const layers = map?.layers ?? []
  const layer = layers.find(({ id }) => id === chosen) ?? layers[0]
  if (map === null || map.panelId !== panelId) {
    return (
      <Section head={nameOf(panelId)} level="column" beside={problem === null ? 'the map is being computed' : ''}>
        <ProblemNote problem={problem} />
      </Section>
    )
  }
  return (
    <Section head={nameOf(panelId)} level="column" beside={placed === null ? 'not drawn' : placed.viewName}>
      {layer === undefined ? null : (
        <KeyChoice
          label="What the map shows"
          labelShown={false}
          choices={layerChoices}
          value={layer.id}
          onChoose={setChosen}
          layout="line"
        />
      )}
      {placed === null ? null : (
        <CoatingMapDrawing
          panel={placed.panel}
          map={map}
          layer={layer}
          spots={map.spots.map(spotOf(unit))}
          label={`${nameOf(panelId)}: ${layer === undefined ? 'spots read' : layer.title}; the lines below say the same in words`}
        />
      )}
      {layer === undefined ? null : (
        <>
          <MapLegend layer={layer} />
          <p className="note">{`${layer.title}, ${layer.unit}. Points: mean of each spot, ${unit}. Crosses: read next.${map.spots.some(({ marked }) => marked) ? ' Struck through: something speaks against the reading.' : ''}`}</p>
        </>
      )}
      {map.problem === null ? null : <p className="note">{map.problem}</p>}
      <MapWords map={map} />
    </Section>
  )
}
