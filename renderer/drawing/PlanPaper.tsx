import { memo, useMemo, useRef } from 'react'
import type { PlanMarks, PlanSheet, PlanView } from '../../shared-types/figure.ts'
import { HatchPatterns } from './HatchPatterns.tsx'
import type { PanelMap } from './MapCells.tsx'
import { PlaceMarks } from './PlaceMarks.tsx'
import { PlanViewDrawing } from './PlanViewDrawing.tsx'
import { type PlanScale, viewTransform } from './plan-scale.ts'
import { byView, type PanelsPaint, paintOfViews } from './view-paint.ts'

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
const PARTS = 6

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
  return parts.filter((own) => own.length > 0)
}

interface PaperPartProps {
  readonly views: readonly PlanView[]
  /** What each of the views paints, and the marks that stand in each. */
  readonly paints: readonly (readonly PanelsPaint[])[]
  readonly extents: readonly PlanMarks['extents'][]
  readonly places: readonly PlanMarks['places'][]
  readonly maps: readonly (readonly PanelMap[])[]
  readonly scale: PlanScale
  readonly width: number
  readonly height: number
  readonly prefix: string
}

/** Lists are gathered anew at each change; a part differs only where one of their items does. */
const isSamePart = (before: PaperPartProps, after: PaperPartProps): boolean =>
  (Object.keys(after) as (keyof PaperPartProps)[]).every((name) => {
    const [old, now] = [before[name], after[name]]
    if (old === now) return true
    return Array.isArray(old) && Array.isArray(now) && now.every((item, index) => item === old[index])
  })

/** A part of the paper: some of the views with all that stands in them. */
const PaperPart = memo(function PaperPart(props: PaperPartProps) {
  const { views, paints, extents, places, maps, scale, prefix, width, height } = props
  return (
    <svg className="plan-drawing plan-layer plan-paper" width={width} height={height} aria-hidden="true">
      <HatchPatterns prefix={prefix} pixelsPerUnit={scale.pixelsPerMm} />
      <g className="moves">
        {views.map((view, at) => (
          <g key={view.id} transform={viewTransform(view, scale)}>
            <PlanViewDrawing
              view={view}
              paints={paints[at] ?? none}
              extents={extents[at] ?? none}
              maps={maps[at] ?? none}
              prefix={prefix}
            />
          </g>
        ))}
      </g>
      {views.map((view, at) => (
        <PlaceMarks key={view.id} view={view} places={places[at] ?? none} scale={scale} />
      ))}
    </svg>
  )
}, isSamePart)

/**
 * What stays while one walks on: ink, state, extents, places. A few pictures under the one with what is in hand: a step
 * to the next panel paints none of them again, a new state only one, and after a zoom each is drawn in a frame of its
 * own. Their facts are said by the targets that lie over them.
 */
export const PlanPaper = memo(function PlanPaper(props: PlanPaperProps) {
  const { sheet, scale, width, height } = props
  const before = useRef<{ sheet: PlanSheet; paints: ReadonlyMap<string, readonly PanelsPaint[]> }>(null)
  const paints = useMemo(() => {
    const known = before.current?.sheet === sheet ? before.current.paints : new Map()
    before.current = { sheet, paints: paintOfViews(sheet.views, props.panels, known) }
    return before.current.paints
  }, [sheet, props.panels])
  const extents = useMemo(() => byView(props.extents), [props.extents])
  const places = useMemo(() => byView(props.places), [props.places])
  const maps = useMemo(() => byView(props.maps), [props.maps])
  const parts = useMemo(() => partsOf(sheet), [sheet])
  return parts.map((views, part) => {
    const ofViews = <Item,>(all: ReadonlyMap<string, readonly Item[]>) => views.map(({ id }) => all.get(id) ?? none)
    const prefix = `${props.prefix}-${part}`
    const own = { paints: ofViews(paints), extents: ofViews(extents), places: ofViews(places), maps: ofViews(maps) }
    return <PaperPart key={prefix} views={views} {...own} prefix={prefix} scale={scale} width={width} height={height} />
  })
})
