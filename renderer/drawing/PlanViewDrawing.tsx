import { memo } from 'react'
import type { ExtentMark, PanelMark, PlanView } from '../../shared-types/figure.ts'
import { ExtentShape } from './ExtentShape.tsx'
import { PanelSurface, SeenEdge, UnseenEdge } from './PanelShape.tsx'

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
      {view.ink.map((line) => (
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
  readonly marks: ReadonlyMap<string, PanelMark>
  readonly extents: readonly ExtentMark[]
  readonly prefix: string
}

/** One view in its own millimetres: surfaces, hatches, edges, then ink, then what was found. */
export const PlanViewDrawing = memo(function PlanViewDrawing({ view, marks, extents, prefix }: PlanViewDrawingProps) {
  return (
    <>
      {view.panels.map((panel) => (
        <PanelSurface key={panel.panelId} panel={panel} mark={marks.get(panel.panelId)} prefix={prefix} />
      ))}
      <g className="plan-passive">
        {view.panels.map((panel) => (
          <SeenEdge key={panel.panelId} panel={panel} mark={marks.get(panel.panelId)} />
        ))}
        {view.panels.map((panel) => (
          <UnseenEdge
            key={panel.panelId}
            panel={panel}
            mark={marks.get(panel.panelId)}
            prefix={`${prefix}-${view.id}`}
          />
        ))}
        {view.silhouette === '' ? null : <path className="ink ink-silhouette" d={view.silhouette} />}
      </g>
      <ViewInk view={view} />
      <g className="plan-passive">
        {extents.map((extent) => (
          <ExtentShape key={extent.finding} extent={extent} prefix={prefix} />
        ))}
      </g>
    </>
  )
})
