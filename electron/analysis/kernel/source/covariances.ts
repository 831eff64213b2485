import { exponential } from './exponential'

const ERROR: i32 = 0
const NUGGET: i32 = 1
const SPHERICAL: i32 = 2
const MATERN: i32 = 4
/** Bytes of one structure: number of its model, sill, one by its range. */
const STRUCTURE: i32 = 24

/** Covariance at two distances, added over the structures. */
function covarianceAt(distance: v128, structures: usize, count: i32): v128 {
  let sum = v128.xor(distance, distance)
  for (let at = structures, end = structures + count * STRUCTURE; at < end; at += STRUCTURE) {
    const model = i32(load<f64>(at))
    const sill = v128.load64_splat(at, 8)
    const share = f64x2.mul(distance, v128.load64_splat(at, 16))
    if (model === ERROR) continue
    if (model === NUGGET) {
      sum = f64x2.add(sum, v128.and(f64x2.eq(share, f64x2.splat(0)), sill))
    } else if (model === SPHERICAL) {
      const bent = f64x2.sub(f64x2.splat(1.5), f64x2.mul(f64x2.splat(0.5), f64x2.mul(share, share)))
      const value = f64x2.sub(f64x2.splat(1), f64x2.mul(share, bent))
      sum = f64x2.add(sum, v128.and(f64x2.lt(share, f64x2.splat(1)), f64x2.mul(sill, value)))
    } else {
      const decay = f64x2.mul(sill, exponential(f64x2.neg(share)))
      sum = f64x2.add(sum, decay)
      if (model === MATERN) sum = f64x2.add(sum, f64x2.mul(share, decay))
    }
  }
  return sum
}

/**
 * Turns so many pairs of squared distances into covariances, in place. In steps, because a processor works ahead over several
 * short chains of operations and not over one long one.
 */
export function covariancesOfSquares(at: usize, pairs: i32, structures: usize, count: i32): void {
  const end = at + pairs * 16
  for (let one = at; one < end; one += 16) v128.store(one, f64x2.sqrt(v128.load(one)))
  for (let one = at; one < end; one += 16) v128.store(one, covarianceAt(v128.load(one), structures, count))
}

/**
 * Covariances of `n` places with strips of four targets: for each strip `rows` rows of four numbers, those beyond `n` nought.
 */
export function covarianceStrips(
  structures: usize,
  count: i32,
  x: usize,
  y: usize,
  n: i32,
  rows: i32,
  targetX: usize,
  targetY: usize,
  strips: i32,
  out: usize,
): void {
  for (let strip = 0; strip < strips; strip++) {
    const own = out + strip * rows * 32
    for (let half = 0; half < 32; half += 16) {
      const theirX = v128.load(targetX + strip * 32 + half)
      const theirY = v128.load(targetY + strip * 32 + half)
      for (let row = 0; row < n; row++) {
        const dx = f64x2.sub(theirX, v128.load64_splat(x + row * 8))
        const dy = f64x2.sub(theirY, v128.load64_splat(y + row * 8))
        v128.store(own + row * 32 + half, f64x2.add(f64x2.mul(dx, dx), f64x2.mul(dy, dy)))
      }
    }
    covariancesOfSquares(own, n * 2, structures, count)
    memory.fill(own + n * 32, 0, (rows - n) * 32)
  }
}
