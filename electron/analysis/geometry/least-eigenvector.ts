const SWEEPS = 60

/**
 * Eigenvector of the smallest eigenvalue of a symmetric matrix, by Jacobi rotations (Golub and Van Loan, Matrix
 * Computations, 8.5). The matrix is `size` rows one after another and is used up.
 */
export function leastEigenvector(matrix: Float64Array, size: number): Float64Array {
  const vectors = new Float64Array(size * size)
  for (let at = 0; at < size; at += 1) vectors[at * size + at] = 1
  for (let sweep = 0; sweep < SWEEPS && offDiagonal(matrix, size) > 0; sweep += 1) {
    for (let p = 0; p < size - 1; p += 1) for (let q = p + 1; q < size; q += 1) rotate(matrix, vectors, size, p, q)
  }
  let least = 0
  for (let at = 1; at < size; at += 1)
    if ((matrix[at * size + at] ?? 0) < (matrix[least * size + least] ?? 0)) least = at
  return Float64Array.from({ length: size }, (_, row) => vectors[row * size + least] ?? 0)
}

/** Largest off-diagonal entry that still counts beside the diagonal. */
function offDiagonal(matrix: Float64Array, size: number): number {
  let most = 0
  let trace = 0
  for (let row = 0; row < size; row += 1) {
    trace += Math.abs(matrix[row * size + row] ?? 0)
    for (let column = row + 1; column < size; column += 1)
      most = Math.max(most, Math.abs(matrix[row * size + column] ?? 0))
  }
  return most > trace * 1e-18 ? most : 0
}

function rotate(matrix: Float64Array, vectors: Float64Array, size: number, p: number, q: number): void {
  const off = matrix[p * size + q] ?? 0
  if (off === 0) return
  const theta = ((matrix[q * size + q] ?? 0) - (matrix[p * size + p] ?? 0)) / (2 * off)
  const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.hypot(theta, 1))
  const c = 1 / Math.hypot(t, 1)
  const s = t * c
  for (let row = 0; row < size; row += 1) turn(matrix, row * size + p, row * size + q, c, s)
  for (let column = 0; column < size; column += 1) turn(matrix, p * size + column, q * size + column, c, s)
  for (let row = 0; row < size; row += 1) turn(vectors, row * size + p, row * size + q, c, s)
}

function turn(values: Float64Array, one: number, other: number, c: number, s: number): void {
  const first = values[one] ?? 0
  const second = values[other] ?? 0
  values[one] = c * first - s * second
  values[other] = s * first + c * second
}
