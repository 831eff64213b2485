import { memo, useMemo } from 'react'
import type { ExtentMark, PanelMark, PlanView } from '../../shared-types/figure.ts'
import { ExtentEdge, ExtentGround } from './ExtentShape.tsx'
import { inkOf } from './ink-runs.ts'
import { MapCells, type PanelMap } from './MapCells.tsx'
import { ViewEdges, ViewSurfaces } from './ViewPanels.tsx'
import { paintOf } from './view-paint.ts'

const INK_CLASS = {
  silhouette: 'ink ink-silhouette',
  shut: 'ink ink-shut',
  detail: 'ink ink-detail',
  form: 'ink ink-form',
  centre: 'ink ink-centre',
  station: 'ink ink-station',
} as const

/** Lines that never change while walking; drawn once for each view. */
const ViewInk = memo(function ViewInk({ view }: { readonly view: PlanView }) {
  return (
    <g className="plan-passive">
      {inkOf(view).runs.map((line) => (
        <path
          key={`${line.weight}${line.path}`}
          className={line.occlude ? `${INK_CLASS[line.weight]} ink-occludes` : INK_CLASS[line.weight]}
          d={line.path}
        />
      ))}
    </g>
  )
})

interface PlanViewDrawingProps {
  readonly view: PlanView
  /** Mark of each panel of the view, in the view's own order. */
  readonly marks: readonly (PanelMark | undefined)[]
  readonly extents: readonly ExtentMark[]
  readonly maps: readonly PanelMap[]
  readonly prefix: string
}

/**
 * One view in its own millimetres: surfaces, hatches and maps, the ground of extents, edges, ink, and over all of it the
 * edges of what was found. Details are cleared of hatching round their lines.
 */
export const PlanViewDrawing = memo(function PlanViewDrawing(props: PlanViewDrawingProps) {
  const { view, marks, extents, maps, prefix } = props
  const paint = useMemo(() => paintOf(view, marks), [view, marks])
  return (
    <>
      <ViewSurfaces paint={paint} prefix={prefix} />
      <g className="plan-passive">
        {maps.map((map) => (
          <MapCells key={map.panelId} map={map} prefix={prefix} />
        ))}
        {extents.map((extent) => (
          <ExtentGround key={extent.finding} extent={extent} prefix={prefix} />
        ))}
        {paint.hatches.length > 0 && inkOf(view).cleared !== '' ? (
          <path className="ink-cleared" d={inkOf(view).cleared} />
        ) : null}
        <ViewEdges paint={paint} prefix={`${prefix}-${view.id}`} />
        {view.silhouette === '' ? null : <path className="ink ink-silhouette" d={view.silhouette} />}
      </g>
      <ViewInk view={view} />
      <g className="plan-passive">
        {extents.map((extent) => (
          <ExtentEdge key={extent.finding} extent={extent} />
        ))}
      </g>
    </>
  )
})
