import type { Univariate } from '../../../shared-types/computations.ts'

/**
 * Mean, median, sample standard deviation and standard uncertainty of the mean, of at least one finite number.
 * Corrected two-pass sums (Chan, Golub and LeVeque, The American Statistician 37, 1983): the one-pass formula
 * loses every digit where the spread is small beside the mean.
 */
export function univariate(values: readonly number[]): Univariate {
  const n = values.length
  if (n === 0) throw new RangeError('A summary needs at least one value.')
  const rough = values.reduce((sum, value) => sum + value, 0) / n
  const mean = rough + values.reduce((sum, value) => sum + (value - rough), 0) / n
  const sorted = values.toSorted((one, other) => one - other)
  return {
    n,
    mean,
    median: medianOf(sorted),
    ...spread(values, mean),
    min: sorted[0] ?? mean,
    max: sorted.at(-1) ?? mean,
  }
}

function spread(values: readonly number[], mean: number) {
  const n = values.length
  if (n < 2) return { standardDeviation: null, standardUncertainty: null }
  let squares = 0
  let drift = 0
  for (const value of values) {
    squares += (value - mean) ** 2
    drift += value - mean
  }
  const standardDeviation = Math.sqrt(Math.max(0, squares - drift ** 2 / n) / (n - 1))
  return { standardDeviation, standardUncertainty: standardDeviation / Math.sqrt(n) }
}

/** Median of numbers in rising order; NaN of none. */
export function medianOf(sorted: readonly number[]): number {
  const middle = Math.floor(sorted.length / 2)
  const upper = sorted[middle] ?? Number.NaN
  if (sorted.length % 2 === 1) return upper
  const lower = sorted[middle - 1] ?? Number.NaN
  return lower + (upper - lower) / 2
}
