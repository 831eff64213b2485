import { KernelMemory } from '../kernel/kernel-memory.ts'
import type { QuickNormals } from '../statistics/quick-normals.ts'
import type { Places } from './covariance.ts'
import type { FieldPrior } from './field-prior.ts'
import type { SiteDraw } from './latent-sampler.ts'
import type { NodeNeighbours } from './node-neighbours.ts'
import { nodeWeights, roomOfWeights } from './node-weights.ts'

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
  /** Draws are worked on in pairs, so that a row may run over by one. */
  const stride = draws + 2
  const room = roomOfWeights(n, count, neighbours.perNode)
  const memory = new KernelMemory(room.numbers + (n + count + 1) * Math.ceil(stride / 2) + stride, room.takings + 2)
  const field = memory.singles((n + count) * stride)
  const sum = memory.numbers(stride)
  sorted.forEach(({ surface }, d) => {
    for (let site = 0; site < n; site += 1) field[site * stride + d] = surface[site] as number
  })
  const { weights, before, deviations, forRange } = nodeWeights(memory, readings, nodes, neighbours)
  const { perNode } = neighbours
  for (let from = 0; from < draws; ) {
    const range = (sorted[from] as ShapedDraw).range
    let to = from
    while (to < draws && sorted[to]?.range === range) to += 1
    forRange(prior.rangesMm[range] as number)
    for (let at = 0; at < count; at += 1) {
      if (at % 256 === 0) keepOn()
      normals.fill(sum, to - from)
      memory.kernel.drawNode(
        field.byteOffset + 4 * from,
        stride,
        to - from,
        before.byteOffset + 4 * at * perNode,
        weights.byteOffset + 8 * at * perNode,
        perNode,
        deviations[at] as number,
        sum.byteOffset,
        n + at,
      )
    }
    from = to
  }
  return {
    nodes: count,
    draws,
    fillerUm: toFiller(field.subarray(n * stride), stride, neighbours, sorted, prior),
    nuggetVariance: Float64Array.from(sorted, ({ nugget, deviation }) => nugget * deviation ** 2),
    shapes: Float64Array.from(sorted, ({ shape }) => shape),
  }
}

/** From the standardised field in simulated order to filler in the order the nodes were given. */
function toFiller(
  field: Float32Array,
  stride: number,
  { order }: NodeNeighbours,
  sorted: readonly ShapedDraw[],
  { deepestUm }: FieldPrior,
): Float32Array {
  const draws = sorted.length
  const filler = new Float32Array(order.length * draws)
  const means = Float64Array.from(sorted, ({ mean }) => mean)
  const deviations = Float64Array.from(sorted, ({ deviation }) => deviation)
  const shapes = Float64Array.from(sorted, ({ shape }) => shape)
  for (let at = 0; at < order.length; at += 1) {
    const from = at * stride
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
