import { describe, expect, it } from 'vitest'
import { correlation, distanceTo } from '../../../electron/analysis/coating/covariance.ts'
import { fieldPrior } from '../../../electron/analysis/coating/field-prior.ts'
import { extentDraws } from '../../../electron/analysis/coating/field-summary.ts'
import { drawFiller } from '../../../electron/analysis/coating/latent-field.ts'
import { gridOfCorrelations } from '../../../electron/analysis/coating/latent-grid.ts'
import { LatentSampler } from '../../../electron/analysis/coating/latent-sampler.ts'
import { nodeNeighbours } from '../../../electron/analysis/coating/node-neighbours.ts'
import { nodeWeights, roomOfWeights } from '../../../electron/analysis/coating/node-weights.ts'
import { KernelMemory } from '../../../electron/analysis/kernel/kernel-memory.ts'
import { normalDraw, seededDraw } from '../../../electron/analysis/sampling/seeded-draws.ts'
import { factorInPlace, solveLower, solveUpper } from '../../../electron/analysis/statistics/cholesky.ts'
import { normalProbability } from '../../../electron/analysis/statistics/normal-distribution.ts'
import { QuickNormals } from '../../../electron/analysis/statistics/quick-normals.ts'
import { boundedNormal, gammaVariate } from '../../../electron/analysis/statistics/random-variates.ts'
import { logarithms, reference } from './reference-cases.ts'
import { gridNodes } from './simulated-nodes.ts'

const mean = (values: ArrayLike<number>): number =>
  Array.from(values).reduce((sum, value) => sum + value, 0) / values.length

describe('random numbers', () => {
  it('in quick succession are normal: moments to the fourth, tails, and the share in every twentieth', () => {
    const normal = new QuickNormals(seededDraw('normal')).one
    const values = Float64Array.from({ length: 400_000 }, normal)
    expect(mean(values)).toBeCloseTo(0, 2)
    expect(mean(values.map((x) => x * x))).toBeCloseTo(1, 1.9)
    expect(Math.abs(mean(values.map((x) => x ** 4)) - 3)).toBeLessThan(0.06)
    const beyond = values.filter((x) => x > 3.6).length / values.length
    expect(beyond / normalProbability(-3.6)).toBeGreaterThan(0.6)
    expect(beyond / normalProbability(-3.6)).toBeLessThan(1.4)
    const counts = new Float64Array(20)
    for (const x of values) {
      const part = Math.min(19, Math.floor(20 * normalProbability(x)))
      counts[part] = (counts[part] as number) + 1
    }
    const chiSquare = counts.reduce((sum, count) => sum + (count - 20_000) ** 2 / 20_000, 0)
    /** 99.9 % point of chi-square with 19 degrees of freedom is 43.82. */
    expect(chiSquare).toBeLessThan(43.82)
  })
  it('between bounds have the mean of the truncated normal distribution, far out in the tail as well', () => {
    const draw = seededDraw('bounded')
    const many = (low: number, high: number) => Array.from({ length: 40_000 }, () => boundedNormal(draw, low, high))
    const density = (x: number) => Math.exp(-x * x * 0.5) / Math.sqrt(2 * Math.PI)
    expect(mean(many(1, Number.POSITIVE_INFINITY))).toBeCloseTo(density(1) / normalProbability(-1), 2)
    expect(mean(many(Number.NEGATIVE_INFINITY, -1))).toBeCloseTo(-density(1) / normalProbability(-1), 2)
    const far = many(12, Number.POSITIVE_INFINITY)
    expect(Math.min(...far)).toBeGreaterThanOrEqual(12)
    expect(mean(far)).toBeCloseTo(12.0822, 2)
    expect(Math.min(...many(60, Number.POSITIVE_INFINITY))).toBeGreaterThanOrEqual(60)
    expect(Math.max(...many(-0.2, 0.3))).toBeLessThanOrEqual(0.3)
  })
  it('of a gamma distribution have its mean and variance', () => {
    const draw = seededDraw('gamma')
    const values = Float64Array.from({ length: 60_000 }, () => gammaVariate(draw, normalDraw(draw), 3.5))
    expect(Math.abs(mean(values) - 3.5)).toBeLessThan(0.04)
    expect(Math.abs(mean(values.map((value) => (value - 3.5) ** 2)) - 3.5)).toBeLessThan(0.15)
  })
})

