/**
 * A lower triangular matrix lies in blocks of four rows: block b holds 4 (b + 1) columns, each the four numbers of its rows,
 * and begins 8 b (b + 1) numbers after the first. Right-hand sides lie in strips of four columns: row after row, four numbers
 * each, so that a solved strip is a block of rows of the transpose.
 */
export function blockOf(factor: usize, block: i32): usize {
  return factor + 64 * block * (block + 1)
}

/** Takes from 4 x 4 numbers the products of `count` columns of four rows with as many rows of four columns. */
export function takeProducts(columns: usize, rows: usize, count: i32, from: usize): void {
  let a0 = v128.load(from)
  let a1 = v128.load(from, 16)
  let b0 = v128.load(from, 32)
  let b1 = v128.load(from, 48)
  let c0 = v128.load(from, 64)
  let c1 = v128.load(from, 80)
  let d0 = v128.load(from, 96)
  let d1 = v128.load(from, 112)
  const end = columns + count * 32
  while (columns < end) {
    const left = v128.load(rows)
    const right = v128.load(rows, 16)
    const a = v128.load64_splat(columns)
    a0 = f64x2.sub(a0, f64x2.mul(a, left))
    a1 = f64x2.sub(a1, f64x2.mul(a, right))
    const b = v128.load64_splat(columns, 8)
    b0 = f64x2.sub(b0, f64x2.mul(b, left))
    b1 = f64x2.sub(b1, f64x2.mul(b, right))
    const c = v128.load64_splat(columns, 16)
    c0 = f64x2.sub(c0, f64x2.mul(c, left))
    c1 = f64x2.sub(c1, f64x2.mul(c, right))
    const d = v128.load64_splat(columns, 24)
    d0 = f64x2.sub(d0, f64x2.mul(d, left))
    d1 = f64x2.sub(d1, f64x2.mul(d, right))
    columns += 32
    rows += 32
  }
  v128.store(from, a0)
  v128.store(from, a1, 16)
  v128.store(from, b0, 32)
  v128.store(from, b1, 48)
  v128.store(from, c0, 64)
  v128.store(from, c1, 80)
  v128.store(from, d0, 96)
  v128.store(from, d1, 112)
}

/** Solves the 4 x 4 triangle of a block for four columns. */
function solveTriangle(triangle: usize, x: usize): void {
  for (let half = x; half < x + 32; half += 16) {
    const a = f64x2.div(v128.load(half), v128.load64_splat(triangle))
    let b = f64x2.sub(v128.load(half, 32), f64x2.mul(v128.load64_splat(triangle, 8), a))
    b = f64x2.div(b, v128.load64_splat(triangle, 40))
    let c = f64x2.sub(v128.load(half, 64), f64x2.mul(v128.load64_splat(triangle, 16), a))
    c = f64x2.sub(c, f64x2.mul(v128.load64_splat(triangle, 48), b))
    c = f64x2.div(c, v128.load64_splat(triangle, 80))
    let d = f64x2.sub(v128.load(half, 96), f64x2.mul(v128.load64_splat(triangle, 24), a))
    d = f64x2.sub(d, f64x2.mul(v128.load64_splat(triangle, 56), b))
    d = f64x2.sub(d, f64x2.mul(v128.load64_splat(triangle, 88), c))
    d = f64x2.div(d, v128.load64_splat(triangle, 120))
    v128.store(half, a)
    v128.store(half, b, 32)
    v128.store(half, c, 64)
    v128.store(half, d, 96)
  }
}

/**
 * Solves L X = B in place of B for strips of `rows` rows, of which all before block `first` are nought and those of block
 * `end` and after are left alone.
 */
export function solveStrips(factor: usize, first: i32, end: i32, x: usize, rows: i32, strips: i32): void {
  for (let block = first; block < end; block++) {
    const own = blockOf(factor, block)
    const skipped = first * 128
    const count = (block - first) * 4
    for (let strip = 0; strip < strips; strip++) {
      const at = x + strip * rows * 32
      takeProducts(own + skipped, at + skipped, count, at + block * 128)
      solveTriangle(own + block * 128, at + block * 128)
    }
  }
}

/** Root of a 4 x 4 matrix in place, by columns of its lower half; answers false when a pivot is not above `least`. */
function rootOfTriangle(triangle: usize, least: f64): bool {
  for (let column = 0; column < 4; column++) {
    const own = triangle + column * 32
    const pivot = load<f64>(own + column * 8)
    if (!(pivot > least)) return false
    const root = Math.sqrt(pivot)
    store<f64>(own + column * 8, root)
    for (let row = column + 1; row < 4; row++) store<f64>(own + row * 8, load<f64>(own + row * 8) / root)
    for (let row = 0; row < column; row++) store<f64>(own + row * 8, 0)
    for (let later = column + 1; later < 4; later++)
      for (let row = later; row < 4; row++) {
        const at = triangle + later * 32 + row * 8
        store<f64>(at, load<f64>(at) - load<f64>(own + row * 8) * load<f64>(own + later * 8))
      }
  }
  return true
}

/**
 * Lower factor in place of a symmetric positive definite matrix laid out in blocks, the squares on the diagonal in full:
 * each block of rows is what its own covariances with all earlier rows become when they are solved for (Golub and Van Loan,
 * Matrix Computations, 4.2, the bordered form). Answers 0 when a pivot is not above `least`.
 */
export function factorBlocks(factor: usize, blocks: i32, least: f64): i32 {
  for (let block = 0; block < blocks; block++) {
    const own = blockOf(factor, block)
    const square = own + block * 128
    solveStrips(factor, 0, block, own, 0, 1)
    takeProducts(own, own, block * 4, square)
    if (!rootOfTriangle(square, least)) return 0
  }
  return 1
}
