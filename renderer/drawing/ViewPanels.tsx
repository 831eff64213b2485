import { Fragment, memo } from 'react'
import type { PlanPanel } from '../../shared-types/figure.ts'
import { hatchFill } from './HatchPatterns.tsx'
import { boxOf, outlinePoints } from './outline-shape.ts'
import type { PanelsPaint } from './view-paint.ts'

/** Surfaces of a few panels: the sheet's colour, and over it the hatches of their metal. */
export const PanelSurfaces = memo(function PanelSurfaces(props: {
  readonly paint: PanelsPaint
  readonly prefix: string
}) {
  const { paint, prefix } = props
  return (
    <>
      <path className="panel-surface" d={paint.surface} />
      {paint.hatches.map(([hatch, path]) => (
        <path key={hatch} className="panel-hatch" d={path} fill={hatchFill(prefix, hatch) ?? 'none'} />
      ))}
    </>
  )
})

const EDGES = [
  ['edge-seen', 'seen'],
  ['edge-cleared', 'unseen'],
  ['edge-unseen', 'unseen'],
] as const

/** Edges of a view: a line where somebody looked, round dots where nobody has, both diagonals where nobody could. */
export const ViewEdges = memo(function ViewEdges(props: {
  readonly paints: readonly PanelsPaint[]
  readonly prefix: string
}) {
  const { paints, prefix } = props
  return (
    <>
      {EDGES.map(([className, edge]) => (
        <Fragment key={className}>
          {paints.map((paint) =>
            paint[edge] === '' ? null : <path key={paint.place} className={className} d={paint[edge]} />,
          )}
        </Fragment>
      ))}
      {paints
        .flatMap(({ crossed }) => crossed)
        .map((panel) => (
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
