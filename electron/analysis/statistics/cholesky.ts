import { blocksOf, KernelMemory, numbersOfBlocks } from '../kernel/kernel-memory.ts'

/** A pivot smaller than this share of the largest element is what rounding leaves of nought. */
export const PIVOT = 1e-13

/**
 * Lower factor L with L L' = A of a symmetric positive definite matrix, row by row, in place of its lower half, with noughts
 * above it (Golub and Van Loan, Matrix Computations, 4.2). Answers false when a pivot is lost in rounding, and the matrix is
 * then as it was.
 */
export function factorInPlace(matrix: Float64Array, n: number): boolean {
  const memory = new KernelMemory(n * n + numbersOfBlocks(n), 2)
  const { kernel } = memory
  const whole = memory.numbers(n * n)
  const factor = memory.numbers(numbersOfBlocks(n))
  whole.set(matrix)
  kernel.intoBlocks(whole.byteOffset, n, factor.byteOffset)
  if (kernel.factorBlocks(factor.byteOffset, blocksOf(n), leastPivot(matrix, n)) === 0) return false
  kernel.fromBlocks(factor.byteOffset, n, whole.byteOffset)
  matrix.set(whole)
  return true
}

/** Pivot at or below which a matrix counts as singular. */
export function leastPivot(matrix: Float64Array, n: number): number {
  let largest = 0
  for (let at = 0; at < n; at += 1) largest = Math.max(largest, matrix[at * n + at] as number)
  return largest * PIVOT
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

/** Solves L X = B in place of B for many right-hand sides at once: B is `n` rows of `width` numbers. */
export function solveLowerTogether(factor: Float64Array, n: number, columns: Float64Array, width: number): void {
  const rows = 4 * blocksOf(n)
  const strips = Math.ceil(width / 4)
  const memory = new KernelMemory(n * n + numbersOfBlocks(n) + rows * strips * 4, 3)
  const whole = memory.numbers(n * n)
  const blocks = memory.numbers(numbersOfBlocks(n))
  const x = memory.numbers(rows * strips * 4)
  const place = (row: number, column: number): number => (Math.floor(column / 4) * rows + row) * 4 + (column % 4)
  whole.set(factor)
  memory.kernel.intoBlocks(whole.byteOffset, n, blocks.byteOffset)
  for (let row = 0; row < n; row += 1)
    for (let column = 0; column < width; column += 1) x[place(row, column)] = columns[row * width + column] as number
  memory.kernel.solveStrips(blocks.byteOffset, 0, blocksOf(n), x.byteOffset, rows, strips)
  for (let row = 0; row < n; row += 1)
    for (let column = 0; column < width; column += 1) columns[row * width + column] = x[place(row, column)] as number
}

/** A^-1 = L^-T L^-1 in full from the factor. */
export function inverseFromLower(factor: Float64Array, n: number): Float64Array {
  const rows = 4 * blocksOf(n)
  const memory = new KernelMemory(n * n + numbersOfBlocks(n) + rows * rows + 16, 3)
  const whole = memory.numbers(n * n)
  const blocks = memory.numbers(numbersOfBlocks(n))
  const columns = memory.numbers(rows * rows + 16)
  whole.set(factor)
  memory.kernel.intoBlocks(whole.byteOffset, n, blocks.byteOffset)
  memory.kernel.inverseFromBlocks(blocks.byteOffset, n, columns.byteOffset, whole.byteOffset)
  return whole.slice()
}
