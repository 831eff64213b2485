import type { PicturePlane, WantedMeasure } from '../../../shared-types/measuring.ts'
import { fitCircle } from './circle-fit.ts'
import type { FlatPoints } from './flat-points.ts'
import { fourPairsAnew, type Homography } from './homography.ts'
import { knownPlane, type NoPlane, parallelsPlane, scaledPlane, scaleTo } from './rectified-plane.ts'

export interface PictureMiddle {
  readonly x: number
  readonly y: number
  readonly diagonalPx: number
}

/** The plane from the inputs as `planeInputs` orders them; what it answers holds until it is asked again. */
type PlaneFrom = (inputs: Float64Array) => Homography | NoPlane

/** How a plane follows from its inputs, for inputs near the first ones. */
export function planeFollowing(plane: PicturePlane, first: Float64Array, middle: PictureMiddle): PlaneFrom {
  if (plane.kind !== 'known points' || plane.points.length !== 4) return (inputs) => planeFrom(plane, inputs, middle)
  const solve = fourPairsAnew(first)
  const h = new Float64Array(9)
  return (inputs) => (solve?.(h, inputs) === true ? h : 'on a line')
}

function planeFrom(plane: PicturePlane, inputs: Float64Array, middle: PictureMiddle): Homography | NoPlane {
  if (plane.kind === 'known points') {
    const count = 2 * plane.points.length
    return knownPlane(inputs.subarray(0, count), inputs.subarray(count, 2 * count))
  }
  if (plane.kind === 'scale bar') return scaleTo(scaledPlane(1), inputs.subarray(0, 4), inputs[4] ?? 0)
  const found = parallelsPlane(inputs.subarray(0, 8), middle, plane.focalLengthPx)
  return typeof found === 'string' ? found : scaleTo(found, inputs.subarray(8, 12), inputs[12] ?? 0)
}

/** Picture points of a measure: those of the inputs from place `at` on, and room for where they lie on the plane. */
interface MeasuredPoints {
  readonly inputs: FlatPoints
  readonly at: number
  readonly places: FlatPoints
}

/** Value of a measure from picture points; NaN where a point lies beyond the vanishing line or a circle is none. */
export function measureOn(
  h: Homography,
  wanted: WantedMeasure['kind'],
  { inputs, at, places }: MeasuredPoints,
  side: number,
): number {
  for (let place = 0; place < places.length; place += 2) {
    const x = inputs[at + place] as number
    const y = inputs[at + place + 1] as number
    const w = (h[6] as number) * x + (h[7] as number) * y + (h[8] as number)
    if (Math.sign(w) !== side) return Number.NaN
    places[place] = ((h[0] as number) * x + (h[1] as number) * y + (h[2] as number)) / w
    places[place + 1] = ((h[3] as number) * x + (h[4] as number) * y + (h[5] as number)) / w
  }
  switch (wanted) {
    case 'distance':
      return Math.hypot(between(places, 2, 0), between(places, 3, 1))
    case 'angle':
      return degreesBetween(between(places, 0, 2), between(places, 1, 3), between(places, 4, 2), between(places, 5, 3))
    case 'circle diameter':
      return 2 * (fitCircle(places)?.radius ?? Number.NaN)
    case 'area':
      return areaOf(places)
  }
}

const between = (places: FlatPoints, one: number, other: number): number =>
  (places[one] ?? Number.NaN) - (places[other] ?? Number.NaN)

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
