import type { FlatPoints } from './flat-points.ts'

/** Part of the determinant of three points below which they count as on one line; the points are near 1 in size. */
const FLAT = 1e-10

/** Row after row: takes the three basis points and (1, 1, 1) to four points, no three of which lie on a line. */
type Basis = Float64Array

/** Puts the basis of the four points from place `at` on into `basis`; false where three lie on a line. */
function putBasis(basis: Basis, points: FlatPoints, at: number): boolean {
  const ax = points[at] as number
  const ay = points[at + 1] as number
  const bx = points[at + 2] as number
  const by = points[at + 3] as number
  const cx = points[at + 4] as number
  const cy = points[at + 5] as number
  const dx = points[at + 6] as number
  const dy = points[at + 7] as number
  // Shares of the first three in the fourth, by Cramer's rule; their common divisor is left out, since scale does not count.
  const a = (bx - dx) * (cy - dy) - (cx - dx) * (by - dy)
  const b = (cx - dx) * (ay - dy) - (ax - dx) * (cy - dy)
  const c = (ax - dx) * (by - dy) - (bx - dx) * (ay - dy)
  if (!(Math.min(Math.abs(a), Math.abs(b), Math.abs(c), Math.abs(a + b + c)) > FLAT)) return false
  basis[0] = a * ax
  basis[1] = b * bx
  basis[2] = c * cx
  basis[3] = a * ay
  basis[4] = b * by
  basis[5] = c * cy
  basis[6] = a
  basis[7] = b
  basis[8] = c
  return true
}

/** Puts the product of `target` and the adjugate of `source` into `product`. */
function putProduct(product: Float64Array, source: Basis, target: Basis): void {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0] = source
  for (let row = 0; row < 9; row += 3) {
    const [x, y, z] = [target[row] as number, target[row + 1] as number, target[row + 2] as number]
    product[row] = x * (e * i - f * h) + y * (f * g - d * i) + z * (d * h - e * g)
    product[row + 1] = x * (c * h - b * i) + y * (a * i - c * g) + z * (b * g - a * h)
    product[row + 2] = x * (b * f - c * e) + y * (c * d - a * f) + z * (a * e - b * d)
  }
}

/** The one homography of four point pairs, solved into what it is handed; false when three of four points lie on a line. */
type FourPointSolver = (into: Float64Array, from: FlatPoints, fromAt: number, to: FlatPoints, toAt: number) => boolean

/**
 * Solves four point pairs through the projective basis of each (Hartley and Zisserman, 2nd ed., 2.3): exact, and the same as
 * the direct linear transformation gives. Keeps its room, since it may be asked ten thousand times.
 */
export function fourPointSolver(): FourPointSolver {
  const source = new Float64Array(9)
  const target = new Float64Array(9)
  return (into, from, fromAt, to, toAt) => {
    if (!putBasis(source, from, fromAt) || !putBasis(target, to, toAt)) return false
    putProduct(into, source, target)
    return true
  }
}

/** The homography of four point pairs once; null when three of four points lie on a line. */
export function homographyOfFour(from: FlatPoints, to: FlatPoints): Float64Array | null {
  const found = new Float64Array(9)
  return fourPointSolver()(found, from, 0, to, 0) ? found : null
}
