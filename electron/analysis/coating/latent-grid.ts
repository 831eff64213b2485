import { ProblemError } from '../../../shared-types/problem-error.ts'
import { factorInPlace, inverseFromLower, inverseOfLower } from '../statistics/cholesky.ts'
import { dotProduct } from '../statistics/dot-product.ts'
import { correlation, distanceTo, type Places } from './covariance.ts'
import type { FieldPrior } from './field-prior.ts'

/** What keeps a correlation matrix with two readings at one place factorable, as a share of the variance. */
const JITTER = 1e-8

/** All that depends on one range and one nugget alone, for the readings' places. Variances are shares of s2. */
export interface GridPoint {
  readonly range: number
  readonly nugget: number
  /** Inverse of the lower factor of K = R + nugget + kappa 11', and K^-1 in full. */
  readonly inverseFactor: Float64Array
  readonly precision: Float64Array
  readonly logDeterminant: number
}

/** The grid of ranges and nuggets, and per range the lower factor of the correlation R alone. */
export interface LatentGrid {
  readonly n: number
  readonly points: readonly GridPoint[]
  readonly rangesMm: readonly number[]
  readonly correlationFactors: readonly Float64Array[]
}

/** Factors for every range and nugget of the prior; about n^3 operations each. */
export function latentGrid(places: Places, prior: FieldPrior): LatentGrid {
  const n = places.x.length
  const correlations = prior.rangesMm.map((rangeMm) => correlationMatrix(places, rangeMm))
  return {
    n,
    rangesMm: prior.rangesMm,
    correlationFactors: correlations.map((matrix) => factored(matrix, n, JITTER, 0).factor),
    points: correlations.flatMap((matrix, range) =>
      prior.nuggets.map((nugget) => gridPoint(matrix, n, range, nugget, prior.meanSpread)),
    ),
  }
}

/** One point of the grid from the correlations of its range, of which the lower half is read. */
export function gridPoint(
  correlations: Float64Array,
  n: number,
  range: number,
  nugget: number,
  meanSpread: number,
): GridPoint {
  const { factor, logDeterminant } = factored(correlations, n, nugget, meanSpread)
  const inverseFactor = inverseOfLower(factor, n)
  return { range, nugget, inverseFactor, precision: inverseFromLower(inverseFactor, n), logDeterminant }
}

function correlationMatrix(places: Places, range: number): Float64Array {
  const n = places.x.length
  const matrix = new Float64Array(n * n)
  for (let row = 0; row < n; row += 1)
    for (let column = 0; column <= row; column += 1)
      matrix[row * n + column] = correlation(
        { model: 'matern 3/2', sill: 1, range },
        distanceTo(places, column, places.x[row] as number, places.y[row] as number),
      )
  return matrix
}

function factored(correlations: Float64Array, n: number, nugget: number, meanSpread: number) {
  const factor = correlations.map((value) => value + meanSpread)
  for (let at = 0; at < n; at += 1) factor[at * n + at] = (factor[at * n + at] as number) + nugget
  if (!factorInPlace(factor, n))
    throw new ProblemError('rule-of-the-trade', 'Too many readings stand at one place: put them together as one spot.')
  let logDeterminant = 0
  for (let at = 0; at < n; at += 1) logDeterminant += 2 * Math.log(factor[at * n + at] as number)
  return { factor, logDeterminant }
}

/** w' K^-1 w at one point of the grid. */
export function quadraticForm({ inverseFactor }: GridPoint, n: number, w: Float64Array): number {
  let sum = 0
  for (let row = 0; row < n; row += 1) {
    sum += dotProduct(inverseFactor, row * n, w, 0, row + 1) ** 2
  }
  return sum
}
