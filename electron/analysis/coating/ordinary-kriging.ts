import { ProblemError } from '../../../shared-types/problem-error.ts'
import { blocksOf, KernelMemory, numbersOfBlocks } from '../kernel/kernel-memory.ts'
import { factorInPlace, solveLower, solveUpper } from '../statistics/cholesky.ts'
import { type CovarianceStructure, covariance, distanceTo, errorVariance, type Places } from './covariance.ts'
import { structureNumbers, writeStructures } from './kernel-structures.ts'

/** Values read at places, each with a variance of its own beside that of the model. */
export interface KrigingData {
  readonly places: Places
  readonly values: Float64Array
  /** Variance of each reading on the scale of the values; null for none. */
  readonly readingVariance: Float64Array | null
}

/** A data set made ready for ordinary kriging: the factor of its covariance and what depends on it alone. */
export interface KrigingSystem {
  readonly data: KrigingData
  readonly structures: readonly CovarianceStructure[]
  readonly n: number
  readonly factor: Float64Array
  /** K^-1 1 and K^-1 (z - mean). */
  readonly ones: Float64Array
  readonly residuals: Float64Array
  /** Generalised least squares mean and its variance, 1 / 1'K^-1 1. */
  readonly mean: number
  readonly meanVariance: number
}

/** Predicted values and the variances of their errors. */
export interface Predictions {
  readonly values: Float64Array
  readonly variances: Float64Array
}

/** Strips of four targets solved together, so that what is worked on stays in the fast memory. */
const STRIPS = 16
const WIDTH = 4 * STRIPS

/**
 * Ordinary kriging with an unknown constant mean, solved through the generalised least squares mean, which is the same
 * predictor as the bordered system (Cressie, Statistics for Spatial Data, 1993, 3.4.5).
 * @throws ProblemError when the covariance is singular, as with two readings at one place and neither nugget nor error.
 */
export function krigingSystem(data: KrigingData, structures: readonly CovarianceStructure[]): KrigingSystem {
  const n = data.values.length
  const factor = dataCovariance(data, structures)
  if (n === 0 || !factorInPlace(factor, n))
    throw new ProblemError(
      'rule-of-the-trade',
      n === 0
        ? 'A map needs readings: take some first.'
        : 'Two readings stand at one place and the model gives readings no error: put them together as one spot, or state the error of the gauge.',
    )
  const solve = (b: Float64Array): Float64Array => {
    solveLower(factor, n, b)
    solveUpper(factor, n, b)
    return b
  }
  const ones = solve(new Float64Array(n).fill(1))
  const information = ones.reduce((sum, value) => sum + value, 0)
  const mean = ones.reduce((sum, weight, at) => sum + weight * (data.values[at] as number), 0) / information
  const residuals = solve(data.values.map((value) => value - mean))
  return { data, structures, n, factor, ones, residuals, mean, meanVariance: 1 / information }
}

/** Covariance of the readings in full, with nugget, error and the variance of each reading on the diagonal. */
export function dataCovariance(data: KrigingData, structures: readonly CovarianceStructure[]): Float64Array {
  const n = data.values.length
  const { places, readingVariance } = data
  const matrix = new Float64Array(n * n)
  const own = covariance(structures, 0) + errorVariance(structures)
  for (let row = 0; row < n; row += 1) {
    const x = places.x[row] as number
    const y = places.y[row] as number
    for (let column = 0; column < row; column += 1)
      matrix[row * n + column] = covariance(structures, distanceTo(places, column, x, y))
    matrix[row * n + row] = own + (readingVariance === null ? 0 : (readingVariance[row] as number))
  }
  return matrix
}

/**
 * Values of the surface at the targets and their variances. With a `nugget` structure the variance is that of a new
 * exact value at the target; `error` and the variance of readings are left out of it. `keepOn` is asked now and then.
 */
export function krige(system: KrigingSystem, targets: Places, keepOn: () => void = () => undefined): Predictions {
  const { structures, mean, meanVariance } = system
  const count = targets.x.length
  const values = new Float64Array(count)
  const variances = new Float64Array(count)
  const sill = covariance(structures, 0)
  const { x, y, explained, onesShare, residualShare, solve } = solverOf(system)
  for (let first = 0; first < count; first += WIDTH) {
    keepOn()
    const used = Math.min(WIDTH, count - first)
    x.set(targets.x.subarray(first, first + used))
    y.set(targets.y.subarray(first, first + used))
    solve(Math.ceil(used / 4))
    for (let t = 0; t < used; t += 1) {
      const missing = 1 - (onesShare[t] as number)
      values[first + t] = mean + (residualShare[t] as number)
      variances[first + t] = Math.max(0, sill - (explained[t] as number) + missing * missing * meanVariance)
    }
  }
  return { values, variances }
}

/** The system laid out for the kernel: `solve` reads x and y of so many strips of targets and fills in the products. */
function solverOf({ n, structures, data, factor, ones, residuals }: KrigingSystem) {
  const blocks = blocksOf(n)
  const rows = 4 * blocks
  const memory = new KernelMemory(
    n * n + numbersOfBlocks(n) + (rows + 5) * WIDTH + 8 * rows + structureNumbers(structures),
    14,
  )
  const { kernel } = memory
  const whole = memory.numbers(n * n)
  whole.set(factor)
  const triangle = memory.numbers(numbersOfBlocks(n)).byteOffset
  kernel.intoBlocks(whole.byteOffset, n, triangle)
  const vector = (values: Float64Array): number => {
    const place = memory.numbers(rows)
    place.set(values)
    return place.byteOffset
  }
  const model = memory.numbers(structureNumbers(structures))
  writeStructures(model, structures)
  const [readX, readY, one, residual] = [vector(data.places.x), vector(data.places.y), vector(ones), vector(residuals)]
  const [x, y] = [memory.numbers(WIDTH), memory.numbers(WIDTH)]
  const [explained, onesShare, residualShare] = [memory.numbers(WIDTH), memory.numbers(WIDTH), memory.numbers(WIDTH)]
  const columns = memory.numbers(rows * WIDTH).byteOffset
  const room = memory.numbers(4 * n).byteOffset
  const solve = (strips: number): void => {
    kernel.covarianceStrips(
      model.byteOffset,
      structures.length,
      readX,
      readY,
      n,
      rows,
      x.byteOffset,
      y.byteOffset,
      strips,
      room,
      columns,
    )
    kernel.columnProducts(columns, rows, strips, one, onesShare.byteOffset)
    kernel.columnProducts(columns, rows, strips, residual, residualShare.byteOffset)
    kernel.solveStrips(triangle, 0, blocks, columns, rows, strips)
    kernel.columnSquares(columns, rows, strips, explained.byteOffset)
  }
  return { x, y, explained, onesShare, residualShare, solve }
}
