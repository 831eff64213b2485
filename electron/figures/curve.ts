import { between, type Cubic, distance, type Point, reversed, straight } from './cubic-path.ts'

/** A smooth open curve of joined cubic pieces. */
export type Curve = readonly Cubic[]

type Axis = 0 | 1

/**
 * Cubic spline through points, second derivative continuous, parameter by chord length (de Boor 1978, chapter IV).
 * Without an end direction the end is natural (no curvature).
 */
export function smooth(points: readonly Point[], startDirection?: Point, endDirection?: Point): Curve {
  const count = points.length
  const [first, second] = points
  if (first === undefined || second === undefined) throw new Error('A curve needs two points.')
  if (count === 2 && !startDirection && !endDirection) return [straight(first, second)]
  const spans = points.slice(1).map((point, index) => Math.max(1e-6, distance(points[index] as Point, point)))
  const slopes = ([0, 1] as const).map((axis) => slopesAlong(points, spans, axis, startDirection, endDirection))
  return spans.map((span, index) => {
    const from = points[index] as Point
    const to = points[index + 1] as Point
    const slope = (at: number, axis: Axis) => slopes[axis]?.[at] ?? 0
    return [
      from,
      [from[0] + (slope(index, 0) * span) / 3, from[1] + (slope(index, 1) * span) / 3],
      [to[0] - (slope(index + 1, 0) * span) / 3, to[1] - (slope(index + 1, 1) * span) / 3],
      to,
    ] as const
  })
}

function slopesAlong(
  points: readonly Point[],
  spans: readonly number[],
  axis: Axis,
  startDirection: Point | undefined,
  endDirection: Point | undefined,
): number[] {
  const count = points.length
  const value = (index: number) => points[index]?.[axis] ?? 0
  const span = (index: number) => spans[index] ?? 1
  const unit = (direction: Point) => direction[axis] / Math.hypot(direction[0], direction[1])
  const before = new Array<number>(count).fill(0)
  const middle = new Array<number>(count).fill(0)
  const after = new Array<number>(count).fill(0)
  const right = new Array<number>(count).fill(0)
  for (let i = 1; i < count - 1; i++) {
    before[i] = span(i)
    middle[i] = 2 * (span(i - 1) + span(i))
    after[i] = span(i - 1)
    right[i] =
      3 * ((span(i) * (value(i) - value(i - 1))) / span(i - 1) + (span(i - 1) * (value(i + 1) - value(i))) / span(i))
  }
  const last = count - 1
  middle[0] = startDirection ? 1 : 2
  after[0] = startDirection ? 0 : 1
  right[0] = startDirection ? unit(startDirection) : (3 * (value(1) - value(0))) / span(0)
  middle[last] = endDirection ? 1 : 2
  before[last] = endDirection ? 0 : 1
  right[last] = endDirection ? unit(endDirection) : (3 * (value(last) - value(last - 1))) / span(last - 1)
  for (let i = 1; i < count; i++) {
    const factor = (before[i] ?? 0) / (middle[i - 1] ?? 1)
    middle[i] = (middle[i] ?? 1) - factor * (after[i - 1] ?? 0)
    right[i] = (right[i] ?? 0) - factor * (right[i - 1] ?? 0)
  }
  const slopes = new Array<number>(count).fill(0)
  for (let i = last; i >= 0; i--) {
    slopes[i] = ((right[i] ?? 0) - (i === last ? 0 : (after[i] ?? 0) * (slopes[i + 1] ?? 0))) / (middle[i] ?? 1)
  }
  return slopes
}

/** Straight stretches through points. */
export const lines = (...points: Point[]): Curve =>
  points.slice(1).map((point, index) => straight(points[index] as Point, point))

/** Joins curves end to start; a gap becomes a straight stretch. */
export function joined(...curves: Curve[]): Curve {
  const pieces: Cubic[] = []
  for (const curve of curves) {
    const end = pieces.at(-1)?.[3]
    const start = curve[0]?.[0]
    if (end && start && distance(end, start) > 1e-6) pieces.push(straight(end, start))
    pieces.push(...curve)
  }
  return pieces
}

export const backwards = (curve: Curve): Curve => [...curve].reverse().map(reversed)
export const startOf = (curve: Curve): Point => curve[0]?.[0] ?? [0, 0]
export const endOf = (curve: Curve): Point => curve.at(-1)?.[3] ?? [0, 0]

/** Moves every point; exact for any affine map of the plane. */
export const moved = (curve: Curve, move: (point: Point) => Point): Curve =>
  curve.map((piece) => piece.map(move) as unknown as Cubic)
export const mirroredDown = (curve: Curve): Curve => moved(curve, ([u, v]) => [u, -v])

const ROUND = 0.5522847
/** Ellipse of four pieces; the circle where `vertical` is left out. */
export function ellipse([u, v]: Point, across: number, vertical = across): Curve {
  const quarter = (fromU: number, fromV: number, toU: number, toV: number): Cubic => {
    const bend = (a: number, b: number) => a + ROUND * b
    return [
      [u + fromU * across, v + fromV * vertical],
      [u + bend(fromU, toU) * across, v + bend(fromV, toV) * vertical],
      [u + bend(toU, fromU) * across, v + bend(toV, fromV) * vertical],
      [u + toU * across, v + toV * vertical],
    ]
  }
  return [quarter(1, 0, 0, 1), quarter(0, 1, -1, 0), quarter(-1, 0, 0, -1), quarter(0, -1, 1, 0)]
}

/** Closed polygon with rounded corners; one radius for all or one for each corner. */
export function rounded(corners: readonly Point[], radius: number | readonly number[]): Curve {
  const bends = corners.map((corner, index) => {
    const previous = corners.at(index - 1) as Point
    const next = corners[(index + 1) % corners.length] as Point
    const wanted = typeof radius === 'number' ? radius : (radius[index] ?? 0)
    const from = between(corner, previous, Math.min(wanted / distance(corner, previous), 0.497))
    const to = between(corner, next, Math.min(wanted / distance(corner, next), 0.497))
    return [from, between(from, corner, ROUND), between(to, corner, ROUND), to] as const
  })
  return bends.flatMap((bend, index) => [bend, straight(bend[3], (bends[(index + 1) % bends.length] as Cubic)[0])])
}

/** Rectangle with rounded corners by its middle. */
export function roundedBox([u, v]: Point, width: number, height: number, radius: number): Curve {
  const [w, h] = [width / 2, height / 2]
  return rounded(
    [
      [u - w, v - h],
      [u + w, v - h],
      [u + w, v + h],
      [u - w, v + h],
    ],
    radius,
  )
}
