import { bothExceed } from '../statistics/bivariate-normal.ts'
import { solveLowerTogether } from '../statistics/cholesky.ts'
import { normalProbability } from '../statistics/normal-distribution.ts'
import { covariance, distanceTo, type Places } from './covariance.ts'
import { type KrigingSystem, krige } from './ordinary-kriging.ts'

/**
 * Share of the nodes at which the surface exceeds a limit: its expected value and standard deviation, exact under the
 * joint normal distribution of the kriging errors, as sums of bivariate normal probabilities. Nodes that coincide with
 * each other are not meant; the work grows with the square of the number of nodes.
 */
export function exceedingShare(
  system: KrigingSystem,
  nodes: Places,
  limit: number,
): { mean: number; deviation: number } {
  const count = nodes.x.length
  const { values } = krige(system, nodes)
  const joint = jointErrors(system, nodes)
  const limits = values.map((value, at) => (limit - value) / Math.sqrt(joint[at * count + at] as number))
  const chances = limits.map((at) => normalProbability(-at))
  let mean = 0
  let variance = 0
  for (let one = 0; one < count; one += 1) {
    const p = chances[one] as number
    mean += p / count
    variance += p * (1 - p)
    for (let other = 0; other < one; other += 1) {
      const scale = Math.sqrt((joint[one * count + one] as number) * (joint[other * count + other] as number))
      const both = bothExceed(
        limits[one] as number,
        limits[other] as number,
        (joint[one * count + other] as number) / scale,
      )
      variance += 2 * (both - p * (chances[other] as number))
    }
  }
  return { mean, deviation: Math.sqrt(Math.max(0, variance)) / count }
}

/** Covariance of the kriging errors of all pairs of nodes. */
function jointErrors(system: KrigingSystem, nodes: Places): Float64Array {
  const { n, data, structures, factor, ones, meanVariance } = system
  const count = nodes.x.length
  const columns = new Float64Array(n * count)
  const missing = new Float64Array(count).fill(1)
  for (let row = 0; row < n; row += 1)
    for (let node = 0; node < count; node += 1) {
      const value = covariance(
        structures,
        distanceTo(nodes, node, data.places.x[row] as number, data.places.y[row] as number),
      )
      columns[row * count + node] = value
      missing[node] = (missing[node] as number) - value * (ones[row] as number)
    }
  solveLowerTogether(factor, n, columns, count)
  const joint = new Float64Array(count * count)
  for (let one = 0; one < count; one += 1)
    for (let other = 0; other <= one; other += 1) {
      let value = covariance(structures, distanceTo(nodes, other, nodes.x[one] as number, nodes.y[one] as number))
      for (let row = 0; row < n; row += 1)
        value -= (columns[row * count + one] as number) * (columns[row * count + other] as number)
      value += (missing[one] as number) * (missing[other] as number) * meanVariance
      joint[one * count + other] = value
      joint[other * count + one] = value
    }
  return joint
}
