import { ProblemError } from '../../../shared-types/problem-error.ts'
import { blocksOf, diagonalInBlocks, KernelMemory, numbersOfBlocks } from '../kernel/kernel-memory.ts'
import { leastPivot } from '../statistics/cholesky.ts'
import { correlation, distanceTo, type Places } from './covariance.ts'
import type { FieldPrior } from './field-prior.ts'

/** What keeps a correlation matrix with two readings at one place factorable, as a share of the variance. */
const JITTER = 1e-8
/** Vectors a sampler takes from the grid's memory. */
export const VECTORS_OF_A_SAMPLER = 2

/** All that depends on one range and one nugget alone, for the readings' places. Variances are shares of s2. */
export interface GridPoint {
  readonly range: number
  readonly nugget: number
  /** Inverse of K = R + nugget + kappa 11' in full. */
  readonly precision: Float64Array
  readonly logDeterminant: number
}

/** The grid of ranges and nuggets, and per range the lower factor of the correlation R alone, all in one kernel's memory. */
export interface LatentGrid {
  readonly n: number
  readonly points: readonly GridPoint[]
  readonly correlationFactors: readonly Float64Array[]
  /** Has room left for a sampler of each shape. */
  readonly memory: KernelMemory
}

/** Factors for every range and nugget of the prior; about n^3 operations each. */
export function latentGrid(places: Places, prior: FieldPrior): LatentGrid {
  return gridOfCorrelations(
    prior.rangesMm.map((rangeMm) => correlationMatrix(places, rangeMm)),
    places.x.length,
    prior,
  )
}

/** The grid from the correlations of each range, n rows of which the lower half is read. */
export function gridOfCorrelations(correlations: readonly Float64Array[], n: number, prior: FieldPrior): LatentGrid {
  const { nuggets, meanSpread, shapes } = prior
  const rows = 4 * blocksOf(n)
  const ranges = correlations.length
  const vectors = VECTORS_OF_A_SAMPLER * shapes.length
  const matrices = 1 + ranges * (1 + nuggets.length)
  const memory = new KernelMemory(
    matrices * n * n + numbersOfBlocks(n) + rows * rows + 16 + vectors * n,
    matrices + vectors + 2,
  )
  const { kernel } = memory
  const whole = memory.numbers(n * n)
  const blocks = memory.numbers(numbersOfBlocks(n))
  const columns = memory.numbers(rows * rows + 16)
  /** Leaves the factor in `blocks` and answers the logarithm of the determinant. */
  const factored = (matrix: Float64Array, nugget: number, spread: number): number => {
    for (let at = 0; at < n * n; at += 1) whole[at] = (matrix[at] as number) + spread
    for (let at = 0; at < n; at += 1) whole[at * n + at] = (whole[at * n + at] as number) + nugget
    kernel.intoBlocks(whole.byteOffset, n, blocks.byteOffset)
    if (kernel.factorBlocks(blocks.byteOffset, blocksOf(n), leastPivot(whole, n)) === 0)
      throw new ProblemError(
        'rule-of-the-trade',
        'Too many readings stand at one place: put them together as one spot.',
      )
    let logDeterminant = 0
    for (let at = 0; at < n; at += 1) logDeterminant += 2 * Math.log(blocks[diagonalInBlocks(at)] as number)
    return logDeterminant
  }
  return {
    n,
    memory,
    correlationFactors: correlations.map((matrix) => {
      factored(matrix, JITTER, 0)
      const factor = memory.numbers(n * n)
      kernel.fromBlocks(blocks.byteOffset, n, factor.byteOffset)
      return factor
    }),
    points: correlations.flatMap((matrix, range) =>
      nuggets.map((nugget) => {
        const logDeterminant = factored(matrix, nugget, meanSpread)
        const precision = memory.numbers(n * n)
        kernel.inverseFromBlocks(blocks.byteOffset, n, columns.byteOffset, precision.byteOffset)
        return { range, nugget, precision, logDeterminant }
      }),
    ),
  }
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
