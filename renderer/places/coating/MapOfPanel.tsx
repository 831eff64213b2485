import { useCallback, useEffect, useMemo, useState } from 'react'
import type { CutLine } from '../../../shared-types/coating-cut.ts'
import type { CoatingMap, MapLayer, MappedSpot } from '../../../shared-types/coating-map.ts'
import { coatingFigure, coatingMeasures } from '../../../shared-types/coating-measures.ts'
import type { PlanFigure, PlanPanel } from '../../../shared-types/figure.ts'
import type { PlanPoint } from '../../../shared-types/finding.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import type { CoatingUnit } from '../../../shared-types/units.ts'
import { CoatingMapDrawing, MapLegend } from '../../drawing/CoatingMapDrawing.tsx'
import type { CutEnd } from '../../drawing/CutEnds.tsx'
import { boxOf, outlinePoints } from '../../drawing/outline-shape.ts'
import { useOwnLook } from '../../drawing/own-look.ts'
import { wholeSheet } from '../../drawing/plan-scale.ts'
import type { PanelSpot } from '../../drawing/spot-labels.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { KeyChoice, type KeyedChoice } from '../../parts-of-page/KeyChoice.tsx'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { usePanelNames } from '../../store/panel-names.ts'
import { planAsked } from '../../store/plan-asked.ts'
import { useAnswer } from '../../store/use-answer.ts'
import { CutOfPanel } from './CutOfPanel.tsx'
import { MapWords } from './MapWords.tsx'
import { mapKeys } from './map-keys.ts'
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

/** All that is known of one spot, for the line that names what is reached. */
const wordsOfSpot = (spots: readonly MappedSpot[], unit: CoatingUnit, letter: string): string => {
  const spot = spots.find(({ spot: number }) => `R${number}` === letter)
  if (spot === undefined) return letter
  const { um, readUm, orMore, uncertaintyUm, flags } = spot
  if (um === null) return `${letter}: no reading${flags.length === 0 ? '' : `; ${flags.join('; ')}`}`
  const figure = (value: number) => coatingFigure(value, unit)
  const asRead = readUm === null || figure(readUm) === figure(um) ? '' : `, as read ${figure(readUm)}`
  const known = uncertaintyUm === null ? '' : `, u = ${figure(uncertaintyUm)}`
  return `${letter}: ${orMore ? 'more than ' : ''}${figure(um)} ${unit}${asRead}${known}${flags.length === 0 ? '' : `; ${flags.join('; ')}`}`
}

/** The line of a panel's cut: the one through the thickest place until another is drawn. */
function useCut(map: CoatingMap | null, panelId: string) {
  const [own, setOwn] = useState<{ readonly panelId: string; readonly line: CutLine } | null>(null)
  const [picked, setPicked] = useState<'from' | 'to' | null>(null)
  const rule = map?.panelId === panelId ? map.cut : null
  const line = own?.panelId === panelId ? own.line : rule
  const move = (end: CutEnd, to: PlanPoint) => {
    if (line !== null) setOwn({ panelId, line: { from: line.from, to: line.to, [end]: to } })
  }
  const pick = (at: PlanPoint) => {
    if (picked === 'from' || line === null) setOwn({ panelId, line: { from: at, to: line?.to ?? at } })
    else setOwn({ panelId, line: { from: line.from, to: at } })
    setPicked(picked === 'from' ? 'to' : null)
  }
  return {
    line,
    rule: own?.panelId === panelId ? '' : (rule?.rule ?? ''),
    move,
    pick: picked === null ? null : pick,
    draw: (across: CutLine) => {
      if (line === null) setOwn({ panelId, line: across })
      setPicked('from')
    },
    leave: () => setPicked(null),
    toRule: own?.panelId === panelId && rule !== null ? () => setOwn(null) : null,
  }
}

/** The map of one panel: thickness, its uncertainty or the chance of filler, with area, volume and where to read next. */
export function MapOfPanel({ record, panelId }: { readonly record: RecordView; readonly panelId: string }) {
  const nameOf = usePanelNames()
  const unit = record.commission.coatingUnit
  const measures = coatingMeasures(record.commission)
  const plan = useAnswer('figures.plan', planAsked(record))
  const { value: map, problem } = useAnswer('coating.map', { panelId }, record.journalNumber)
  const [chosen, setChosen] = useState<MapLayer['id']>('thickness')
  const placed = useMemo(() => (map === null ? null : panelIn(plan.value, map)), [plan.value, map])
  const layers = map?.layers ?? []
  const layer = layers.find(({ id }) => id === chosen) ?? layers[0]
  const look = useOwnLook()
  const cut = useCut(map, panelId)
  const box = useMemo(() => (placed === null ? null : boxOf(outlinePoints(placed.panel.outline))), [placed])
  // biome-ignore lint/correctness/useExhaustiveDependencies: another panel is seen as a whole at first.
  useEffect(() => look.change(() => wholeSheet), [look, panelId])
  const draw = () => {
    if (box === null || layer === undefined) return
    const middle = box.v + box.height / 2
    cut.draw({ from: { u: box.u, v: middle }, to: { u: box.u + box.width, v: middle } })
    document.querySelector<SVGElement>('[data-cut-end="from"]')?.focus()
  }
  useKeys('Map', [
    ...(box === null ? [] : mapKeys(look, { widthMm: box.width, heightMm: box.height })),
    { keys: 'C', does: 'cut along another line: two presses, or arrows on its ends', run: draw },
    ...(cut.pick === null ? [] : [{ keys: 'Escape', does: 'leave the line as it was', run: cut.leave }]),
  ])
  const spots = useMemo(() => (map?.spots ?? []).map(spotOf(unit)), [map, unit])
  const wordsOf = useCallback((letter: string) => wordsOfSpot(map?.spots ?? [], unit, letter), [map, unit])
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
          spots={spots}
          label={`${nameOf(panelId)}: ${layer === undefined ? 'spots read' : layer.title}; the lines below say the same in words`}
          look={look}
          wordsOf={wordsOf}
          cut={{
            line: layer === undefined ? null : cut.line,
            nameOf: (end) =>
              `End ${end === 'from' ? 1 : 2} of the cut: arrows move it by ${measures.smallLength.text(10)}, with Shift by ${measures.smallLength.figure(1)}`,
            onMove: cut.move,
            onPick: cut.pick,
          }}
        />
      )}
      {layer === undefined ? null : (
        <>
          <MapLegend layer={layer} />
          <p className="note">{`${layer.title}, ${layer.printed.unit}. Points: mean of each spot, ${unit}. Crosses: read next.${map.spots.some(({ marked }) => marked) ? ' Struck through: something speaks against the reading.' : ''} Press the map, then the wheel comes nearer; drag to move it.`}</p>
        </>
      )}
      {map.problem === null ? null : <p className="note">{map.problem}</p>}
      {cut.line === null || layer === undefined || box === null ? (
        layer === undefined ? null : (
          <p className="map-act">
            <ActionKey keys="C" label="cut along a line" onAct={draw} />
          </p>
        )
      ) : (
        <CutOfPanel
          record={record}
          panelId={panelId}
          line={cut.line}
          rule={cut.rule}
          corner={box}
          onMove={cut.move}
          onDraw={cut.pick === null ? draw : null}
          onRule={cut.toRule}
        />
      )}
      <MapWords map={map} measures={measures} />
    </Section>
  )
}
