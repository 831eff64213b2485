import { memo } from 'react'
import type { ExtentMark } from '../../shared-types/figure.ts'
import { hatchFill } from './HatchPatterns.tsx'

type DrawnExtent = Pick<ExtentMark, 'shape' | 'points' | 'hatch'>

/** Path through the points of an extent: closed for an area, open for a line. */
export function extentPath({ shape, points }: Pick<DrawnExtent, 'shape' | 'points'>): string {
  const text = points.map(({ u, v }, index) => `${index === 0 ? 'M' : 'L'}${u} ${v}`).join(' ')
  return shape === 'area' ? `${text} Z` : text
}

/** Where a finding lies: the sheet's colour under it, its hatch, and a dashed edge. */
export const ExtentShape = memo(function ExtentShape(props: { readonly extent: DrawnExtent; readonly prefix: string }) {
  const { extent, prefix } = props
  const first = extent.points[0]
  if (first === undefined) return null
  if (extent.shape === 'point') {
    const dot = `M${first.u} ${first.v} h0`
    return (
      <>
        <path className="extent-dot-halo" d={dot} />
        <path className="extent-dot" d={dot} />
      </>
    )
  }
  const path = extentPath(extent)
  const fill = extent.hatch === null ? null : hatchFill(prefix, extent.hatch)
  return (
    <>
      <path className={extent.shape === 'area' ? 'extent-under' : 'extent-line-halo'} d={path} />
      {extent.shape === 'area' && fill !== null ? <path className="panel-hatch" d={path} fill={fill} /> : null}
      <path className={extent.shape === 'area' ? 'extent-edge' : 'extent-line'} d={path} />
    </>
  )
})
