import { logGamma } from './beta-distribution.ts'

/** Regularised lower incomplete gamma function P(a, x), by its series (Abramowitz and Stegun, 6.5.29). */
function lowerGamma(a: number, x: number): number {
  if (x <= 0) return 0
  let term = 1 / a
  let sum = term
  for (let n = 1; n < 100_000; n += 1) {
    term *= x / (a + n)
    sum += term
    if (term < sum * 1e-17) break
  }
  return Math.min(1, sum * Math.exp(a * Math.log(x) - x - logGamma(a)))
}

/** Quantile of chi-square with a positive number of degrees of freedom, by halving. */
export function chiSquareQuantile(p: number, degreesOfFreedom: number): number {
  const a = degreesOfFreedom / 2
  let low = 0
  let high = 1
  while (lowerGamma(a, high / 2) < p) high *= 2
  for (let step = 0; step < 100; step += 1) {
    const middle = (low + high) / 2
    if (lowerGamma(a, middle / 2) < p) low = middle
    else high = middle
  }
  return (low + high) / 2
}
