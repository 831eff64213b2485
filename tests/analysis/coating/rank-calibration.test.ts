import { describe, expect, it } from 'vitest'
import { correlation, distanceTo } from '../../../electron/analysis/coating/covariance.ts'
import { type FieldPrior, fieldPrior } from '../../../electron/analysis/coating/field-prior.ts'
import { extentDraws } from '../../../electron/analysis/coating/field-summary.ts'
import { drawFiller } from '../../../electron/analysis/coating/latent-field.ts'
import type { FieldReading } from '../../../electron/analysis/coating/latent-sites.ts'
import { normalDraw, seededDraw } from '../../../electron/analysis/sampling/seeded-draws.ts'
import { factorInPlace } from '../../../electron/analysis/statistics/cholesky.ts'
import { gammaVariate } from '../../../electron/analysis/statistics/random-variates.ts'
import { gridNodes } from './simulated-nodes.ts'

const REPLICATES = 240
const DRAWS = 59
const BINS = 10
/** A film and a gauge so fine that the model's rule for what is paint is as good as exact. */
const film = { medianUm: 120, logDeviation: 0.003 }
const GAUGE_UM = 0.3
const SATURATION_UM = 2000

/**
 * A panel and its parameters drawn from the prior itself, read, and put to the model: the rank of the truth among the
 * model's draws is then even over all ranks (simulation-based calibration, Talts et al., arXiv:1804.06788, 2018).
 */
function rankOfTruth(
  prior: FieldPrior,
  replicate: number,
  nodeCount: number,
  model: FieldPrior = prior,
): readonly [area: number, volume: number] {
  const draw = seededDraw(`rank ${prior.shapes[0]} ${replicate}`)
  const normal = normalDraw(draw)
  const nodes = gridNodes(1000, 800, nodeCount)
  const count = nodes.x.length
  const readings = 24
  const x = Float64Array.from({ length: count + readings }, (_, at) => nodes.x[at] ?? 1000 * draw())
  const y = Float64Array.from({ length: count + readings }, (_, at) => nodes.y[at] ?? 800 * draw())
  const variance = prior.varianceScale / gammaVariate(draw, normal, prior.varianceShape)
  const range = prior.rangesMm[Math.floor(draw() * prior.rangesMm.length)] as number
  const nugget = prior.nuggets[Math.floor(draw() * prior.nuggets.length)] as number
  const mean = prior.mean + Math.sqrt(prior.meanSpread * variance) * normal()
  const field = correlatedNormals({ x, y }, range, normal).map((value) => mean + Math.sqrt(variance) * value)
  const shape = prior.shapes[0] as number
  const filler = (latent: number) => 1000 * Math.max(0, latent) ** shape
  const read = Array.from({ length: readings }, (_, at): FieldReading => {
    const latent = (field[count + at] as number) + Math.sqrt(nugget * variance) * normal()
    const thicknessUm = film.medianUm * Math.exp(film.logDeviation * normal()) + filler(latent) + GAUGE_UM * normal()
    const place = { xMm: x[count + at] as number, yMm: y[count + at] as number, gaugeUm: GAUGE_UM }
    return thicknessUm > SATURATION_UM
      ? { ...place, kind: 'more than', thicknessUm: SATURATION_UM }
      : { ...place, kind: 'value', thicknessUm }
  })
  const drawn = extentDraws(
    drawFiller(read, nodes, film, model, { draws: DRAWS, seed: `rank field ${replicate}`, keepOn: () => undefined }),
    nodes.areaMm2,
    180,
  )
  const own = extentDraws(
    {
      nodes: count,
      draws: 1,
      fillerUm: Float32Array.from(field.subarray(0, count), filler),
      nuggetVariance: Float64Array.of(0),
      shapes: Float64Array.of(shape),
    },
    nodes.areaMm2,
    180,
  )
  const rank = (values: Float64Array, truth: number): number => {
    const less = values.filter((value) => value < truth).length
    const alike = values.filter((value) => value === truth).length
    return less + Math.floor(draw() * (alike + 1))
  }
  return [rank(drawn.areaMm2, own.areaMm2[0] as number), rank(drawn.volumeMm3, own.volumeMm3[0] as number)]
}

function correlatedNormals(places: { x: Float64Array; y: Float64Array }, range: number, normal: () => number) {
  const n = places.x.length
  const factor = new Float64Array(n * n)
  for (let row = 0; row < n; row += 1)
    for (let column = 0; column <= row; column += 1)
      factor[row * n + column] =
        correlation(
          { model: 'matern 3/2', sill: 1, range },
          distanceTo(places, column, places.x[row] as number, places.y[row] as number),
        ) + (row === column ? 1e-8 : 0)
  factorInPlace(factor, n)
  const z = Float64Array.from({ length: n }, normal)
  return z.map((_, row) =>
    z.subarray(0, row + 1).reduce((sum, value, k) => sum + value * (factor[row * n + k] as number), 0),
  )
}

const chiSquare = (ranks: readonly number[]): number => {
  const counts = new Float64Array(BINS)
  for (const rank of ranks) {
    const bin = Math.floor((rank * BINS) / (DRAWS + 1))
    counts[bin] = (counts[bin] as number) + 1
  }
  const even = ranks.length / BINS
  return counts.reduce((sum, count) => sum + (count - even) ** 2 / even, 0)
}

describe('on panels drawn from the model itself, ranks of the truth are even', () => {
  it.each([0.5, 1, 2])('with filler as the latent value to the power %f', (shape) => {
    const prior = { ...fieldPrior, shapes: [shape], deepestUm: 1e9 }
    const ranks = Array.from({ length: REPLICATES }, (_, replicate) => rankOfTruth(prior, replicate, 140))
    /** 99.9 % point of chi-square with 9 degrees of freedom is 27.88. */
    expect(chiSquare(ranks.map(([area]) => area))).toBeLessThan(27.88)
    expect(chiSquare(ranks.map(([, volume]) => volume))).toBeLessThan(27.88)
  })
  it('and uneven when the model takes neighbouring places for strangers, so that the test can fail', () => {
    const truth = { ...fieldPrior, shapes: [1], deepestUm: 1e9, rangesMm: [180, 320] }
    const ranks = Array.from({ length: REPLICATES }, (_, replicate) =>
      rankOfTruth(truth, replicate, 140, { ...truth, rangesMm: [5] }),
    )
    expect(chiSquare(ranks.map(([, volume]) => volume))).toBeGreaterThan(27.88)
  })
})
