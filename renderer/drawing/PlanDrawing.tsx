import { useId, useMemo, useRef } from 'react'
import type { PlanFigure, PlanMarks, PlanSheet } from '../../shared-types/figure.ts'
import { Callouts } from './Callouts.tsx'
import { HoveredName } from './HoveredPanel.tsx'
import type { PanelMap } from './MapCells.tsx'
import { PanelsLit } from './PanelsLit.tsx'
import { PlanPaper } from './PlanPaper.tsx'
import { leadingTargets, NamedTargets, PointerTargets, targetsOf } from './PlanTargets.tsx'
import { type LookSource, scaleFor, wholeSheet } from './plan-scale.ts'
import { useMovement } from './use-movement.ts'

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
  const { sheet, marks, inHand, nameOf, onChoose, width, height } = props
  const prefix = useId().replace(/[^a-z0-9]/gi, '')
  const drawing = useRef<HTMLDivElement>(null)
  const room = useMemo(() => ({ width, height }), [width, height])
  const scale = useMemo(() => scaleFor(sheet, room, wholeSheet), [sheet, room])
  const table = marks?.table ?? none
  // As text, so that only another order of the walk sets the targets anew, and not every state that is entered.
  const order = useMemo(() => table.map(({ panelId }) => panelId).join(' '), [table])
  const targets = useMemo(() => targetsOf(sheet, order.split(' ')), [sheet, order])
  const named = useMemo(() => leadingTargets(sheet, targets, order.split(' ')), [sheet, targets, order])
  useMovement(drawing, sheet, room, props.look, marks)
  return (
    <>
      <div className="plan-layers" ref={drawing}>
        <PlanPaper
          figure={props.figure}
          sheet={sheet}
          panels={marks?.panels ?? none}
          extents={marks?.extents ?? none}
          places={marks?.places ?? none}
          captions={marks?.captions ?? none}
          maps={props.maps ?? none}
          scale={scale}
          width={width}
          height={height}
          inches={props.inches}
          prefix={prefix}
        />
        <svg
          className="plan-drawing plan-in-hand"
          width={width}
          height={height}
          role="toolbar"
          aria-label={`${props.figure.title}, ${sheet.name}. ${props.figure.textAlternative}`}
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
          <g className="moves">
            <PanelsLit sheet={sheet} scale={scale} inHand={inHand} drawing={drawing} />
            <NamedTargets sheet={sheet} targets={named} scale={scale} nameOf={nameOf} inHand={inHand} table={table} />
            <PointerTargets sheet={sheet} targets={targets} scale={scale} />
            <Callouts callouts={marks?.callouts ?? none} scale={scale} inHand={inHand} />
          </g>
        </svg>
      </div>
      <HoveredName drawing={drawing} nameOf={nameOf} />
    </>
  )
}
