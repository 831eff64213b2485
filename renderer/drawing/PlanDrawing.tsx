import { type PointerEvent, useCallback, useId, useMemo, useState } from 'react'
import type { ExtentMark, PlaceMark, PlanFigure, PlanMarks, PlanSheet } from '../../shared-types/figure.ts'
import { Callouts } from './Callouts.tsx'
import { decoration } from './decoration.ts'
import { HatchPatterns } from './HatchPatterns.tsx'
import { PlaceMarks } from './PlaceMarks.tsx'
import { PlanMeasures } from './PlanMeasures.tsx'
import { PlanTargets, targetsOf } from './PlanTargets.tsx'
import { PlanViewDrawing } from './PlanViewDrawing.tsx'
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

/** Groups marks by view, and keeps the groups of views that did not change, so that those are not drawn again. */
function byView<Mark extends ExtentMark | PlaceMark>(marks: readonly Mark[]): ReadonlyMap<string, readonly Mark[]> {
  const groups = new Map<string, Mark[]>()
  for (const mark of marks) groups.set(mark.view, [...(groups.get(mark.view) ?? []), mark])
  return groups
}

const panelAt = (target: EventTarget): string | null =>
  (target as Element).closest('[data-panel]')?.getAttribute('data-panel') ?? null

/** A sheet of the body plan on screen: ink, state, what is in hand, callouts, and outlines to choose from. */
export function PlanDrawing(props: PlanDrawingProps) {
  const { sheet, marks, scale, inHand, nameOf, onChoose } = props
  const prefix = useId().replace(/[^a-z0-9]/gi, '')
  const [hovered, setHovered] = useState<string | null>(null)
  const targets = useMemo(() => targetsOf(sheet), [sheet])
  const panelMarks = useMemo(() => new Map(marks?.panels.map((mark) => [mark.panelId, mark])), [marks?.panels])
  const extents = useMemo(() => byView(marks?.extents ?? none), [marks?.extents])
  const places = useMemo(() => byView(marks?.places ?? none), [marks?.places])
  const hover = useCallback((event: PointerEvent) => setHovered(panelAt(event.target)), [])
  return (
    <svg
      className="plan-drawing"
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
      <HatchPatterns prefix={prefix} pixelsPerUnit={scale.pixelsPerMm} />
      <PlanMeasures
        sheet={sheet}
        scale={scale}
        lengthMm={props.figure.dimensions.lengthMm}
        heightMm={props.figure.dimensions.heightMm}
        inches={props.inches}
      />
      {sheet.views.map((view) => (
        <g key={view.id} transform={viewTransform(view, scale)}>
          <PlanViewDrawing view={view} marks={panelMarks} extents={extents.get(view.id) ?? none} prefix={prefix} />
        </g>
      ))}
      {sheet.views.map((view) => (
        <PlaceMarks key={view.id} view={view} places={places.get(view.id) ?? none} scale={scale} />
      ))}
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
  )
}
