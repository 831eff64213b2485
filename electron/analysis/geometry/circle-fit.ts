import type { FlatPoints } from './flat-points.ts'

interface Circle {
  readonly x: number
  readonly y: number
  readonly radius: number
}

const ROUNDS = 30

/**
 * Circle through three points, or of least squared distance from more: begun with the algebraic fit of Kåsa (IEEE Trans.
 * Instrum. Meas. 25 (1976) 8-14), refined by Gauss and Newton. Null when the points lie on a line.
 */
export function fitCircle(points: FlatPoints): Circle | null {
  const count = points.length / 2
  let middleX = 0
  let middleY = 0
  for (let at = 0; at < count; at += 1) {
    middleX += (points[2 * at] ?? 0) / count
    middleY += (points[2 * at + 1] ?? 0) / count
  }
  const moved = points.map((value, at) => value - (at % 2 === 0 ? middleX : middleY))
  let circle = algebraic(moved)
  for (let round = 0; circle !== null && count > 3 && round < ROUNDS; round += 1) {
    const next = step(moved, circle)
    if (next === null) break
    const change = Math.hypot(next.x - circle.x, next.y - circle.y, next.radius - circle.radius)
    circle = next
    if (change < 1e-12 * circle.radius) break
  }
  return circle === null ? null : { ...circle, x: circle.x + middleX, y: circle.y + middleY }
}

/** x² + y² = 2 a x + 2 b y + c in least squares, of points about their middle. */
function algebraic(points: FlatPoints): Circle | null {
  const count = points.length / 2
  let [xx, xy, yy, xz, yz, z] = [0, 0, 0, 0, 0, 0]
  for (let at = 0; at < count; at += 1) {
    const x = points[2 * at] ?? 0
    const y = points[2 * at + 1] ?? 0
    const square = x * x + y * y
    xx += x * x
    xy += x * y
    yy += y * y
    xz += x * square
    yz += y * square
    z += square
  }
  const determinant = xx * yy - xy * xy
  if (determinant <= 1e-12 * (xx + yy) ** 2) return null
  const x = (xz * yy - yz * xy) / (2 * determinant)
  const y = (yz * xx - xz * xy) / (2 * determinant)
  return { x, y, radius: Math.sqrt(x * x + y * y + z / count) }
}

/** One step of Gauss and Newton on the distances from the circle. */
function step(points: FlatPoints, { x, y, radius }: Circle): Circle | null {
  const count = points.length / 2
  let [cc, cs, ss, c, s, rc, rs, r] = [0, 0, 0, 0, 0, 0, 0, 0]
  for (let at = 0; at < count; at += 1) {
    const dx = (points[2 * at] ?? 0) - x
    const dy = (points[2 * at + 1] ?? 0) - y
    const distance = Math.hypot(dx, dy)
    if (distance === 0) return null
    const cosine = dx / distance
    const sine = dy / distance
    const residual = distance - radius
    cc += cosine * cosine
    cs += cosine * sine
    ss += sine * sine
    c += cosine
    s += sine
    rc += residual * cosine
    rs += residual * sine
    r += residual
  }
  // The radius taken out: what is left are two equations for the middle.
  const a = cc - (c * c) / count
  const b = cs - (c * s) / count
  const d = ss - (s * s) / count
  const determinant = a * d - b * b
  if (determinant <= 1e-15 * count * count) return null
  const p = rc - (c * r) / count
  const q = rs - (s * r) / count
  const moveX = (p * d - q * b) / determinant
  const moveY = (q * a - p * b) / determinant
  return { x: x + moveX, y: y + moveY, radius: radius + (r - c * moveX - s * moveY) / count }
}