/** Two of thirty readings known only to exceed a limit: exact posterior by trivariate normal probabilities and quadrature. */
describe('censored readings', () => {
  const { points_index0, censored_index0, limit_transformed, results } = reference.censored
  const at = points_index0
  const places = {
    x: Float64Array.from(at, (point) => logarithms.places.x[point] as number),
    y: Float64Array.from(at, (point) => logarithms.places.y[point] as number),
  }
  const n = at.length
  const censored = at.map((point) => censored_index0.includes(point))
  const spherical = (distance: number) => correlation({ model: 'spherical', sill: 1, range: 897 }, distance)
  const correlations = Float64Array.from({ length: n * n }, (_, cell) =>
    spherical(
      distanceTo(places, cell % n, places.x[Math.floor(cell / n)] as number, places.y[Math.floor(cell / n)] as number),
    ),
  )
  const sill = 0.59
  const nugget = 0.05 / sill
  /** A mean free to go anywhere and a variance held at the sill: the reference knows the model and not the mean. */
  const prior = {
    ...fieldPrior,
    mean: 6,
    meanSpread: 1e4,
    varianceShape: 1e9,
    varianceScale: 1e9 * sill,
    rangesMm: [897],
    nuggets: [nugget],
  }
  const factor = correlations.map((value, cell) => value + (cell % n === Math.floor(cell / n) ? 1e-9 : 0))
  factorInPlace(factor, n)
  const grid = gridOfCorrelations([correlations], n, prior)
  const draw = seededDraw('censored')
  const sampler = new LatentSampler(
    grid,
    {
      places,
      low: Float64Array.from(censored, (is) => (is ? limit_transformed : Number.NEGATIVE_INFINITY)),
      high: new Float64Array(n).fill(Number.POSITIVE_INFINITY),
      value: Float64Array.from(at, (point) => logarithms.values[point] as number),
      variance: Float64Array.from(censored, (is) => (is ? 0 : 1e-12)),
    },
    prior,
    draw,
    new QuickNormals(draw).one,
  )
  const taken = sampler.take(20_000, () => undefined)
  it.each(results)('predict target $target0 as exact quadrature does', (expected) => {
    const [x, y] = reference.targets[expected.target0] as [number, number]
    const weights = Float64Array.from({ length: n }, (_, site) => spherical(distanceTo(places, site, x, y)))
    const side = weights.slice()
    solveLower(factor, n, weights)
    solveUpper(factor, n, weights)
    const explained = weights.reduce((sum, weight, site) => sum + weight * (side[site] as number), 0)
    const left = sill * (1 - explained + nugget)
    const centres = Float64Array.from(
      taken,
      (one) =>
        one.mean +
        one.deviation * weights.reduce((sum, weight, site) => sum + weight * (one.surface[site] as number), 0),
    )
    const middle = mean(centres)
    const spread = mean(centres.map((centre) => (centre - middle) ** 2)) + left
    const threshold = Math.log(reference.exceedance.threshold_raw)
    const chance = mean(centres.map((centre) => normalProbability((centre - threshold) / Math.sqrt(left))))
    expect(Math.abs(middle - expected.post_mean)).toBeLessThan(0.015)
    expect(Math.abs(spread / expected.post_var - 1)).toBeLessThan(0.03)
    expect(Math.abs(chance - expected.p_exceed)).toBeLessThan(0.005)
  })
})

