import { solveLower, solveUpper } from '../statistics/cholesky.ts'
import { covariance, distanceTo, type Places } from './covariance.ts'
import type { KrigingSystem } from './ordinary-kriging.ts'

/** One prediction with the weights of the readings; the weights add up to one. */
export interface WeighedPrediction {
  readonly value: number
  readonly variance: number
  readonly weights: Float64Array
  /** Lagrange multiplier with the sign of sum(w C) + multiplier = C to the target. */
  readonly multiplier: number
}

/** Kriging of one point with its weights (Isaaks and Srivastava, An Introduction to Applied Geostatistics, 1989, ch. 12). */
export function weighPoint(system: KrigingSystem, x: number, y: number): WeighedPrediction {
  const { structures, data, n } = system
  const toTarget = Float64Array.from({ length: n }, (_, at) =>
    covariance(structures, distanceTo(data.places, at, x, y)),
  )
  return weigh(system, toTarget, covariance(structures, 0))
}

/**
 * Mean of the surface over the nodes of a block (Isaaks and Srivastava 1989, ch. 13). `nuggetPerNode` counts a nugget as a
 * variance of each node, which then averages out; otherwise the block is one of the continuous part alone.
 */
export function weighBlock(system: KrigingSystem, nodes: Places, nuggetPerNode: boolean): WeighedPrediction {
  const { structures, data, n } = system
  const count = nodes.x.length
  const continuous = structures.filter(({ model }) => model !== 'nugget')
  const toTarget = new Float64Array(n)
  let within = 0
  for (let node = 0; node < count; node += 1) {
    const x = nodes.x[node] as number
    const y = nodes.y[node] as number
    for (let at = 0; at < n; at += 1)
      toTarget[at] = (toTarget[at] as number) + covariance(structures, distanceTo(data.places, at, x, y)) / count
    for (let other = 0; other < count; other += 1)
      within += covariance(nuggetPerNode ? structures : continuous, distanceTo(nodes, other, x, y))
  }
  return weigh(system, toTarget, within / count ** 2)
}

function weigh(system: KrigingSystem, toTarget: Float64Array, ownVariance: number): WeighedPrediction {
  const { n, factor, ones, residuals, mean, meanVariance } = system
  const weights = Float64Array.from(toTarget)
  solveLower(factor, n, weights)
  solveUpper(factor, n, weights)
  let sum = 0
  let explained = 0
  let value = mean
  for (let at = 0; at < n; at += 1) {
    sum += weights[at] as number
    explained += (weights[at] as number) * (toTarget[at] as number)
    value += (toTarget[at] as number) * (residuals[at] as number)
  }
  const missing = (1 - sum) * meanVariance
  for (let at = 0; at < n; at += 1) weights[at] = (weights[at] as number) + missing * (ones[at] as number)
  return { value, variance: ownVariance - explained + (1 - sum) * missing, weights, multiplier: -missing }
}
