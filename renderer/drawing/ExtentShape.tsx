import { memo } from 'react'
import type { ExtentMark } from '../../shared-types/figure.ts'
import { hatchFill } from './HatchPatterns.tsx'

type DrawnExtent = Pick<ExtentMark, 'shape' | 'points' | 'hatch'>

/** Path through the points of an extent: closed for an area, open for a line, a dot for a point. */
function extentPath({ shape, points }: DrawnExtent): string {
  const [first] = points
  if (first === undefined) return ''
  if (shape === 'point') return `M${first.u} ${first.v} h0`
  const text = points.map(({ u, v }, index) => `${index === 0 ? 'M' : 'L'}${u} ${v}`).join(' ')
  return shape === 'area' ? `${text} Z` : text
}

/** Ground of an area that was found: the sheet's colour over the hatch of the panel, and its own hatch. */
export const ExtentGround = memo(function ExtentGround(props: {
  readonly extent: DrawnExtent
  readonly prefix: string
}) {
  const { extent, prefix } = props
  if (extent.shape !== 'area' || extent.points.length === 0) return null
  const path = extentPath(extent)
  const fill = extent.hatch === null ? null : hatchFill(prefix, extent.hatch)
  return (
    <>
      <path className="extent-under" d={path} />
      {fill === null ? null : <path className="panel-hatch" d={path} fill={fill} />}
    </>
  )
})

/** Where a finding lies: dashed round an area, a heavy line, or a dot. */
export const ExtentEdge = memo(function ExtentEdge({ extent }: { readonly extent: DrawnExtent }) {
  const path = extentPath(extent)
  if (path === '') return null
  if (extent.shape === 'area') return <path className="extent-edge" d={path} />
  const kind = extent.shape === 'point' ? 'extent-dot' : 'extent-line'
  const through = extent.hatch === 'rusted-through' ? ' is-through' : ''
  return (
    <>
      <path className={`${kind}-halo`} d={path} />
      <path className={`${kind}${through}`} d={path} />
    </>
  )
})
