import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react'
import type { PlanFigure, PlanMarks } from '../../../shared-types/figure.ts'
import { PlanDrawing } from '../../drawing/PlanDrawing.tsx'
import { PlanLegend } from '../../drawing/PlanLegend.tsx'
import { hearGestures } from '../../drawing/plan-gestures.ts'
import { lookAbout, onScreen, scaleFor, wholeSheet } from '../../drawing/plan-scale.ts'
import { typeFactorOf } from '../../drawing/use-movement.ts'
import { useScreenStore } from '../../store/screen-store.ts'
import { importPhotographs } from './import-photographs.ts'
import { planLook, useWalkStore } from './walk-store.ts'

interface PlanAreaProps {
  readonly figure: PlanFigure
  readonly marks: PlanMarks | null
  readonly inHand: string | null
  readonly inches: boolean
  readonly nameOf: (panelId: string) => string
  readonly onChoose: (panelId: string) => void
}

/** Room the drawing has, followed as the window changes. */
function useRoom(): [React.RefObject<HTMLDivElement | null>, { width: number; height: number }] {
  const area = useRef<HTMLDivElement>(null)
  const [room, setRoom] = useState({ width: 0, height: 0 })
  useLayoutEffect(() => {
    const element = area.current
    if (element === null) return
    const measure = () => setRoom({ width: element.clientWidth, height: element.clientHeight })
    const observer = new ResizeObserver(measure)
    observer.observe(element)
    measure()
    return () => observer.disconnect()
  }, [])
  return [area, room]
}

/** Callouts are set anew for the scale the reader has come to, once the plan has rested. */
const REST_MS = 140

/** Photographs dropped on a panel become its exhibits; beside every panel, those of the panel in hand. */
function takeDropped(event: DragEvent, onChoose: (panelId: string) => void): void {
  event.preventDefault()
  const under = (event.target as Element).closest('[data-panel]')?.getAttribute('data-panel')
  const panelId = under ?? useScreenStore.getState().inHand
  if (panelId === null || event.dataTransfer === null) return
  onChoose(panelId)
  void importPhotographs([...event.dataTransfer.files], panelId, null)
}

/** The plan with its sheets: drawn to fit, moved by wheel, drag and keys; takes photographs dropped on a panel. */
export function PlanArea({ figure, marks, inHand, inches, nameOf, onChoose }: PlanAreaProps) {
  const [area, { width, height }] = useRoom()
  const planSheet = useWalkStore((state) => state.planSheet)
  const isMoved = useWalkStore((state) => state.look.zoom !== 1)
  const sheet = figure.sheets.find(({ id }) => id === planSheet) ?? figure.sheets[0]
  useEffect(() => {
    if (sheet === undefined || width === 0) return
    const tell = () => {
      const { pixelsPerMm } = scaleFor(sheet, { width, height }, planLook.now())
      const drawn = area.current?.querySelector('.plan-layers')
      // Where words and rings stand larger, there is as much less room for them.
      const room = pixelsPerMm / (drawn ? typeFactorOf(drawn) : 1)
      useWalkStore.setState({ pixelsPerMm: Number(room.toFixed(4)) })
    }
    let waiting: ReturnType<typeof setTimeout> | undefined
    let shown = planLook.now()
    tell()
    const forget = planLook.subscribe(() => {
      if (planLook.now() === shown) return
      shown = planLook.now()
      clearTimeout(waiting)
      waiting = setTimeout(tell, REST_MS)
    })
    // Words stand larger on the outdoor sheet.
    const forgetSheet = useScreenStore.subscribe(({ sheetName }, { sheetName: before }) => {
      if (sheetName !== before) waiting = setTimeout(tell, REST_MS)
    })
    return () => {
      clearTimeout(waiting)
      forget()
      forgetSheet()
    }
  }, [area, sheet, width, height])
  useEffect(() => {
    const element = area.current
    if (element === null || sheet === undefined) return
    return hearGestures(element, (step) =>
      useWalkStore.setState(({ look }) => ({ look: lookAbout(sheet, { width, height }, look, step) })),
    )
  }, [area, sheet, width, height])
  useEffect(() => {
    const element = area.current
    if (element === null) return
    const hears = new AbortController()
    const { signal } = hears
    element.addEventListener('dragover', (event) => event.preventDefault(), { signal })
    element.addEventListener('drop', (event) => takeDropped(event, onChoose), { signal })
    return () => hears.abort()
  }, [area, onChoose])
  const legendAt = useMemo(() => {
    const front = sheet?.views.find(({ id }) => id === 'front')
    const roof = sheet?.views.find(({ id }) => id === 'roof')
    if (sheet === undefined || front === undefined || roof === undefined || width === 0 || isMoved) return null
    const scale = scaleFor(sheet, { width, height }, wholeSheet)
    const { x } = onScreen(front, { u: front.box.u, v: 0 }, scale)
    const { y } = onScreen(roof, { u: 0, v: roof.box.v }, scale)
    return { left: x, top: y + 26 }
  }, [sheet, width, height, isMoved])
  return (
    <div className="plan-room" ref={area}>
      {sheet === undefined || width === 0 ? null : (
        <PlanDrawing
          figure={figure}
          sheet={sheet}
          marks={marks}
          look={planLook}
          width={width}
          height={height}
          inHand={inHand}
          inches={inches}
          nameOf={nameOf}
          onChoose={onChoose}
        />
      )}
      {marks === null ? null : (
        <div className={legendAt === null ? 'legend-place' : 'legend-place is-in-plan'} style={legendAt ?? undefined}>
          <PlanLegend legend={marks.legend} />
        </div>
      )}
    </div>
  )
}
