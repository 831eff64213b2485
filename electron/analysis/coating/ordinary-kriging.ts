import { ProblemError } from '../../../shared-types/problem-error.ts'
import { factorInPlace, solveLower, solveLowerTogether, solveUpper } from '../statistics/cholesky.ts'
import { type CovarianceStructure, covariance, distanceTo, errorVariance, type Places } from './covariance.ts'

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

/** Right-hand sides solved together. */
const WIDTH = 64

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
  const { n, structures, data, ones, residuals, mean, meanVariance } = system
  const count = targets.x.length
  const values = new Float64Array(count)
  const variances = new Float64Array(count)
  const columns = new Float64Array(n * WIDTH)
  const sill = covariance(structures, 0)
  const explained = new Float64Array(WIDTH)
  const onesShare = new Float64Array(WIDTH)
  for (let first = 0; first < count; first += WIDTH) {
    keepOn()
    const used = Math.min(WIDTH, count - first)
    explained.fill(0)
    onesShare.fill(0)
    for (let row = 0; row < n; row += 1) {
      const x = data.places.x[row] as number
      const y = data.places.y[row] as number
      for (let t = 0; t < used; t += 1) {
        const value = covariance(structures, distanceTo(targets, first + t, x, y))
        columns[row * WIDTH + t] = value
        values[first + t] = (values[first + t] as number) + value * (residuals[row] as number)
        onesShare[t] = (onesShare[t] as number) + value * (ones[row] as number)
      }
    }
    solveLowerTogether(system.factor, n, columns, WIDTH, used)
    for (let row = 0; row < n; row += 1)
      for (let t = 0; t < used; t += 1)
        explained[t] = (explained[t] as number) + (columns[row * WIDTH + t] as number) ** 2
    for (let t = 0; t < used; t += 1) {
      const missing = 1 - (onesShare[t] as number)
      values[first + t] = (values[first + t] as number) + mean
      variances[first + t] = Math.max(0, sill - (explained[t] as number) + missing * missing * meanVariance)
    }
  }
  return { values, variances }
}
