import { useCallback, useEffect, useMemo, useRef } from 'react'
import { type PanelDefinition, panelName } from '../../../shared-types/panel.ts'
import { PlacePage } from '../../parts-of-page/PlacePage.tsx'
import { NoRecordPage } from '../../parts-of-page/RecordPlace.tsx'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { useRecordStore } from '../../store/record-store.ts'
import { takeInHand, useScreenStore } from '../../store/screen-store.ts'
import { CoverageStrip } from './CoverageStrip.tsx'
import { importPhotographs } from './import-photographs.ts'
import { PanelEvidence } from './PanelEvidence.tsx'
import { PlanArea } from './PlanArea.tsx'
import { PlanSheets } from './PlanSheets.tsx'
import { PlanTable } from './PlanTable.tsx'
import { WalkSheet } from './WalkSheet.tsx'
import { useWalkData } from './walk-data.ts'
import { walkKeys } from './walk-keys.ts'
import { leaveEntry, lookAtPanel, turnTo, useWalkStore } from './walk-store.ts'
import { coverageOf, sheetShowing, stopBeside, walkedStops } from './walking.ts'
import '../place-lines.css'
import './walk-round.css'
import './walk-sheet.css'

const noPanels: readonly PanelDefinition[] = []

/** Takes a panel in hand and turns to a sheet of the plan that shows it. */
function goToPanel(panelId: string): void {
  const { figure, planSheet } = useWalkStore.getState()
  if (figure !== null) {
    const showing = sheetShowing(figure, panelId, planSheet)
    if (showing !== planSheet) turnTo(showing)
  }
  takeInHand(panelId)
  lookAtPanel(panelId)
  leaveEntry()
}

/** Pasted photographs go to the panel in hand. */
function usePaste(inHand: string | null): void {
  useEffect(() => {
    const paste = (event: ClipboardEvent) => {
      const files = [...(event.clipboardData?.files ?? [])].filter((file) => file.type.startsWith('image/'))
      if (inHand === null || files.length === 0) return
      event.preventDefault()
      void importPhotographs(files, inHand, null)
    }
    window.addEventListener('paste', paste)
    return () => window.removeEventListener('paste', paste)
  }, [inHand])
}

/** A finding or reading somebody pointed at is unfolded once its panel is in hand. */
function usePointed(): void {
  const pointed = useScreenStore((state) => state.pointed)
  useEffect(() => {
    if (pointed === null) return
    if (pointed.kind === 'finding') useWalkStore.setState({ unfolded: `F${pointed.key}` })
    const { inHand } = useScreenStore.getState()
    if (inHand !== null) goToPanel(inHand)
    useScreenStore.setState({ pointed: null })
  }, [pointed])
}

/** The walk-round: the body plan, one panel in hand, its sheet, and how far the walk has come. */
export function WalkRound() {
  const record = useRecordStore((state) => state.record)
  const panelList = useRecordStore((state) => state.panelList)
  const inHand = useScreenStore((state) => state.inHand)
  const figure = useWalkStore((state) => state.figure)
  const marks = useWalkStore((state) => state.marks)
  const judgement = useWalkStore((state) => state.judgement)
  const tableShown = useWalkStore((state) => state.tableShown)
  const panels = panelList?.panels ?? noPanels
  const names = record?.commission.names ?? 'uk'
  useWalkData(record, inHand)
  usePaste(inHand)
  usePointed()
  const first = walkedStops(panels)[0]?.id ?? null
  useEffect(() => {
    if (inHand === null && first !== null) takeInHand(first)
  }, [inHand, first])
  const step = useCallback(
    (by: 1 | -1) => {
      const beside = stopBeside(panels, useScreenStore.getState().inHand, by)
      if (beside !== undefined) goToPanel(beside.id)
    },
    [panels],
  )
  const lookNext = judgement?.lookNext ?? null
  const goToNext = (place: number) => {
    const panelId = lookNext?.[place]?.panelId
    if (panelId !== null && panelId !== undefined) goToPanel(panelId)
  }
  useKeys('Walk-round', walkKeys({ record, inHand, step, goToNext }))
  const words = useMemo(() => new Map(marks?.table.map((row) => [row.panelId, row])), [marks?.table])
  const definitions = useMemo(() => new Map(panels.map((panel) => [panel.id, panel])), [panels])
  const latest = useRef({ words, definitions, names })
  latest.current = { words, definitions, names }
  const nameOf = useCallback((panelId: string): string => {
    const panel = latest.current.definitions.get(panelId)
    const row = latest.current.words.get(panelId)
    const name = panel === undefined ? panelId : `${panel.stop}, ${panelName(panel, latest.current.names)}`
    if (row === undefined) return name
    const state = row.inspection === 'inspected' ? row.metal : row.inspection
    return `${name}: ${state}${row.findings.length === 0 ? '' : `, ${row.findings.join(' ')}`}`
  }, [])
  const coverage = useMemo(() => coverageOf(panels, record?.panels ?? []), [panels, record?.panels])
  if (record === null) {
    return <NoRecordPage name="Walk-round" />
  }
  const panel = inHand === null ? undefined : definitions.get(inHand)
  return (
    <PlacePage
      name="Walk-round"
      sheetName="Panel in hand"
      sheet={
        panel === undefined || panelList === null ? null : (
          <WalkSheet record={record} panelList={panelList} panel={panel} onStep={step} onGo={goToPanel} />
        )
      }
      secondSheet={panel === undefined ? null : <PanelEvidence panel={panel} record={record} />}
    >
      <div className="walk-round">
        {figure === null ? null : <PlanSheets figure={figure} />}
        {figure === null ? (
          <p className="plan-busy" role="status">
            The plan is being drawn.
          </p>
        ) : tableShown ? (
          <PlanTable rows={marks?.table ?? []} inHand={inHand} onChoose={goToPanel} />
        ) : (
          <PlanArea
            figure={figure}
            marks={marks}
            inHand={inHand}
            inches={record.commission.lengthUnit === 'in'}
            nameOf={nameOf}
            onChoose={goToPanel}
          />
        )}
        <CoverageStrip coverage={coverage} lookNext={lookNext} panels={panels} names={names} onGo={goToPanel} />
      </div>
    </PlacePage>
  )
}
