import { describe, expect, it } from 'vitest'
import type { FillerDraws } from '../../../electron/analysis/coating/field-draws.ts'
import { extentDraws } from '../../../electron/analysis/coating/field-summary.ts'
import { worthwhileSpots } from '../../../electron/analysis/coating/next-reading.ts'
import { outlineSpot } from '../../../electron/analysis/coating/outline-reading.ts'
import { normalDraw, seededDraw } from '../../../electron/analysis/sampling/seeded-draws.ts'
import { ruleAgainstRandom } from './reading-control.ts'

const DRAWS = 20_000
/** Three nodes: two that go together and are deep enough never to touch the gauge's ends, and one that goes its own way. */
const covariances: readonly (readonly number[])[] = [
  [40_000, 30_000, 0],
  [30_000, 40_000, 0],
  [0, 0, 10_000],
]
const NOISE = 50

function gaussianDraws(): FillerDraws {
  const normal = normalDraw(seededDraw('gaussian field'))
  const fillerUm = new Float32Array(3 * DRAWS)
  for (let d = 0; d < DRAWS; d += 1) {
    const [a, b, c] = [normal(), normal(), normal()]
    fillerUm[d] = 1000 + 200 * a
    fillerUm[DRAWS + d] = 1000 + 150 * a + Math.sqrt(40_000 - 22_500) * b
    fillerUm[2 * DRAWS + d] = 1000 + 100 * c
  }
  return {
    nodes: 3,
    draws: DRAWS,
    fillerUm,
    nuggetVariance: new Float64Array(DRAWS),
    shapes: new Float64Array(DRAWS).fill(1),
  }
}

const terms = { saturationUm: Number.POSITIVE_INFINITY, paintUm: 0, readingDeviationUm: () => NOISE }
const everywhere = new Uint8Array(3).fill(1)

describe('where to read next', () => {
  const drawn = gaussianDraws()
  const { volumeMm3 } = extentDraws(drawn, Float64Array.of(1000, 1000, 1000), 0)
  /**
   * For a Gaussian field the variance a reading takes away is (a'C e)^2 / (C_ee + noise), in closed form, and the share of the
   * variance of ranks 3/pi of the share of variance: a normal number goes with its rank by the root of that (A. Stuart, British
   * Journal of Statistical Psychology 7 (1954) 37-44, recalled).
   */
  const closed = (node: number): number => {
    const total = covariances.flat().reduce((sum, value) => sum + value, 0)
    const row = (covariances[node] ?? []).reduce((sum, value) => sum + value, 0)
    return ((3 / Math.PI) * row ** 2) / ((covariances[node]?.[node] ?? 0) + NOISE ** 2) / total
  }
  it('expects of a Gaussian field what the closed form gives', () => {
    const [first] = worthwhileSpots(drawn, volumeMm3, everywhere, terms, 1)
    expect([0, 1]).toContain(first?.node)
    expect(first?.reduction).toBeCloseTo(closed(first?.node ?? 2), 1.5)
    const [alone] = worthwhileSpots(drawn, volumeMm3, Uint8Array.of(0, 0, 1), terms, 1)
    expect(Math.abs((alone?.reduction ?? 0) - closed(2))).toBeLessThan(0.01)
  })
  it('takes out what the first reading told before it chooses the second', () => {
    const spots = worthwhileSpots(drawn, volumeMm3, everywhere, terms, 3)
    const total = 150_000
    const [p, q] = [70_000 ** 2 / 42_500, (70_000 - (70_000 * 30_000) / 42_500) ** 2 / (42_500 - 30_000 ** 2 / 42_500)]
    const third = 10_000 ** 2 / 12_500
    expect(spots.map(({ reduction }) => reduction).reduce((sum, value) => sum + value, 0)).toBeCloseTo(
      ((3 / Math.PI) * (p + q + third)) / total,
      1.5,
    )
    expect(new Set(spots.map(({ node }) => node)).size).toBe(3)
  })
  it('goes where the interval would narrow, not where a few deep draws make up the variance', () => {
    const normal = normalDraw(seededDraw('seldom deep'))
    const fillerUm = new Float32Array(2 * DRAWS)
    for (let d = 0; d < DRAWS; d += 1) {
      fillerUm[d] = d % 50 === 0 ? 8000 : 0
      fillerUm[DRAWS + d] = 1000 + 100 * normal()
    }
    const seldom: FillerDraws = { ...drawn, nodes: 2, fillerUm }
    const { volumeMm3: volume } = extentDraws(seldom, Float64Array.of(1000, 1000), 0)
    const variance = (values: Float32Array): number => {
      const mean = values.reduce((sum, value) => sum + value, 0) / DRAWS
      return values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / DRAWS
    }
    expect(variance(fillerUm.subarray(0, DRAWS))).toBeGreaterThan(50 * variance(fillerUm.subarray(DRAWS)))
    const [first] = worthwhileSpots(seldom, volume, Uint8Array.of(1, 1), { ...terms, readingDeviationUm: () => 10 }, 1)
    expect(first?.node).toBe(1)
    expect(first?.reduction).toBeGreaterThan(0.7)
  })
  it('sends nobody where nothing can be read or nothing is open', () => {
    expect(worthwhileSpots(drawn, volumeMm3, new Uint8Array(3), terms, 1)).toEqual([])
    expect(worthwhileSpots(drawn, new Float64Array(DRAWS).fill(7), everywhere, terms, 1)).toEqual([])
    const beyond = { ...terms, saturationUm: 10 }
    expect(worthwhileSpots(drawn, volumeMm3, everywhere, beyond, 1)).toEqual([])
  })
  it('for the outline picks the node that settles the others too', () => {
    const spot = outlineSpot(drawn, Float64Array.of(1000, 1000, 100), everywhere, 1000, terms)
    expect([0, 1]).toContain(spot?.node)
    expect(spot?.afterMm2 ?? 0).toBeLessThan(0.7 * (spot?.beforeMm2 ?? 0))
    expect(outlineSpot(drawn, Float64Array.of(1, 1, 1), everywhere, 5000, terms)).toBeNull()
  })
  it('leaves a narrower volume than random places do, over four panels together', () => {
    const outcomes = [0, 1, 2, 3].map((at) => ruleAgainstRandom('graded', `short control ${at}`, 8))
    const sum = (of: (outcome: (typeof outcomes)[number]) => number): number =>
      outcomes.reduce((all, one) => all + of(one), 0)
    expect(sum(({ ruleWidth }) => ruleWidth)).toBeLessThan(0.9 * sum(({ randomWidth }) => randomWidth))
    expect(sum(({ ruleWidth }) => ruleWidth)).toBeLessThan(0.8 * sum(({ startWidth }) => startWidth))
  })
})
