import { memo } from 'react'
import type { PlanPanel } from '../../shared-types/figure.ts'
import { hatchFill } from './HatchPatterns.tsx'
import { boxOf, outlinePoints } from './outline-shape.ts'
import type { ViewPaint } from './view-paint.ts'

interface ViewPanelsProps {
  readonly paint: ViewPaint
  readonly prefix: string
}

/** Surfaces of the panels: the sheet's colour, and over it the hatches of their metal. */
export const ViewSurfaces = memo(function ViewSurfaces({ paint, prefix }: ViewPanelsProps) {
  return (
    <>
      <path className="panel-surface" d={paint.surface} />
      {paint.hatches.map(([hatch, path]) => (
        <path key={hatch} className="panel-hatch" d={path} fill={hatchFill(prefix, hatch) ?? 'none'} />
      ))}
    </>
  )
})

/** Edges: a line where somebody looked, round dots where nobody has, both diagonals where nobody could. */
export const ViewEdges = memo(function ViewEdges({ paint, prefix }: ViewPanelsProps) {
  return (
    <>
      {paint.seen === '' ? null : <path className="edge-seen" d={paint.seen} />}
      {paint.unseen === '' ? null : (
        <>
          <path className="edge-cleared" d={paint.unseen} />
          <path className="edge-unseen" d={paint.unseen} />
        </>
      )}
      {paint.crossed.map((panel) => (
        <Diagonals key={panel.panelId} panel={panel} clip={`${prefix}-clip-${panel.panelId}`} />
      ))}
    </>
  )
})

const Diagonals = memo(function Diagonals({ panel, clip }: { readonly panel: PlanPanel; readonly clip: string }) {
  const { u, v, width, height } = boxOf(outlinePoints(panel.outline))
  return (
    <>
      <clipPath id={clip}>
        <path d={panel.outline} />
      </clipPath>
      <path
        className="edge-crossed"
        clipPath={`url(#${clip})`}
        d={`M${u} ${v}l${width} ${height}M${u} ${v + height}l${width} ${-height}`}
      />
    </>
  )
})
