import type { PicturePoint } from '../../../../shared-types/measuring.ts'
import { allPoints, letterOf, pointsOfPlane } from './picked-points.ts'
import type { PictureEntry } from './picture-entry.ts'

const path = (points: readonly PicturePoint[], closed: boolean): string =>
  points.length < 2 ? '' : `M${points.map(({ x, y }) => `${x} ${y}`).join('L')}${closed ? 'Z' : ''}`

/** A line with the paper showing on either side, so that it stands on dark and light alike. */
function Line({ d, kind }: { readonly d: string; readonly kind: 'plane' | 'measured' }) {
  if (d === '') return null
  return (
    <>
      <path d={d} className="picture-line-ground" />
      <path d={d} className={`picture-line picture-line-${kind}`} />
    </>
  )
}

interface PictureLinesProps {
  readonly entry: PictureEntry
  /** Picture pixels to a screen pixel, so that letters keep their size. */
  readonly perPx: number
  readonly inHand: number | null
}

/** What was picked, drawn on the picture: the plane, the known length, what is measured, and each point by its letter. */
export function PictureLines({ entry, perPx, inHand }: PictureLinesProps) {
  const { planeKind, planePoints, wanted, measured } = entry
  const known = planeKind === 'scale bar' ? planePoints : planePoints.slice(4)
  const corners = planeKind === 'scale bar' ? [] : planePoints.slice(0, 4)
  return (
    <g className="picture-lines">
      <Line d={path(corners, corners.length === 4)} kind="plane" />
      <Line d={path(known, false)} kind="plane" />
      {wanted === 'circle diameter' ? null : <Line d={path(measured, wanted === 'area')} kind="measured" />}
      {allPoints(entry).map(({ point, index }) => (
        <g
          key={letterOf(index)}
          transform={`translate(${point.x} ${point.y}) scale(${perPx})`}
          className="picture-point"
        >
          <circle r={index === inHand ? 10 : 6} className="picture-line-ground" />
          <circle
            r={index === inHand ? 10 : 6}
            className={index < pointsOfPlane(planeKind) ? 'picture-mark-plane' : 'picture-mark-measured'}
          />
          <path d="M-2 0H2M0 -2V2" className="picture-mark-middle" />
          <text x="9" y="-7">
            {letterOf(index)}
          </text>
        </g>
      ))}
    </g>
  )
}
