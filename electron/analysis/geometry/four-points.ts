import type { FlatPoints } from './flat-points.ts'

/** Part of the determinant of three points below which they count as on one line; the points are near 1 in size. */
const FLAT = 1e-10

/** Row after row: takes the three basis points and (1, 1, 1) to four points, no three of which lie on a line. */
type Basis = Float64Array

function basisOf(points: FlatPoints): Basis | null {
  const [ax = 0, ay = 0, bx = 0, by = 0, cx = 0, cy = 0, dx = 0, dy = 0] = points
  // Shares of the first three in the fourth, by Cramer's rule; their common divisor is left out, since scale does not count.
  const a = (bx - dx) * (cy - dy) - (cx - dx) * (by - dy)
  const b = (cx - dx) * (ay - dy) - (ax - dx) * (cy - dy)
  const c = (ax - dx) * (by - dy) - (bx - dx) * (ay - dy)
  const smallest = Math.min(Math.abs(a), Math.abs(b), Math.abs(c), Math.abs(a + b + c))
  return smallest > FLAT ? Float64Array.of(a * ax, b * bx, c * cx, a * ay, b * by, c * cy, a, b, c) : null
}

/**
 * The one homography of four point pairs, through the projective basis of each (Hartley and Zisserman, 2nd ed., 2.3): exact,
 * and the same as the direct linear transformation gives. Null when three of four points lie on a line.
 */
export function homographyOfFour(from: FlatPoints, to: FlatPoints): Float64Array | null {
  const source = basisOf(from)
  const target = basisOf(to)
  if (source === null || target === null) return null
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0] = source
  const back = [
    e * i - f * h,
    c * h - b * i,
    b * f - c * e,
    f * g - d * i,
    a * i - c * g,
    c * d - a * f,
    d * h - e * g,
    b * g - a * h,
    a * e - b * d,
  ]
  const product = new Float64Array(9)
  for (let row = 0; row < 3; row += 1)
    for (let column = 0; column < 3; column += 1)
      product[3 * row + column] =
        (target[3 * row] ?? 0) * (back[column] ?? 0) +
        (target[3 * row + 1] ?? 0) * (back[3 + column] ?? 0) +
        (target[3 * row + 2] ?? 0) * (back[6 + column] ?? 0)
  return product
}
