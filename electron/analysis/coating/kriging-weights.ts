import { solveLower, solveUpper } from '../statistics/cholesky.ts'
import { covariance, distanceTo, type Places } from './covariance.ts'
import { type KrigingSystem, krigingSystem, type Predictions } from './ordinary-kriging.ts'
import { PlaceCells } from './place-cells.ts'

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

/** Kriging of each target from its nearest readings alone, each with a mean of its own. */
export function krigeNearest(system: KrigingSystem, targets: Places, neighbours: number): Predictions {
  const { data, structures, n } = system
  const count = targets.x.length
  const values = new Float64Array(count)
  const variances = new Float64Array(count)
  const cells = new PlaceCells(joined(data.places.x, targets.x), joined(data.places.y, targets.y), data.places)
  for (let place = 0; place < n; place += 1) cells.add(place)
  const near = new Int32Array(Math.min(neighbours, n))
  for (let target = 0; target < count; target += 1) {
    const x = targets.x[target] as number
    const y = targets.y[target] as number
    near.fill(-1)
    cells.nearest(n + target, near)
    const pick = (from: Float64Array): Float64Array => Float64Array.from(near, (at) => from[at] as number)
    const local = krigingSystem(
      {
        places: { x: pick(data.places.x), y: pick(data.places.y) },
        values: pick(data.values),
        readingVariance: data.readingVariance === null ? null : pick(data.readingVariance),
      },
      structures,
    )
    const { value, variance } = weighPoint(local, x, y)
    values[target] = value
    variances[target] = variance
  }
  return { values, variances }
}

function joined(one: Float64Array, other: Float64Array): Float64Array {
  const both = new Float64Array(one.length + other.length)
  both.set(one)
  both.set(other, one.length)
  return both
}
