import { inverseFromLower } from '../statistics/cholesky.ts'
import { normalProbability } from '../statistics/normal-distribution.ts'
import { HALF_OF_NINETY } from '../statistics/quantiles.ts'
import type { KrigingSystem, Predictions } from './ordinary-kriging.ts'

/**
 * Each reading predicted from all others, with the mean estimated anew and the model kept, without a solution per reading:
 * residual and variance come from the inverse of the bordered system (O. Dubrule, Mathematical Geology 15 (1983) 687-699).
 * The variance is that of the left-out reading itself, nugget and error included.
 */
export function leaveOneOut(system: KrigingSystem): Predictions {
  const { n, factor, ones, meanVariance, data, residuals } = system
  const inverse = inverseFromLower(factor, n)
  const values = new Float64Array(n)
  const variances = new Float64Array(n)
  for (let at = 0; at < n; at += 1) {
    const precision = (inverse[at * n + at] as number) - (ones[at] as number) ** 2 * meanVariance
    variances[at] = 1 / precision
    values[at] = (data.values[at] as number) - (residuals[at] as number) / precision
  }
  return { values, variances }
}

/** How well readings left out were predicted: errors, and errors in units of their own standard deviation. */
export function crossValidation(observed: Float64Array, predicted: Predictions) {
  const n = observed.length
  let sum = 0
  let squares = 0
  let ratio = 0
  let standardised = 0
  let inside = 0
  for (let at = 0; at < n; at += 1) {
    const error = (observed[at] as number) - (predicted.values[at] as number)
    const z = error / Math.sqrt(predicted.variances[at] as number)
    sum += error
    squares += error * error
    ratio += z * z
    standardised += z
    if (Math.abs(z) <= HALF_OF_NINETY) inside += 1
  }
  const meanZ = standardised / n
  return {
    meanError: sum / n,
    rootMeanSquare: Math.sqrt(squares / n),
    meanSquaredZ: ratio / n,
    meanZ,
    deviationZ: Math.sqrt((ratio - n * meanZ * meanZ) / (n - 1)),
    /** Share of readings inside the interval of nominally 90 %. */
    insideNinety: inside / n,
  }
}

/** Chance that the surface exceeds a limit at each target, from a normal distribution of the error. */
export function exceedance({ values, variances }: Predictions, limit: number): Float64Array {
  return values.map((value, at) => {
    const deviation = Math.sqrt(variances[at] as number)
    if (deviation === 0) return value > limit ? 1 : 0
    return normalProbability((value - limit) / deviation)
  })
}
