import { memo, useMemo, useRef } from 'react'
import type { PlanMarks, PlanSheet, PlanView } from '../../shared-types/figure.ts'
import { HatchPatterns } from './HatchPatterns.tsx'
import type { PanelMap } from './MapCells.tsx'
import { PlaceMarks } from './PlaceMarks.tsx'
import { PlanViewDrawing } from './PlanViewDrawing.tsx'
import { type PlanScale, viewTransform } from './plan-scale.ts'
import { byView, marksOfViews } from './view-paint.ts'

interface PlanPaperProps {
  readonly sheet: PlanSheet
  readonly panels: PlanMarks['panels']
  readonly extents: PlanMarks['extents']
  readonly places: PlanMarks['places']
  readonly maps: readonly PanelMap[]
  readonly scale: PlanScale
  readonly width: number
  readonly height: number
  /** Starts the ids of the hatches. */
  readonly prefix: string
}

const none: readonly never[] = []

/** Pictures the paper is drawn as. */
const PARTS = 3

/** How much there is to draw in a view: letters of its paths. */
const inkIn = ({ ink, panels }: PlanView): number =>
  ink.reduce((sum, { path }) => sum + path.length, 0) + panels.reduce((sum, { outline }) => sum + outline.length, 0)

/** The views of a sheet, in their own order, in parts with about as much to draw in each. */
function partsOf({ views }: PlanSheet): readonly (readonly PlanView[])[] {
  const all = views.reduce((sum, view) => sum + inkIn(view), 0)
  const parts: PlanView[][] = Array.from({ length: PARTS }, () => [])
  let drawn = 0
  for (const view of views) {
    const middle = drawn + inkIn(view) / 2
    parts[Math.min(PARTS - 1, Math.floor((PARTS * middle) / (all || 1)))]?.push(view)
    drawn += inkIn(view)
  }
  return parts
}

/**
 * What stays while one walks on: ink, state, extents, places. Three pictures under the one with what is in hand: a step
 * to the next panel paints none of them again, a new state only one, and after a zoom each is drawn in a frame of its
 * own. Their facts are said by the targets that lie over them.
 */
export const PlanPaper = memo(function PlanPaper(props: PlanPaperProps) {
  const { sheet, scale, width, height } = props
  const before = useRef<ReturnType<typeof marksOfViews>>(new Map())
  const marks = useMemo(() => {
    before.current = marksOfViews(sheet.views, props.panels, before.current)
    return before.current
  }, [sheet, props.panels])
  const extents = useMemo(() => byView(props.extents), [props.extents])
  const places = useMemo(() => byView(props.places), [props.places])
  const maps = useMemo(() => byView(props.maps), [props.maps])
  const parts = useMemo(() => partsOf(sheet), [sheet])
  return parts.map((views, part) => {
    const prefix = `${props.prefix}-${part}`
    return (
      <svg key={prefix} className="plan-drawing plan-layer plan-paper" width={width} height={height} aria-hidden="true">
        <HatchPatterns prefix={prefix} pixelsPerUnit={scale.pixelsPerMm} />
        <g className="moves">
          {views.map((view) => (
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
        </g>
        {views.map((view) => (
          <PlaceMarks key={view.id} view={view} places={places.get(view.id) ?? none} scale={scale} />
        ))}
      </svg>
    )
  })
})