describe('the field between readings', () => {
  it('has the Matern correlation when no reading stands near: nodes simulated one after the other', () => {
    const nodes = gridNodes(600, 600, 400)
    const readings = { x: Float64Array.of(-1e6), y: Float64Array.of(-1e6) }
    const neighbours = nodeNeighbours(readings, nodes, 12)
    const room = roomOfWeights(1, nodes.x.length, 12)
    const memory = new KernelMemory(room.numbers, room.takings)
    const { weights, deviations, forRange } = nodeWeights(memory, readings, nodes, neighbours)
    forRange(100)
    const normal = new QuickNormals(seededDraw('chain')).one
    const draws = 3000
    const count = nodes.x.length
    const values = new Float64Array(count)
    const pairs = [
      [0, 1],
      [0, 45],
      [100, 105],
      [5, 395],
      [210, 211],
    ] as const
    const sums = pairs.map(() => 0)
    for (let d = 0; d < draws; d += 1) {
      const inOrder = new Float64Array(count)
      for (let at = 0; at < count; at += 1) {
        let value = (deviations[at] as number) * normal()
        for (let slot = 0; slot < 12; slot += 1) {
          const place = neighbours.before[at * 12 + slot] as number
          if (place >= 1) value += (weights[at * 12 + slot] as number) * (inOrder[place - 1] as number)
        }
        inOrder[at] = value
        values[neighbours.order[at] as number] = value
      }
      pairs.forEach(([one, other], at) => {
        sums[at] = (sums[at] as number) + ((values[one] as number) * (values[other] as number)) / draws
      })
    }
    pairs.forEach(([one, other], at) => {
      const distance = distanceTo(nodes, one, nodes.x[other] as number, nodes.y[other] as number)
      const expected = correlation({ model: 'matern 3/2', sill: 1, range: 100 }, distance)
      expect(Math.abs((sums[at] as number) - expected)).toBeLessThan(0.08)
    })
  })
  it('is the same again from the same seed and another from another', () => {
    const nodes = gridNodes(1000, 800, 200)
    const readings = [
      { xMm: 200, yMm: 200, kind: 'value' as const, thicknessUm: 120, gaugeUm: 3 },
      { xMm: 600, yMm: 400, kind: 'more than' as const, thicknessUm: 2000, gaugeUm: 31 },
    ]
    const run = (seed: string) =>
      mean(
        extentDraws(
          drawFiller(readings, nodes, { medianUm: 120, logDeviation: 0.1 }, fieldPrior, {
            draws: 90,
            seed,
            keepOn: () => undefined,
          }),
          nodes.areaMm2,
          180,
        ).volumeMm3,
      )
    expect(run('one')).toBe(run('one'))
    expect(run('one')).not.toBe(run('other'))
  })
})

describe('nearest earlier places', () => {
  it('are those that comparing with every place finds, with readings outside the box as well', () => {
    const draw = seededDraw('cells')
    const nodes = {
      x: Float64Array.from({ length: 400 }, () => 900 * draw()),
      y: Float64Array.from({ length: 400 }, () => 500 * draw()),
    }
    const readings = {
      x: Float64Array.from({ length: 30 }, () => 1300 * draw() - 200),
      y: Float64Array.from({ length: 30 }, () => 900 * draw() - 200),
    }
    const { order, before } = nodeNeighbours(readings, nodes, 12)
    const place = (at: number) =>
      at < 30
        ? ([readings.x[at] as number, readings.y[at] as number] as const)
        : ([nodes.x[order[at - 30] as number] as number, nodes.y[order[at - 30] as number] as number] as const)
    for (const at of [0, 1, 50, 399]) {
      const [x, y] = place(30 + at)
      const expected = Array.from({ length: 30 + at }, (_, other) => other).sort((one, other) => {
        const [[a, b], [c, d]] = [place(one), place(other)]
        return Math.hypot(a - x, b - y) - Math.hypot(c - x, d - y)
      })
      expect(Array.from(before.subarray(at * 12, at * 12 + 12))).toEqual(expected.slice(0, 12))
    }
    expect(new Set(order).size).toBe(400)
  })
})
