import type { QuickNormals } from '../statistics/quick-normals.ts'
import type { Places } from './covariance.ts'
import type { FieldPrior } from './field-prior.ts'
import type { SiteDraw } from './latent-sampler.ts'
import type { NodeNeighbours } from './node-neighbours.ts'
import { type NodeWeights, nodeWeights } from './node-weights.ts'

/** A draw of the sites, with the power its filler is read with. */
export interface ShapedDraw extends SiteDraw {
  readonly shape: number
}

/** Filler at every node in every draw, um: `draws` numbers of the first node, then of the next. */
export interface FillerDraws {
  readonly nodes: number
  readonly draws: number
  readonly fillerUm: Float32Array
  /** Variance a new reading would add to the latent value, per draw, and the draw's power. */
  readonly nuggetVariance: Float64Array
  readonly shapes: Float64Array
}

/**
 * Filler at the nodes given the draws at the readings: one node after the other from its nearest earlier places, all draws
 * of one range together. `keepOn` is asked now and then.
 */
export function fillerDraws(
  readings: Places,
  nodes: Places,
  neighbours: NodeNeighbours,
  siteDraws: readonly ShapedDraw[],
  prior: FieldPrior,
  normals: QuickNormals,
  keepOn: () => void,
): FillerDraws {
  const sorted = siteDraws.toSorted((one, other) => one.range - other.range)
  const n = readings.x.length
  const count = nodes.x.length
  const draws = sorted.length
  const field = new Float32Array((n + count) * draws)
  sorted.forEach(({ surface }, d) => {
    for (let site = 0; site < n; site += 1) field[site * draws + d] = surface[site] as number
  })
  for (let from = 0; from < draws; ) {
    const range = (sorted[from] as ShapedDraw).range
    let to = from
    while (to < draws && sorted[to]?.range === range) to += 1
    const weights = nodeWeights(readings, nodes, neighbours, prior.rangesMm[range] as number)
    simulate(field, n, draws, from, to, neighbours, weights, normals, keepOn)
    from = to
  }
  return {
    nodes: count,
    draws,
    fillerUm: toFiller(field, n, draws, neighbours, sorted, prior),
    nuggetVariance: Float64Array.from(sorted, ({ nugget, deviation }) => nugget * deviation ** 2),
    shapes: Float64Array.from(sorted, ({ shape }) => shape),
  }
}

/** Fills the rows of the nodes, in the order they are simulated, for the draws from `from` up to `to`. */
function simulate(
  field: Float32Array,
  n: number,
  draws: number,
  from: number,
  to: number,
  { order, perNode, before }: NodeNeighbours,
  { weights, deviations }: NodeWeights,
  normals: QuickNormals,
  keepOn: () => void,
): void {
  const sum = new Float64Array(to - from)
  const width = to - from
  for (let at = 0; at < order.length; at += 1) {
    if (at % 256 === 0) keepOn()
    const deviation = deviations[at] as number
    normals.fill(sum, width)
    for (let d = 0; d < width; d += 1) sum[d] = deviation * (sum[d] as number)
    const row = at * perNode
    for (let slot = row; slot < row + perNode; slot += 4) {
      const a = weights[slot] as number
      const b = weights[slot + 1] as number
      const c = weights[slot + 2] as number
      const e = weights[slot + 3] as number
      const first = Math.max(0, before[slot] as number) * draws + from
      const second = Math.max(0, before[slot + 1] as number) * draws + from
      const third = Math.max(0, before[slot + 2] as number) * draws + from
      const fourth = Math.max(0, before[slot + 3] as number) * draws + from
      for (let d = 0; d < width; d += 1)
        sum[d] =
          (sum[d] as number) +
          a * (field[first + d] as number) +
          b * (field[second + d] as number) +
          c * (field[third + d] as number) +
          e * (field[fourth + d] as number)
    }
    const own = (n + at) * draws + from
    for (let d = 0; d < width; d += 1) field[own + d] = sum[d] as number
  }
}

/** From the standardised field in simulated order to filler in the order the nodes were given. */
function toFiller(
  field: Float32Array,
  n: number,
  draws: number,
  { order }: NodeNeighbours,
  sorted: readonly ShapedDraw[],
  { deepestUm }: FieldPrior,
): Float32Array {
  const filler = new Float32Array(order.length * draws)
  const means = Float64Array.from(sorted, ({ mean }) => mean)
  const deviations = Float64Array.from(sorted, ({ deviation }) => deviation)
  const shapes = Float64Array.from(sorted, ({ shape }) => shape)
  for (let at = 0; at < order.length; at += 1) {
    const from = (n + at) * draws
    const to = (order[at] as number) * draws
    for (let d = 0; d < draws; d += 1) {
      const latent = (means[d] as number) + (deviations[d] as number) * (field[from + d] as number)
      if (latent <= 0) continue
      const shape = shapes[d] as number
      const depth =
        shape === 1 ? latent : shape === 2 ? latent * latent : shape === 0.5 ? Math.sqrt(latent) : latent ** shape
      filler[to + d] = Math.min(deepestUm, 1000 * depth)
    }
  }
  return filler
}
