import { useMemo, useState } from 'react'
import type { CoatingMap, MapLayer, MappedSpot } from '../../../shared-types/coating-map.ts'
import type { PlanFigure, PlanPanel } from '../../../shared-types/figure.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import type { CoatingUnit } from '../../../shared-types/units.ts'
import { CoatingMapDrawing, MapLegend, nextLetter } from '../../drawing/CoatingMapDrawing.tsx'
import type { PanelSpot } from '../../drawing/spot-labels.ts'
import { coatingFigure } from '../../parts-of-page/figure-text.ts'
import { KeyChoice, type KeyedChoice } from '../../parts-of-page/KeyChoice.tsx'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { usePanelNames } from '../../store/panel-names.ts'
import { planAsked } from '../../store/plan-asked.ts'
import { useAnswer } from '../../store/use-answer.ts'
import { Said } from './Said.tsx'
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

/** Everything the map says in words; the drawing says no more. */
function MapWords({ map }: { readonly map: CoatingMap }) {
  return (
    <dl>
      {map.conclusion === '' ? null : <Said head="Reads as">{map.conclusion}</Said>}
      {map.modes.map((words, index) => (
        <Said key={words} head={index === 0 ? 'Lead or filler' : ''}>
          {words}
        </Said>
      ))}
      {map.film === null ? null : <Said head="Paint">{map.film.words}</Said>}
      {map.fillerArea === null ? null : <Said head={`Thicker than ${map.thresholdUm} µm`}>{map.fillerArea.words}</Said>}
      {map.fillerVolume === null ? null : <Said head="Volume above the paint">{map.fillerVolume.words}</Said>}
      {map.notAssessedM2 === null ? null : (
        <Said head="Surface">
          {`${map.assessedM2.toFixed(2)} m² mapped; ${map.notAssessedM2.toFixed(2)} m² not assessed: behind what stands before it in this view.`}
        </Said>
      )}
      {map.leftOut.length === 0 ? null : <Said head="Left out">{`${map.leftOut.join('; ')}.`}</Said>}
      {map.next.map(({ words, at }, index) => (
        <Said key={`${at.u} ${at.v}`} head={index === 0 ? `Read next: ${nextLetter(index)}` : nextLetter(index)}>
          {words}
        </Said>
      ))}
      {map.stopping === '' ? null : <Said head="Reading on">{map.stopping}</Said>}
      <Said head="Gauge">{`${map.gauge}.`}</Said>
      {map.checks.map((words, index) => (
        <Said key={words} head={index === 0 ? 'Its checks' : ''}>
          {words}
        </Said>
      ))}
      {map.classes.length === 0 ? null : <Said head="By ranges">{`${map.classes.join('. ')}.`}</Said>}
      {map.ranges === '' ? null : <Said head="Ranges used">{map.ranges}</Said>}
      <Said head="What the map cannot tell">{map.cannotTell}</Said>
      {map.method === '' ? null : <Said head="Method">{map.method}</Said>}
    </dl>
  )
}

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
          <p className="note">{`${layer.title}, ${layer.unit}. Points: mean of each spot, ${unit}. Crosses: read next.${map.spots.some(({ marked }) => marked) ? ' Struck through: something speaks against the reading, see “its checks”.' : ''}`}</p>
        </>
      )}
      {map.problem === null ? null : <p className="note">{map.problem}</p>}
      <MapWords map={map} />
    </Section>
  )
}
