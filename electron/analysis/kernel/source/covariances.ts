import { exponential } from './exponential'

const ERROR: i32 = 0
const NUGGET: i32 = 1
const SPHERICAL: i32 = 2
const MATERN: i32 = 4
/** Bytes of one structure: number of its model, sill, one by its range. */
const STRUCTURE: i32 = 24

/** Adds the covariances of one structure at so many pairs of distances. */
function addStructure(structure: usize, distances: usize, pairs: i32, out: usize): void {
  const model = i32(load<f64>(structure))
  const sill = v128.load64_splat(structure, 8)
  const inverse = v128.load64_splat(structure, 16)
  const one = f64x2.splat(1)
  const end = out + pairs * 16
  if (model === ERROR) return
  if (model === NUGGET) {
    for (; out < end; out += 16, distances += 16) {
      const same = f64x2.eq(v128.load(distances), f64x2.splat(0))
      v128.store(out, f64x2.add(v128.load(out), v128.and(same, sill)))
    }
  } else if (model === SPHERICAL) {
    for (; out < end; out += 16, distances += 16) {
      const share = f64x2.mul(v128.load(distances), inverse)
      const bent = f64x2.sub(f64x2.splat(1.5), f64x2.mul(f64x2.splat(0.5), f64x2.mul(share, share)))
      const value = f64x2.mul(sill, f64x2.sub(one, f64x2.mul(share, bent)))
      v128.store(out, f64x2.add(v128.load(out), v128.and(f64x2.lt(share, one), value)))
    }
  } else {
    const slope = model === MATERN ? one : f64x2.splat(0)
    for (; out < end; out += 16, distances += 16) {
      const share = f64x2.mul(v128.load(distances), inverse)
      const decay = f64x2.mul(sill, exponential(f64x2.neg(share)))
      const raised = f64x2.mul(f64x2.add(one, f64x2.mul(slope, share)), decay)
      v128.store(out, f64x2.add(v128.load(out), raised))
    }
  }
}

/**
 * Covariances at so many pairs of squared distances, added over the structures; distances are left in place of their squares.
 * In steps, because a processor works ahead over several short chains of operations and not over one long one.
 */
export function covariancesOfSquares(squares: usize, pairs: i32, structures: usize, count: i32, out: usize): void {
  const end = squares + pairs * 16
  for (let at = squares; at < end; at += 16) v128.store(at, f64x2.sqrt(v128.load(at)))
  memory.fill(out, 0, pairs * 16)
  for (let at = 0; at < count; at++) addStructure(structures + at * STRUCTURE, squares, pairs, out)
}

/**
 * Covariances of `n` places with strips of four targets: for each strip `rows` rows of four numbers, those beyond `n` nought. `room`
 * has room for 4 n numbers.
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
  room: usize,
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
        v128.store(room + row * 32 + half, f64x2.add(f64x2.mul(dx, dx), f64x2.mul(dy, dy)))
      }
    }
    covariancesOfSquares(room, n * 2, structures, count, own)
    memory.fill(own + n * 32, 0, (rows - n) * 32)
  }
}
