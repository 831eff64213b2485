import type { PicturePlane, WantedMeasure } from '../../../shared-types/measuring.ts'
import { fitCircle } from './circle-fit.ts'
import type { FlatPoints } from './flat-points.ts'
import { type Homography, mapped } from './homography.ts'
import { knownPlane, type NoPlane, parallelsPlane, scaledPlane, scaleTo } from './rectified-plane.ts'

export interface PictureMiddle {
  readonly x: number
  readonly y: number
  readonly diagonalPx: number
}

/** The plane from the inputs as `planeInputs` orders them. */
export function planeFrom(plane: PicturePlane, inputs: Float64Array, middle: PictureMiddle): Homography | NoPlane {
  if (plane.kind === 'known points') {
    const count = 2 * plane.points.length
    return knownPlane(inputs.subarray(0, count), inputs.subarray(count, 2 * count))
  }
  if (plane.kind === 'scale bar') return scaleTo(scaledPlane(1), inputs.subarray(0, 4), inputs[4] ?? 0)
  const found = parallelsPlane(inputs.subarray(0, 8), middle, plane.focalLengthPx)
  return typeof found === 'string' ? found : scaleTo(found, inputs.subarray(8, 12), inputs[12] ?? 0)
}

/** Value of a measure from picture points; NaN where a point lies beyond the vanishing line or a circle is none. */
export function measureOn(h: Homography, wanted: WantedMeasure['kind'], points: FlatPoints, side: number): number {
  const places = new Float64Array(points.length)
  for (let at = 0; at < points.length; at += 2) {
    const place = mapped(h, points[at] ?? 0, points[at + 1] ?? 0)
    if (Math.sign(place.w) !== side) return Number.NaN
    places[at] = place.x
    places[at + 1] = place.y
  }
  const [ax = 0, ay = 0, bx = 0, by = 0, cx = 0, cy = 0] = places
  switch (wanted) {
    case 'distance':
      return Math.hypot(bx - ax, by - ay)
    case 'angle':
      return degreesBetween(ax - bx, ay - by, cx - bx, cy - by)
    case 'circle diameter':
      return 2 * (fitCircle(places)?.radius ?? Number.NaN)
    case 'area':
      return areaOf(places)
  }
}

const degreesBetween = (ax: number, ay: number, bx: number, by: number): number =>
  (Math.atan2(Math.abs(ax * by - ay * bx), ax * bx + ay * by) * 180) / Math.PI

/** Area inside a closed line that does not cross itself (Gauss's formula), about its first point. */
export function areaOf(places: FlatPoints): number {
  const count = places.length / 2
  const [x0 = 0, y0 = 0] = places
  let twice = 0
  for (let at = 0; at < count; at += 1) {
    const next = (at + 1) % count
    const x = (places[2 * at] ?? 0) - x0
    const y = (places[2 * at + 1] ?? 0) - y0
    twice += x * ((places[2 * next + 1] ?? 0) - y0) - ((places[2 * next] ?? 0) - x0) * y
  }
  return Math.abs(twice) / 2
}
