import { memo } from 'react'
import type { ExtentMark, PlanView } from '../../shared-types/figure.ts'
import { ExtentEdge, ExtentGround } from './ExtentShape.tsx'
import { inkOf } from './ink-runs.ts'
import { MapCells, type PanelMap } from './MapCells.tsx'
import { PanelSurfaces, ViewEdges } from './ViewPanels.tsx'
import type { PanelsPaint } from './view-paint.ts'

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
  /** What its panels paint, in the view's own order. */
  readonly paints: readonly PanelsPaint[]
  readonly extents: readonly ExtentMark[]
  readonly maps: readonly PanelMap[]
  readonly prefix: string
}

/**
 * One view in its own millimetres: surfaces, hatches and maps, the ground of extents, edges, ink, and over all of it the
 * edges of what was found. Details are cleared of hatching round their lines.
 */
export const PlanViewDrawing = memo(function PlanViewDrawing(props: PlanViewDrawingProps) {
  const { view, paints, extents, maps, prefix } = props
  const { cleared } = inkOf(view)
  return (
    <>
      {paints.map((paint) => (
        <PanelSurfaces key={paint.place} paint={paint} prefix={prefix} />
      ))}
      <g className="plan-passive">
        {maps.map((map) => (
          <MapCells key={map.panelId} map={map} prefix={prefix} />
        ))}
        {extents.map((extent) => (
          <ExtentGround key={extent.finding} extent={extent} prefix={prefix} />
        ))}
        {cleared !== '' && paints.some(({ hatches }) => hatches.length > 0) ? (
          <path className="ink-cleared" d={cleared} />
        ) : null}
        <ViewEdges paints={paints} prefix={`${prefix}-${view.id}`} />
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
