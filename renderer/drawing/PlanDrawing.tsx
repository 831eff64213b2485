import { useId, useMemo, useRef } from 'react'
import type { PlanFigure, PlanMarks, PlanSheet } from '../../shared-types/figure.ts'
import { CalloutInHand, Callouts } from './Callouts.tsx'
import { HoveredName } from './HoveredPanel.tsx'
import type { PanelMap } from './MapCells.tsx'
import { PanelsLit } from './PanelsLit.tsx'
import { PlanMeasures } from './PlanMeasures.tsx'
import { PlanPaper } from './PlanPaper.tsx'
import { PlanTargets } from './PlanTargets.tsx'
import { type LookSource, scaleFor, wholeSheet } from './plan-scale.ts'
import { useMovement } from './use-movement.ts'
import './plan-layers.css'

interface PlanDrawingProps {
  readonly figure: PlanFigure
  readonly sheet: PlanSheet
  readonly marks: PlanMarks | null
  /** How the reader has moved the sheet; followed without rendering. */
  readonly look: LookSource
  readonly width: number
  readonly height: number
  readonly inHand: string | null
  readonly inches: boolean
  /** Maps that lie under the ink. */
  readonly maps?: readonly PanelMap[]
  /** Name of a panel with its state, as it is read out. */
  readonly nameOf: (panelId: string) => string
  readonly onChoose: (panelId: string) => void
}

const none: readonly never[] = []

const panelAt = (target: EventTarget): string | null =>
  (target as Element).closest('[data-panel]')?.getAttribute('data-panel') ?? null

/** A sheet of the body plan on screen: ink, state, what is in hand, callouts, and outlines to choose from. */
export function PlanDrawing(props: PlanDrawingProps) {
  const { figure, sheet, marks, inHand, inches, nameOf, onChoose, width, height } = props
  const prefix = useId().replace(/[^a-z0-9]/gi, '')
  const drawing = useRef<HTMLDivElement>(null)
  const room = useMemo(() => ({ width, height }), [width, height])
  const scale = useMemo(() => scaleFor(sheet, room, wholeSheet), [sheet, room])
  const [callouts, places, captions] = [marks?.callouts ?? none, marks?.places ?? none, marks?.captions ?? none]
  const placed = useMemo(() => ({ callouts, places, captions, inches }), [callouts, places, captions, inches])
  const atHand = useMemo(() => callouts.filter(({ panelId }) => panelId === inHand), [callouts, inHand])
  useMovement(drawing, sheet, room, props.look, placed, atHand)
  return (
    <>
      <div
        className="plan-layers"
        ref={drawing}
        role="toolbar"
        aria-label={`${figure.title}, ${sheet.name}. ${figure.textAlternative}`}
        onClick={(event) => {
          const panelId = panelAt(event.target)
          if (panelId !== null) onChoose(panelId)
        }}
        onKeyDown={(event) => {
          const panelId = panelAt(event.target)
          if (panelId === null || (event.key !== 'Enter' && event.key !== ' ')) return
          event.preventDefault()
          onChoose(panelId)
        }}
      >
        <PlanMeasures
          sheet={sheet}
          scale={scale}
          lengthMm={figure.dimensions.lengthMm}
          heightMm={figure.dimensions.heightMm}
          inches={inches}
          captions={captions}
          {...room}
        />
        <PlanPaper
          sheet={sheet}
          panels={marks?.panels ?? none}
          extents={marks?.extents ?? none}
          places={places}
          maps={props.maps ?? none}
          scale={scale}
          prefix={prefix}
          {...room}
        />
        <PanelsLit sheet={sheet} scale={scale} inHand={inHand} drawing={drawing} {...room} />
        <PlanTargets
          sheet={sheet}
          scale={scale}
          nameOf={nameOf}
          inHand={inHand}
          table={marks?.table ?? none}
          {...room}
        />
        <Callouts callouts={callouts} scale={scale} {...room} />
        <CalloutInHand callouts={atHand} scale={scale} {...room} />
      </div>
      <HoveredName drawing={drawing} nameOf={nameOf} />
    </>
  )
}
