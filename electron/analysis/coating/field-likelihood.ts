import type { KrigingSystem } from './ordinary-kriging.ts'

/**
 * Log likelihood of the readings under the model with the mean at its generalised least squares value, and the restricted
 * one, which does not count that mean as known (H. D. Patterson and R. Thompson, Biometrika 58 (1971) 545-554); the
 * restricted one is given without its constant 0.5 log(n).
 */
export function fieldLikelihood({ n, factor, data, mean, residuals, meanVariance }: KrigingSystem): {
  readonly profile: number
  readonly restricted: number
} {
  let logDeterminant = 0
  let squares = 0
  for (let at = 0; at < n; at += 1) {
    logDeterminant += 2 * Math.log(factor[at * n + at] as number)
    squares += ((data.values[at] as number) - mean) * (residuals[at] as number)
  }
  const common = -0.5 * (logDeterminant + squares)
  return {
    profile: common - 0.5 * n * Math.log(2 * Math.PI),
    restricted: common - 0.5 * (n - 1) * Math.log(2 * Math.PI) + 0.5 * Math.log(meanVariance),
  }
}
