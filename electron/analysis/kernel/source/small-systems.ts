import { covariancesOfSquares } from './covariances'

/**
 * Systems of a few places, two at a time: every number is a pair, the first of one system, the second of the other. A lower
 * triangle lies row after row, each a number longer than the one before.
 */
function rowOf(triangle: usize, row: i32): usize {
  return triangle + row * (row + 1) * 8
}

function pair(numbers: usize, one: i32, other: i32): v128 {
  return f64x2.replace_lane(f64x2.splat(load<f64>(numbers + one * 8)), 1, load<f64>(numbers + other * 8))
}

/**
 * Fills a triangle of `size` rows with the covariances of the places listed at `one` and `other`, and a further row with those to
 * the two targets. A place of number -1 is none: its variance is one and it goes with nothing. `own` is the variance of a place,
 * to which that of each reading is added where `variance` is not nought. `rooms` has as many pairs of
 * room as the triangle, and 3 (size + 1) more.
 */
export function fillPair(
  x: usize,
  y: usize,
  variance: usize,
  one: usize,
  other: usize,
  targetX: v128,
  targetY: v128,
  size: i32,
  structures: usize,
  count: i32,
  own: f64,
  rooms: usize,
  triangle: usize,
): void {
  const placesX = rooms
  const placesY = placesX + (size + 1) * 16
  const present = placesY + (size + 1) * 16
  const squares = present + (size + 1) * 16
  for (let slot = 0; slot < size; slot++) {
    const first = load<i32>(one + slot * 4)
    const second = load<i32>(other + slot * 4)
    v128.store(placesX + slot * 16, pair(x, max(first, 0), max(second, 0)))
    v128.store(placesY + slot * 16, pair(y, max(first, 0), max(second, 0)))
    const there = i64x2.replace_lane(i64x2.splat(first < 0 ? 0 : -1), 1, second < 0 ? 0 : -1)
    v128.store(present + slot * 16, there)
  }
  v128.store(placesX + size * 16, targetX)
  v128.store(placesY + size * 16, targetY)
  v128.store(present + size * 16, i64x2.splat(-1))
  let at = squares
  for (let row = 0; row <= size; row++)
    for (let column = 0; column <= row; column++, at += 16) {
      const dx = f64x2.sub(v128.load(placesX + row * 16), v128.load(placesX + column * 16))
      const dy = f64x2.sub(v128.load(placesY + row * 16), v128.load(placesY + column * 16))
      v128.store(at, f64x2.add(f64x2.mul(dx, dx), f64x2.mul(dy, dy)))
    }
  covariancesOfSquares(squares, ((size + 1) * (size + 2)) >> 1, structures, count, triangle)
  at = triangle
  for (let row = 0; row <= size; row++) {
    const there = v128.load(present + row * 16)
    for (let column = 0; column < row; column++, at += 16)
      v128.store(at, v128.and(v128.load(at), v128.and(there, v128.load(present + column * 16))))
    let diagonal = f64x2.splat(own)
    if (variance !== 0 && row < size)
      diagonal = f64x2.add(
        diagonal,
        pair(variance, max(load<i32>(one + row * 4), 0), max(load<i32>(other + row * 4), 0)),
      )
    v128.store(at, v128.bitselect(diagonal, f64x2.splat(1), there))
    at += 16
  }
}

/**
 * Factors the triangle in place and solves it for the `sides` rows that lie one after the other at `side`, `size` pairs each: each
 * becomes L^-1 times itself. Pivots are taken as no less than `least`. `column` has room for `size` pairs. Answers whether all
 * pivots were above `least`.
 */
export function solvePair(triangle: usize, size: i32, side: usize, sides: i32, least: f64, column: usize): bool {
  const floor = f64x2.splat(least)
  let sound = true
  for (let pivot = 0; pivot < size; pivot++) {
    const own = rowOf(triangle, pivot) + pivot * 16
    const square = v128.load(own)
    if (!v128.all_true<i64>(f64x2.gt(square, floor))) sound = false
    const root = f64x2.sqrt(f64x2.max(square, floor))
    v128.store(own, root)
    const inverse = f64x2.div(f64x2.splat(1), root)
    for (let row = pivot + 1; row < size; row++) {
      const at = rowOf(triangle, row) + pivot * 16
      const value = f64x2.mul(v128.load(at), inverse)
      v128.store(at, value)
      v128.store(column + row * 16, value)
    }
    for (let row = pivot + 1; row < size; row++) {
      const at = rowOf(triangle, row)
      takeShare(at, v128.load(column + row * 16), column, pivot + 1, row + 1)
    }
    for (let one = 0; one < sides; one++) {
      const at = side + one * size * 16
      const share = f64x2.mul(v128.load(at + pivot * 16), inverse)
      v128.store(at + pivot * 16, share)
      takeShare(at, share, column, pivot + 1, size)
    }
  }
  return sound
}

/** Takes a share of a column out of a row, from one place up to another. */
function takeShare(row: usize, share: v128, column: usize, from: i32, to: i32): void {
  const end = row + to * 16
  let own = column + from * 16
  for (let at = row + from * 16; at < end; at += 16, own += 16)
    v128.store(at, f64x2.sub(v128.load(at), f64x2.mul(share, v128.load(own))))
}

/** Solves L' x = b in place of b. */
export function solvePairUpwards(triangle: usize, size: i32, side: usize): void {
  for (let row = size - 1; row >= 0; row--) {
    const own = rowOf(triangle, row)
    const value = f64x2.div(v128.load(side + row * 16), v128.load(own + row * 16))
    v128.store(side + row * 16, value)
    takeShare(side, value, own, 0, row)
  }
}

export function productOfPairs(one: usize, other: usize, size: i32): v128 {
  let sum = f64x2.splat(0)
  for (let at = 0; at < size * 16; at += 16) sum = f64x2.add(sum, f64x2.mul(v128.load(one + at), v128.load(other + at)))
  return sum
}
