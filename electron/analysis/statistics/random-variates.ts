import type { Draw } from '../sampling/seeded-draws.ts'
import { normalProbability } from './normal-distribution.ts'
import { normalQuantile } from './quantiles.ts'

/** A standard normal number known to lie between two bounds, either of which may be infinite, by inversion. */
export function boundedNormal(draw: Draw, low: number, high: number): number {
  if (low > 0) return -boundedNormal(draw, -high, -low)
  const below = low === Number.NEGATIVE_INFINITY ? 0 : normalProbability(low)
  const upTo = high === Number.POSITIVE_INFINITY ? 1 : normalProbability(high)
  const p = below + (1 - draw()) * (upTo - below)
  if (!(p > 1e-300)) return high - -Math.log(1 - draw()) / Math.max(1, -high)
  return Math.min(high, Math.max(low, p >= 1 ? high : normalQuantile(p)))
}

/** A gamma number of shape at least one and scale one (Marsaglia and Tsang, ACM Trans. Math. Softw. 26 (2000) 363-372). */
export function gammaVariate(draw: Draw, normal: Draw, shape: number): number {
  const d = shape - 1 / 3
  const c = 1 / Math.sqrt(9 * d)
  for (;;) {
    const x = normal()
    const v = (1 + c * x) ** 3
    if (v > 0 && Math.log(1 - draw()) < 0.5 * x * x + d * (1 - v + Math.log(v))) return d * v
  }
}
