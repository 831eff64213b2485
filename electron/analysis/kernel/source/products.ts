import { blockOf, solveStrips, takeProducts } from './triangle'

/** Sum of products of two stretches of numbers. */
export function dot(one: usize, other: usize, count: i32): f64 {
  let a = f64x2.splat(0)
  let b = f64x2.splat(0)
  let c = f64x2.splat(0)
  let d = f64x2.splat(0)
  const end = one + count * 8
  const eights = one + (count & ~7) * 8
  while (one < eights) {
    a = f64x2.add(a, f64x2.mul(v128.load(one), v128.load(other)))
    b = f64x2.add(b, f64x2.mul(v128.load(one, 16), v128.load(other, 16)))
    c = f64x2.add(c, f64x2.mul(v128.load(one, 32), v128.load(other, 32)))
    d = f64x2.add(d, f64x2.mul(v128.load(one, 48), v128.load(other, 48)))
    one += 64
    other += 64
  }
  a = f64x2.add(f64x2.add(a, b), f64x2.add(c, d))
  let sum = f64x2.extract_lane(a, 0) + f64x2.extract_lane(a, 1)
  for (; one < end; one += 8, other += 8) sum += load<f64>(one) * load<f64>(other)
  return sum
}

/** w' A w of a symmetric matrix of which the lower half is read, row by row. */
export function quadraticForm(matrix: usize, w: usize, n: i32): f64 {
  let sum: f64 = 0
  for (let row = 0; row < n; row++, matrix += n * 8) {
    const own = load<f64>(w + row * 8)
    sum += own * (2 * dot(matrix, w, row) + own * load<f64>(matrix + row * 8))
  }
  return sum
}

/** For each column of the strips its product with one vector, put into `out` strip by strip. */
export function columnProducts(x: usize, rows: i32, strips: i32, vector: usize, out: usize): void {
  for (let strip = 0; strip < strips; strip++, out += 32) {
    let left = f64x2.splat(0)
    let right = f64x2.splat(0)
    for (let row = 0; row < rows; row++, x += 32) {
      const share = v128.load64_splat(vector + row * 8)
      left = f64x2.add(left, f64x2.mul(share, v128.load(x)))
      right = f64x2.add(right, f64x2.mul(share, v128.load(x, 16)))
    }
    v128.store(out, left)
    v128.store(out, right, 16)
  }
}

/** For each column of the strips the sum of its squares. */
export function columnSquares(x: usize, rows: i32, strips: i32, out: usize): void {
  for (let strip = 0; strip < strips; strip++, out += 32) {
    let left = f64x2.splat(0)
    let right = f64x2.splat(0)
    for (let row = 0; row < rows; row++, x += 32) {
      const one = v128.load(x)
      const other = v128.load(x, 16)
      left = f64x2.add(left, f64x2.mul(one, one))
      right = f64x2.add(right, f64x2.mul(other, other))
    }
    v128.store(out, left)
    v128.store(out, right, 16)
  }
}

/** Puts the lower half of a matrix of n rows into blocks; rows beyond it are those of the identity. */
export function intoBlocks(matrix: usize, n: i32, factor: usize): void {
  const blocks = (n + 3) >> 2
  for (let block = 0; block < blocks; block++) {
    const own = blockOf(factor, block)
    for (let line = 0; line < 4; line++) {
      const row = block * 4 + line
      for (let column = 0; column < block * 4 + 4; column++) {
        let value: f64 = row === column ? 1 : 0
        if (row < n && column < n) {
          const at = column <= row ? row * n + column : column * n + row
          value = load<f64>(matrix + at * 8)
        }
        store<f64>(own + column * 32 + line * 8, value)
      }
    }
  }
}

/** The lower half from its blocks, n rows one after the other, with noughts above it. */
export function fromBlocks(factor: usize, n: i32, matrix: usize): void {
  memory.fill(matrix, 0, n * n * 8)
  for (let row = 0; row < n; row++) {
    const own = blockOf(factor, row >> 2) + (row & 3) * 8
    for (let column = 0; column <= row; column++)
      store<f64>(matrix + (row * n + column) * 8, load<f64>(own + column * 32))
  }
}

/**
 * A^-1 = L^-T L^-1 in full, n rows of n numbers, from the blocks of L. `strips` has room for the columns of L^-1: as many
 * strips as there are blocks, and 16 numbers more.
 */
export function inverseFromBlocks(factor: usize, n: i32, strips: usize, inverse: usize): void {
  const blocks = (n + 3) >> 2
  const rows = blocks * 4
  memory.fill(strips, 0, rows * rows * 8)
  for (let strip = 0; strip < blocks; strip++) {
    const own = strips + strip * rows * 32
    for (let line = 0; line < 4; line++) store<f64>(own + (strip * 4 + line) * 32 + line * 8, 1)
    solveStrips(factor, strip, blocks, own, rows, 1)
  }
  const square = strips + rows * rows * 8
  for (let one = 0; one < blocks; one++)
    for (let other = 0; other <= one; other++) {
      const from = one * 128
      memory.fill(square, 0, 128)
      takeProducts(strips + one * rows * 32 + from, strips + other * rows * 32 + from, rows - one * 4, square)
      for (let line = 0; line < 4; line++)
        for (let column = 0; column < 4; column++) {
          const row = one * 4 + line
          const to = other * 4 + column
          if (row >= n || to >= n) continue
          const value = -load<f64>(square + line * 32 + column * 8)
          store<f64>(inverse + (row * n + to) * 8, value)
          store<f64>(inverse + (to * n + row) * 8, value)
        }
    }
}
