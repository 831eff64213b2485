import type { FlatPoints } from './flat-points.ts'
import { fourPointSolver, homographyOfFour } from './four-points.ts'
import { leastEigenvector } from './least-eigenvector.ts'

/** Row after row, of any scale: x' ~ h0 x + h1 y + h2 over h6 x + h7 y + h8. */
export type Homography = Float64Array

/** How points are moved to their middle and scaled to a root mean square distance of √2. */
interface Moved {
  readonly scale: number
  readonly x: number
  readonly y: number
}

interface Normalised extends Moved {
  readonly points: FlatPoints
}

/**
 * Homography of four or more point pairs by the normalised direct linear transformation (Hartley and Zisserman, Multiple
 * View Geometry, 2nd ed., algorithm 4.2): exact for four, least algebraic error for more. Null when points coincide or lie
 * on a line so that there is none.
 */
export function homographyOf(from: FlatPoints, to: FlatPoints): Homography | null {
  const pairs = from.length / 2
  const a = normalise(from)
  const b = normalise(to)
  if (a === null || b === null) return null
  const h = pairs === 4 ? homographyOfFour(a.points, b.points) : leastSquares(a.points, b.points)
  if (h === null) return null
  undo(h, a, b)
  return h
}

/**
 * The homography of four pairs of points that are disturbed again and again: moved and scaled as the first ones ask, solved
 * in the same room each time. `inputs` hold four points and then the four they go to; null where the first ones coincide.
 */
export function fourPairsAnew(first: FlatPoints): ((into: Homography, inputs: Float64Array) => boolean) | null {
  const a = normalise(first.subarray(0, 8))
  const b = normalise(first.subarray(8, 16))
  if (a === null || b === null) return null
  const solve = fourPointSolver()
  const moved = new Float64Array(16)
  return (into, inputs) => {
    for (let at = 0; at < 16; at += 2) {
      const by = at < 8 ? a : b
      moved[at] = ((inputs[at] as number) - by.x) * by.scale
      moved[at + 1] = ((inputs[at + 1] as number) - by.y) * by.scale
    }
    if (!solve(into, moved, 0, moved, 8)) return false
    undo(into, a, b)
    return true
  }
}

/** Least singular vector of the equations of all pairs. */
function leastSquares(from: FlatPoints, to: FlatPoints): Float64Array {
  const pairs = from.length / 2
  const rows = new Float64Array(pairs * 18)
  for (let pair = 0; pair < pairs; pair += 1) {
    const x = from[2 * pair] ?? 0
    const y = from[2 * pair + 1] ?? 0
    const u = to[2 * pair] ?? 0
    const v = to[2 * pair + 1] ?? 0
    rows.set([0, 0, 0, -x, -y, -1, v * x, v * y, v, x, y, 1, 0, 0, 0, -u * x, -u * y, -u], pair * 18)
  }
  return leastEigenvector(normalMatrix(rows, 2 * pairs), 9)
}

function normalise(points: FlatPoints): Normalised | null {
  const count = points.length / 2
  let x = 0
  let y = 0
  for (let at = 0; at < count; at += 1) {
    x += (points[2 * at] ?? 0) / count
    y += (points[2 * at + 1] ?? 0) / count
  }
  let squares = 0
  for (let at = 0; at < count; at += 1)
    squares += ((points[2 * at] ?? 0) - x) ** 2 + ((points[2 * at + 1] ?? 0) - y) ** 2
  if (squares === 0) return null
  const scale = Math.sqrt((2 * count) / squares)
  const moved = new Float64Array(points.length)
  for (let at = 0; at < count; at += 1) {
    moved[2 * at] = ((points[2 * at] ?? 0) - x) * scale
    moved[2 * at + 1] = ((points[2 * at + 1] ?? 0) - y) * scale
  }
  return { points: moved, scale, x, y }
}

function normalMatrix(rows: Float64Array, count: number): Float64Array {
  const matrix = new Float64Array(81)
  for (let row = 0; row < count; row += 1)
    for (let i = 0; i < 9; i += 1)
      for (let j = 0; j < 9; j += 1)
        matrix[i * 9 + j] = (matrix[i * 9 + j] ?? 0) + (rows[row * 9 + i] ?? 0) * (rows[row * 9 + j] ?? 0)
  return matrix
}

/** Puts H = T'⁻¹ H~ T in the place of H~. */
function undo(h: Float64Array, a: Moved, b: Moved): void {
  for (let row = 0; row < 9; row += 3) {
    const [first, second] = [h[row] as number, h[row + 1] as number]
    h[row] = a.scale * first
    h[row + 1] = a.scale * second
    h[row + 2] = (h[row + 2] as number) - a.scale * (first * a.x + second * a.y)
  }
  for (let column = 0; column < 3; column += 1) {
    const w = h[6 + column] as number
    h[column] = (h[column] as number) / b.scale + b.x * w
    h[3 + column] = (h[3 + column] as number) / b.scale + b.y * w
  }
}

/** Where a point goes; its `w` has one sign on one side of the vanishing line and the other beyond. */
export function mapped(
  h: Homography,
  x: number,
  y: number,
): { readonly x: number; readonly y: number; readonly w: number } {
  const w = (h[6] ?? 0) * x + (h[7] ?? 0) * y + (h[8] ?? 0)
  return {
    x: ((h[0] ?? 0) * x + (h[1] ?? 0) * y + (h[2] ?? 0)) / w,
    y: ((h[3] ?? 0) * x + (h[4] ?? 0) * y + (h[5] ?? 0)) / w,
    w,
  }
}
