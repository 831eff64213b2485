import type { FlatPoints } from './flat-points.ts'
import { type Homography, homographyOf, mapped } from './homography.ts'

type Vector = readonly [number, number, number]

const cross = ([a, b, c]: Vector, [d, e, f]: Vector): Vector => [b * f - c * e, c * d - a * f, a * e - b * d]
const unit = (vector: Vector): Vector => {
  const length = Math.hypot(...vector)
  return [vector[0] / length, vector[1] / length, vector[2] / length]
}

/** Why a plane cannot be had from what was picked. */
export type NoPlane = 'on a line' | 'no focal length' | 'not square'

/** A vanishing point further off than this many picture diagonals counts as at infinity: the lines are parallel as picked. */
const FAR = 1000

/** Plane of a known length seen squarely: pixels times millimetres per pixel. */
export function scaledPlane(scale: number): Homography {
  return Float64Array.of(scale, 0, 0, 0, scale, 0, 0, 0, 1)
}

/**
 * Picture to plane, up to scale, from a four-sided figure with parallel opposite sides. Two vanishing points give the
 * vanishing line l; the normal of the plane is Kᵀ l (Hartley and Zisserman, 2nd ed., 8.6). With square corners the focal
 * length follows from f² = -(v1 - c)·(v2 - c), else it must be known. `centre` is where the lens looks.
 */
export function parallelsPlane(
  corners: FlatPoints,
  centre: { readonly x: number; readonly y: number; readonly diagonalPx: number },
  focalLengthPx: number | null,
): Homography | NoPlane {
  const size = centre.diagonalPx
  const at = (corner: number): Vector => [
    ((corners[2 * corner] ?? 0) - centre.x) / size,
    ((corners[2 * corner + 1] ?? 0) - centre.y) / size,
    1,
  ]
  const side = (from: number, to: number) => unit(cross(at(from), at(to)))
  const first = unit(cross(side(0, 1), side(3, 2)))
  const second = unit(cross(side(1, 2), side(0, 3)))
  const line = cross(first, second)
  if (!(Math.hypot(...line) > 1e-9)) return 'on a line'
  const near = (vanishing: Vector) => Math.abs(vanishing[2]) * FAR > Math.hypot(vanishing[0], vanishing[1])
  let focal = focalLengthPx === null ? null : focalLengthPx / size
  if (focal === null) {
    if (near(first) !== near(second)) return 'no focal length'
    const square = -(first[0] * second[0] + first[1] * second[1]) / (first[2] * second[2])
    if (near(first) && !(square > 0)) return 'not square'
    // Neither side converges: seen squarely, and any focal length gives the same plane.
    focal = near(first) ? Math.sqrt(square) : 1
    if (!near(first)) return scaledPlane(1)
  }
  const normal = unit([focal * line[0], focal * line[1], line[2]])
  const along = unit([first[0] / focal, first[1] / focal, first[2]])
  const across = cross(normal, along)
  // A ray (x, y, f) / f, divided by its part along the normal, in the two directions of the plane.
  const row = ([a, b, c]: Vector): readonly number[] => {
    const x = a / (focal * size)
    const y = b / (focal * size)
    return [x, y, c - x * centre.x - y * centre.y]
  }
  return Float64Array.from([...row(along), ...row(across), ...row(normal)])
}

/** Factor by which a plane of no scale grows so that a picked length has its known size. */
export function scaleTo(plane: Homography, known: FlatPoints, lengthMm: number): Homography {
  const from = mapped(plane, known[0] ?? 0, known[1] ?? 0)
  const to = mapped(plane, known[2] ?? 0, known[3] ?? 0)
  const scale = lengthMm / Math.hypot(to.x - from.x, to.y - from.y)
  return plane.map((value, at) => (at < 6 ? value * scale : value))
}

/** Plane from known points; on one line there is none. */
export const knownPlane = (picture: FlatPoints, plane: FlatPoints): Homography | NoPlane =>
  homographyOf(picture, plane) ?? 'on a line'
