import { type PointerEvent, useCallback, useId, useMemo, useState } from 'react'
import type { PlanFigure, PlanMarks, PlanSheet } from '../../shared-types/figure.ts'
import { Callouts } from './Callouts.tsx'
import { decoration } from './decoration.ts'
import { PlanPaper } from './PlanPaper.tsx'
import { PlanTargets, targetsOf } from './PlanTargets.tsx'
import { type PlanScale, viewTransform } from './plan-scale.ts'

interface PlanDrawingProps {
  readonly figure: PlanFigure
  readonly sheet: PlanSheet
  readonly marks: PlanMarks | null
  readonly scale: PlanScale
  readonly width: number
  readonly height: number
  readonly inHand: string | null
  readonly inches: boolean
  /** Name of a panel with its state, as it is read out. */
  readonly nameOf: (panelId: string) => string
  readonly onChoose: (panelId: string) => void
}

const none: readonly never[] = []

const panelAt = (target: EventTarget): string | null =>
  (target as Element).closest('[data-panel]')?.getAttribute('data-panel') ?? null

/** A sheet of the body plan on screen: ink, state, what is in hand, callouts, and outlines to choose from. */
export function PlanDrawing(props: PlanDrawingProps) {
  const { sheet, marks, scale, inHand, nameOf, onChoose } = props
  const prefix = useId().replace(/[^a-z0-9]/gi, '')
  const [hovered, setHovered] = useState<string | null>(null)
  const targets = useMemo(() => targetsOf(sheet), [sheet])
  const hover = useCallback((event: PointerEvent) => setHovered(panelAt(event.target)), [])
  return (
    <>
      <PlanPaper
        figure={props.figure}
        sheet={sheet}
        panels={marks?.panels ?? none}
        extents={marks?.extents ?? none}
        places={marks?.places ?? none}
        scale={scale}
        width={props.width}
        height={props.height}
        inches={props.inches}
        prefix={prefix}
      />
      <svg
        className="plan-drawing plan-in-hand"
        width={props.width}
        height={props.height}
        role="toolbar"
        aria-label={`${props.figure.title}, ${sheet.name}. ${props.figure.textAlternative}`}
        onPointerMove={hover}
        onPointerLeave={() => setHovered(null)}
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
        <g className="plan-passive" {...decoration}>
          {targets
            .filter((target) => target.panelId === inHand || target.panelId === hovered)
            .map((target) => {
              const view = sheet.views.find(({ id }) => id === target.view)
              return view === undefined ? null : (
                <g key={`${target.view}${target.panelId}`} transform={viewTransform(view, scale)}>
                  <path className={target.panelId === inHand ? 'edge-in-hand' : 'edge-hovered'} d={target.outline} />
                </g>
              )
            })}
        </g>
        <PlanTargets sheet={sheet} targets={targets} scale={scale} nameOf={nameOf} inHand={inHand} />
        <Callouts callouts={marks?.callouts ?? none} scale={scale} inHand={inHand} />
        {hovered === null ? null : (
          <text className="plan-hovered" x={props.width - 12} y={props.height - 8} textAnchor="end" {...decoration}>
            {nameOf(hovered)}
          </text>
        )}
      </svg>
    </>
  )
}
