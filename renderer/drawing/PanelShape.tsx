import { memo } from 'react'
import type { PanelMark, PlanPanel } from '../../shared-types/figure.ts'
import { hatchFill } from './HatchPatterns.tsx'

interface PanelShapeProps {
  readonly panel: PlanPanel
  readonly mark: PanelMark | undefined
  readonly prefix: string
}

/** Surface of a panel: the sheet's colour, and over it the hatch of its metal. */
export const PanelSurface = memo(function PanelSurface({ panel, mark, prefix }: PanelShapeProps) {
  const fill = mark === undefined ? null : hatchFill(prefix, mark.hatch)
  return (
    <>
      <path className="panel-surface" d={panel.outline} data-panel={panel.panelId} />
      {fill === null ? null : <path className="panel-hatch" d={panel.outline} fill={fill} />}
    </>
  )
})

/** Edge of a panel that was looked at. */
export const SeenEdge = memo(function SeenEdge({ panel, mark }: Omit<PanelShapeProps, 'prefix'>) {
  if (mark === undefined || mark.edge === 'dotted') return null
  return <path className="edge-seen" d={panel.outline} />
})

/** Edge of a panel nobody has looked at: round dots, and both diagonals where it could not be reached. */
export const UnseenEdge = memo(function UnseenEdge({ panel, mark, prefix }: PanelShapeProps) {
  if (mark?.edge === 'solid') return null
  const clip = `${prefix}-clip-${panel.panelId}`
  return (
    <>
      <path className="edge-cleared" d={panel.outline} />
      <path className="edge-unseen" d={panel.outline} />
      {mark?.crossed === true ? <Diagonals panel={panel} clip={clip} /> : null}
    </>
  )
})

function Diagonals({ panel, clip }: { readonly panel: PlanPanel; readonly clip: string }) {
  const figures = (panel.outline.match(/-?\d*\.?\d+/g) ?? []).map(Number)
  const us = figures.filter((_, index) => index % 2 === 0)
  const vs = figures.filter((_, index) => index % 2 === 1)
  const [left, right, top, foot] = [Math.min(...us), Math.max(...us), Math.min(...vs), Math.max(...vs)]
  return (
    <>
      <clipPath id={clip}>
        <path d={panel.outline} />
      </clipPath>
      <path
        className="edge-crossed"
        clipPath={`url(#${clip})`}
        d={`M${left} ${top} L${right} ${foot} M${left} ${foot} L${right} ${top}`}
      />
    </>
  )
}
