import { memo, useMemo, useRef } from 'react'
import type { PlanFigure, PlanMarks, PlanSheet } from '../../shared-types/figure.ts'
import { HatchPatterns } from './HatchPatterns.tsx'
import type { PanelMap } from './MapCells.tsx'
import { PlaceMarks } from './PlaceMarks.tsx'
import { PlanMeasures } from './PlanMeasures.tsx'
import { PlanViewDrawing } from './PlanViewDrawing.tsx'
import { type PlanScale, viewTransform } from './plan-scale.ts'
import { marksOfViews } from './view-paint.ts'

interface PlanPaperProps {
  readonly figure: PlanFigure
  readonly sheet: PlanSheet
  readonly panels: PlanMarks['panels']
  readonly extents: PlanMarks['extents']
  readonly places: PlanMarks['places']
  readonly captions: PlanMarks['captions']
  readonly maps: readonly PanelMap[]
  readonly scale: PlanScale
  readonly width: number
  readonly height: number
  readonly inches: boolean
  /** Starts the ids of the hatches. */
  readonly prefix: string
}

const none: readonly never[] = []

function byView<Mark extends { readonly view: string }>(marks: readonly Mark[]): ReadonlyMap<string, readonly Mark[]> {
  const groups = new Map<string, Mark[]>()
  for (const mark of marks) groups.set(mark.view, [...(groups.get(mark.view) ?? []), mark])
  return groups
}

/**
 * What stays while one walks on: ink, state, extents, places. A picture of its own under the one with what is in hand,
 * so that a step to the next panel does not paint it again. Its facts are said by the targets that lie over it.
 */
export const PlanPaper = memo(function PlanPaper(props: PlanPaperProps) {
  const { sheet, scale, prefix } = props
  const before = useRef<ReturnType<typeof marksOfViews>>(new Map())
  const marks = useMemo(() => {
    before.current = marksOfViews(sheet.views, props.panels, before.current)
    return before.current
  }, [sheet, props.panels])
  const extents = useMemo(() => byView(props.extents), [props.extents])
  const places = useMemo(() => byView(props.places), [props.places])
  const maps = useMemo(() => byView(props.maps), [props.maps])
  return (
    <svg className="plan-drawing plan-paper" width={props.width} height={props.height} aria-hidden="true">
      <g className="moves">
        <HatchPatterns prefix={prefix} pixelsPerUnit={scale.pixelsPerMm} />
        <PlanMeasures
          sheet={sheet}
          scale={scale}
          lengthMm={props.figure.dimensions.lengthMm}
          heightMm={props.figure.dimensions.heightMm}
          inches={props.inches}
          captions={props.captions}
        />
        {sheet.views.map((view) => (
          <g key={view.id} transform={viewTransform(view, scale)}>
            <PlanViewDrawing
              view={view}
              marks={marks.get(view.id) ?? none}
              extents={extents.get(view.id) ?? none}
              maps={maps.get(view.id) ?? none}
              prefix={prefix}
            />
          </g>
        ))}
        {sheet.views.map((view) => (
          <PlaceMarks key={view.id} view={view} places={places.get(view.id) ?? none} scale={scale} />
        ))}
      </g>
    </svg>
  )
})
