import { dotProduct } from './dot-product.ts'

/** Columns taken together, so that what is worked on stays in the fast memory. */
const BLOCK = 48
/** A pivot smaller than this share of the largest element is what rounding leaves of nought. */
const PIVOT = 1e-13

/**
 * Lower factor L with L L' = A of a symmetric positive definite matrix, row by row, in place of its lower half; the upper
 * half is of no use afterwards. Blocked, right-looking (Golub and Van Loan, Matrix Computations, 4.2). Answers false when a pivot
 * is lost in rounding, and the content is then of no use.
 */
export function factorInPlace(matrix: Float64Array, n: number): boolean {
  let largest = 0
  for (let at = 0; at < n; at += 1) largest = Math.max(largest, matrix[at * n + at] as number)
  const least = largest * PIVOT
  for (let start = 0; start < n; start += BLOCK) {
    const end = Math.min(n, start + BLOCK)
    if (!factorColumns(matrix, n, start, end, least)) return false
    subtractProducts(matrix, n, start, end)
  }
  return true
}

function factorColumns(matrix: Float64Array, n: number, start: number, end: number, least: number): boolean {
  for (let column = start; column < end; column += 1) {
    const own = column * n
    let pivot = matrix[own + column] as number
    for (let k = start; k < column; k += 1) pivot -= (matrix[own + k] as number) ** 2
    if (!(pivot > least)) return false
    const root = Math.sqrt(pivot)
    matrix[own + column] = root
    for (let row = column + 1; row < n; row += 1) {
      const at = row * n
      const taken = dotProduct(matrix, at + start, matrix, own + start, column - start)
      matrix[at + column] = ((matrix[at + column] as number) - taken) / root
    }
  }
  return true
}

/** Takes the factored columns out of everything right of them, two rows and two columns at a time. */
function subtractProducts(matrix: Float64Array, n: number, start: number, end: number): void {
  for (let row = end; row < n; row += 2) {
    const one = row * n
    const other = row + 1 < n ? one + n : one
    for (let column = end; column <= row + 1 && column < n; column += 2) {
      const left = column * n
      const right = column + 1 < n ? left + n : left
      let a = 0
      let b = 0
      let c = 0
      let d = 0
      for (let k = start; k < end; k += 1) {
        const x = matrix[one + k] as number
        const y = matrix[other + k] as number
        const u = matrix[left + k] as number
        const v = matrix[right + k] as number
        a += x * u
        b += x * v
        c += y * u
        d += y * v
      }
      matrix[one + column] = (matrix[one + column] as number) - a
      if (right !== left) matrix[one + column + 1] = (matrix[one + column + 1] as number) - b
      if (other !== one) matrix[other + column] = (matrix[other + column] as number) - c
      if (other !== one && right !== left) matrix[other + column + 1] = (matrix[other + column + 1] as number) - d
    }
  }
}

/** Solves L x = b in place of b. */
export function solveLower(factor: Float64Array, n: number, b: Float64Array): void {
  for (let row = 0; row < n; row += 1) {
    const at = row * n
    let sum = b[row] as number
    for (let k = 0; k < row; k += 1) sum -= (factor[at + k] as number) * (b[k] as number)
    b[row] = sum / (factor[at + row] as number)
  }
}

/** Solves L' x = b in place of b. */
export function solveUpper(factor: Float64Array, n: number, b: Float64Array): void {
  for (let row = n - 1; row >= 0; row -= 1) {
    const at = row * n
    const value = (b[row] as number) / (factor[at + row] as number)
    b[row] = value
    for (let k = 0; k < row; k += 1) b[k] = (b[k] as number) - value * (factor[at + k] as number)
  }
}

/**
 * Solves L X = B in place of B for many right-hand sides at once: B is `n` rows of `width` numbers, of which the first
 * `used` are worked on. Two rows go together, so that what is read from an earlier row serves twice.
 */
export function solveLowerTogether(
  factor: Float64Array,
  n: number,
  columns: Float64Array,
  width: number,
  used: number,
): void {
  for (let row = 0; row < n; row += 2) {
    const both = row + 1 < n
    let k = 0
    for (; both && k + 3 < row; k += 4) takeFourFromTwo(factor, n, columns, width, used, row, k)
    for (; k < row; k += 1) {
      takeOne(factor, n, columns, width, used, row, k)
      if (both) takeOne(factor, n, columns, width, used, row + 1, k)
    }
    scaleRow(factor, n, columns, width, used, row)
    if (!both) continue
    takeOne(factor, n, columns, width, used, row + 1, row)
    scaleRow(factor, n, columns, width, used, row + 1)
  }
}

function takeFourFromTwo(
  factor: Float64Array,
  n: number,
  columns: Float64Array,
  width: number,
  used: number,
  row: number,
  k: number,
): void {
  const at = row * n + k
  const a = factor[at] as number
  const b = factor[at + 1] as number
  const c = factor[at + 2] as number
  const d = factor[at + 3] as number
  const e = factor[at + n] as number
  const f = factor[at + n + 1] as number
  const g = factor[at + n + 2] as number
  const h = factor[at + n + 3] as number
  const own = row * width
  const next = own + width
  const first = k * width
  const second = first + width
  const third = second + width
  const fourth = third + width
  for (let t = 0; t < used; t += 1) {
    const p = columns[first + t] as number
    const q = columns[second + t] as number
    const r = columns[third + t] as number
    const s = columns[fourth + t] as number
    columns[own + t] = (columns[own + t] as number) - a * p - b * q - c * r - d * s
    columns[next + t] = (columns[next + t] as number) - e * p - f * q - g * r - h * s
  }
}

function takeOne(
  factor: Float64Array,
  n: number,
  columns: Float64Array,
  width: number,
  used: number,
  row: number,
  k: number,
): void {
  const share = factor[row * n + k] as number
  const own = row * width
  const from = k * width
  for (let t = 0; t < used; t += 1)
    columns[own + t] = (columns[own + t] as number) - share * (columns[from + t] as number)
}

function scaleRow(
  factor: Float64Array,
  n: number,
  columns: Float64Array,
  width: number,
  used: number,
  row: number,
): void {
  const scale = 1 / (factor[row * n + row] as number)
  const own = row * width
  for (let t = 0; t < used; t += 1) columns[own + t] = (columns[own + t] as number) * scale
}

/** Inverse of L, lower, row by row. */
export function inverseOfLower(factor: Float64Array, n: number): Float64Array {
  const inverse = new Float64Array(n * n)
  for (let row = 0; row < n; row += 1) {
    const at = row * n
    const pivot = factor[at + row] as number
    for (let k = 0; k < row; k += 1) {
      const share = (factor[at + k] as number) / pivot
      const from = k * n
      for (let column = 0; column <= k; column += 1)
        inverse[at + column] = (inverse[at + column] as number) - share * (inverse[from + column] as number)
    }
    inverse[at + row] = 1 / pivot
  }
  return inverse
}

/** A^-1 = L^-T L^-1 in full from the inverse of the factor. */
export function inverseFromLower(inverse: Float64Array, n: number): Float64Array {
  const whole = new Float64Array(n * n)
  for (let k = 0; k < n; k += 1) {
    const from = k * n
    for (let row = 0; row <= k; row += 1) {
      const share = inverse[from + row] as number
      const at = row * n
      for (let column = 0; column <= row; column += 1)
        whole[at + column] = (whole[at + column] as number) + share * (inverse[from + column] as number)
    }
  }
  for (let row = 0; row < n; row += 1)
    for (let column = 0; column < row; column += 1) whole[column * n + row] = whole[row * n + column] as number
  return whole
}
