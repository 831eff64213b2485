import { fillPair, productOfPairs, solvePair, solvePairUpwards } from './small-systems'

/** Row `size` of a triangle, the covariances with the target, is its first right-hand side. */
function sideOf(triangle: usize, size: i32): usize {
  return triangle + size * (size + 1) * 8
}

function two(one: f64, other: f64): v128 {
  return f64x2.replace_lane(f64x2.splat(one), 1, other)
}

/** Stores a pair as two numbers, the second where there is one. */
function storeTwo(at: usize, values: v128, hasOther: bool): void {
  store<f64>(at, f64x2.extract_lane(values, 0))
  if (hasOther) store<f64>(at, f64x2.extract_lane(values, 1), 8)
}

/**
 * Simple kriging weights of nodes from earlier places, mean nought. Places are numbered as in `x` and `y`, nodes being those from
 * `first` on; `before` lists `size` places for each, -1 for none. `own` is the variance of a place among the others, which may
 * be a little more than that of the node, `sill`, so that the system stays solvable; pivots are no less than `least`. Answers the
 * weights, `size` for each node, and the deviations left.
 */
export function nodeWeights(
  x: usize,
  y: usize,
  first: i32,
  nodes: i32,
  before: usize,
  size: i32,
  structures: usize,
  count: i32,
  own: f64,
  sill: f64,
  least: f64,
  rooms: usize,
  weights: usize,
  deviations: usize,
): void {
  const column = rooms + 3 * (size + 1) * 16 + (size + 1) * (size + 2) * 8
  const triangle = column + size * 16
  const side = sideOf(triangle, size)
  for (let node = 0; node < nodes; node += 2) {
    const other = min(node + 1, nodes - 1)
    const targetX = two(load<f64>(x + (first + node) * 8), load<f64>(x + (first + other) * 8))
    const targetY = two(load<f64>(y + (first + node) * 8), load<f64>(y + (first + other) * 8))
    fillPair(
      x,
      y,
      0,
      before + node * size * 4,
      before + other * size * 4,
      targetX,
      targetY,
      size,
      structures,
      count,
      own,
      rooms,
      triangle,
    )
    solvePair(triangle, size, side, 1, least, column)
    const left = f64x2.sub(f64x2.splat(sill), productOfPairs(side, side, size))
    storeTwo(deviations + node * 8, f64x2.sqrt(f64x2.max(left, f64x2.splat(0))), other > node)
    solvePairUpwards(triangle, size, side)
    for (let slot = 0; slot < size; slot++) {
      const weight = v128.load(side + slot * 16)
      store<f64>(weights + (node * size + slot) * 8, f64x2.extract_lane(weight, 0))
      if (other > node) store<f64>(weights + (other * size + slot) * 8, f64x2.extract_lane(weight, 1))
    }
  }
}

/**
 * Ordinary kriging of each target from the `size` readings listed for it, each with a mean of its own, through the generalised
 * least squares mean (Cressie, Statistics for Spatial Data, 1993, 3.4.5). `own` is the variance of a reading, to which that at
 * `variance` is added where it is not nought; `sill` is the variance of a target. Answers 0 when a pivot is not above `least`.
 */
export function nearestPredictions(
  x: usize,
  y: usize,
  read: usize,
  variance: usize,
  targetX: usize,
  targetY: usize,
  targets: i32,
  near: usize,
  size: i32,
  structures: usize,
  count: i32,
  own: f64,
  sill: f64,
  least: f64,
  rooms: usize,
  values: usize,
  variances: usize,
): i32 {
  const column = rooms + 3 * (size + 1) * 16 + (size + 1) * (size + 2) * 8
  const triangle = column + size * 16
  const side = sideOf(triangle, size)
  const ones = side + size * 16
  const known = ones + size * 16
  for (let target = 0; target < targets; target += 2) {
    const other = min(target + 1, targets - 1)
    const theirX = two(load<f64>(targetX + target * 8), load<f64>(targetX + other * 8))
    const theirY = two(load<f64>(targetY + target * 8), load<f64>(targetY + other * 8))
    const first = near + target * size * 4
    const second = near + other * size * 4
    fillPair(x, y, variance, first, second, theirX, theirY, size, structures, count, own, rooms, triangle)
    for (let slot = 0; slot < size; slot++) {
      v128.store(ones + slot * 16, f64x2.splat(1))
      const one = load<f64>(read + load<i32>(first + slot * 4) * 8)
      v128.store(known + slot * 16, two(one, load<f64>(read + load<i32>(second + slot * 4) * 8)))
    }
    if (!solvePair(triangle, size, side, 3, least, column)) return 0
    const meanVariance = f64x2.div(f64x2.splat(1), productOfPairs(ones, ones, size))
    const missing = f64x2.sub(f64x2.splat(1), productOfPairs(side, ones, size))
    const share = f64x2.mul(missing, meanVariance)
    const value = f64x2.add(f64x2.mul(share, productOfPairs(ones, known, size)), productOfPairs(side, known, size))
    const explained = productOfPairs(side, side, size)
    const left = f64x2.add(f64x2.sub(f64x2.splat(sill), explained), f64x2.mul(share, missing))
    storeTwo(values + target * 8, value, other > target)
    storeTwo(variances + target * 8, f64x2.max(left, f64x2.splat(0)), other > target)
  }
  return 1
}
