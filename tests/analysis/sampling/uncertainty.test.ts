import { describe, expect, it } from 'vitest'
import type { z } from 'zod'
import { combineUncertainty } from '../../../electron/analysis/statistics/combined-uncertainty.ts'
import { drawUncertainty } from '../../../electron/analysis/statistics/drawn-distribution.ts'
import { grubbsTest } from '../../../electron/analysis/statistics/grubbs.ts'
import { decideAgainstLimits } from '../../../electron/analysis/statistics/limit-decision.ts'
import { combinedUncertainty, drawnUncertainty, grubbs } from '../../../shared-types/measuring.ts'

type Sources = z.input<typeof combinedUncertainty.input>['sources']
const combine = (sources: Sources, coverage = 0.95) =>
  combineUncertainty(combinedUncertainty.input.parse({ sources, coverage, unit: 'nm' }))
const known = (label: string, u: number, degreesOfFreedom: number | null, sensitivity = 1) => ({
  label,
  sensitivity,
  by: { kind: 'standard uncertainty' as const, u, degreesOfFreedom },
})

it('JCGM 100:2008, 4.4.3: twenty temperatures', () => {
  const values =
    '96.90 98.18 98.25 98.61 99.03 99.49 99.56 99.74 99.89 100.07 100.33 100.42 100.68 100.95 101.11 101.20 101.57 101.84 102.36 102.72'
  const { standard, degreesOfFreedom } = combine([
    { label: 'temperature', by: { kind: 'readings', values: values.split(' ').map(Number) } },
  ])
  // s = 1.489 °C, s / √20 = 0.333 °C.
  expect(standard).toBeCloseTo(0.332916, 6)
  expect(degreesOfFreedom).toBeCloseTo(19, 10)
})

it('JCGM 100:2008, H.1: the gauge block, unrounded', () => {
  const found = combine(
    [
      known('standard', 25, 18),
      // Difference: repeated readings 5.8, comparator 3.9 and 6.7.
      known('repeated readings', 5.8, 24),
      known('comparator, random', 3.9, 5),
      known('comparator, systematic', 6.7, 8),
      known('expansion', 2.9, 50),
      known('temperature', 16.7, 2),
    ],
    0.99,
  )
  // u = 32 nm, 16 degrees of freedom, U99 = 93 nm from rounded figures; 31.7 and 92.6 without rounding on the way.
  expect(found.standard).toBeCloseTo(31.7, 1)
  expect(Math.floor(found.degreesOfFreedom ?? 0)).toBe(16)
  expect(found.k).toBeCloseTo(2.9208, 4)
  expect(Math.abs(found.expanded - 92.6)).toBeLessThan(0.2)
})

it('a declared error is a half-width: ±(1 µm + 1 %) at 120 µm is 1.27 µm', () => {
  // JCGM 100:2008, 4.3.7; worked: 2.2 / √3.
  const by = { kind: 'half-width' as const, halfWidth: 1 + 0.01 * 120, shape: 'rectangular' as const }
  expect(combine([{ label: 'gauge', by }]).standard).toBeCloseTo(1.27, 2)
})

describe('JCGM 101:2008, 9.2, a hundred thousand draws', () => {
  const draw = (sources: Sources) =>
    drawUncertainty(drawnUncertainty.input.parse({ estimate: 0, sources, draws: 100_000, seed: 'nine two' }))
  const rectangular = (sigma: number) => ({
    label: 'rectangular',
    by: { kind: 'half-width' as const, halfWidth: sigma * Math.sqrt(3), shape: 'rectangular' as const },
  })
  it.each([
    ['four normal ones', Array(4).fill(known('normal', 1, null)), 2, 3.92],
    ['four rectangular ones', Array(4).fill(rectangular(1)), 2, 3.88],
    ['one rectangular ten times as wide', [...Array(3).fill(rectangular(1)), rectangular(10)], 10.1, 17.0],
  ] as [string, Sources, number, number][])('%s', (_, sources, standard, half) => {
    const found = draw(sources)
    expect(Math.abs(found.standard / standard - 1)).toBeLessThan(0.01)
    expect(Math.abs(found.high / half - 1)).toBeLessThan(0.015)
    expect(Math.abs(-found.low / half - 1)).toBeLessThan(0.015)
    expect(found.shortestHigh - found.shortestLow).toBeLessThanOrEqual(found.high - found.low)
  })
  it('first order gives ±19.9 for the last, too wide', () => {
    expect(combine([...Array(3).fill(rectangular(1)), rectangular(10)]).expanded).toBeCloseTo(19.9, 1)
  })
  it('few readings draw a Student t: variance ν/(ν-2) with six', () => {
    expect(Math.abs(draw([known('few', 1, 6)]).standard / Math.sqrt(1.5) - 1)).toBeLessThan(0.02)
  })
  it('triangular and arcsine have the standard deviations of JCGM 100', () => {
    for (const shape of ['triangular', 'arcsine'] as const) {
      const sources = [{ label: shape, by: { kind: 'half-width' as const, halfWidth: 1, shape } }]
      expect(Math.abs(draw(sources).standard / combine(sources).standard - 1)).toBeLessThan(0.01)
    }
  })
})

describe('ISO 14253-1', () => {
  const decide = (value: number, expanded: number) =>
    decideAgainstLimits({ value, expanded, lower: null, upper: 230, unit: 'mm' }).decision
  it.each([
    [228, 0.5, 'inside'],
    [232, 0.5, 'outside'],
    [229.8, 0.5, 'cannot be proven'],
    [230.3, 0.5, 'cannot be proven'],
    [230.5, 0.5, 'cannot be proven'],
    [229.5, 0.5, 'inside'],
  ])('%d ± %d against 230: %s', (value, expanded, decision) => expect(decide(value, expanded)).toBe(decision))
  it('says how exact it would have to be', () => {
    const { words, wouldDecide } = decideAgainstLimits({
      value: 99.2,
      expanded: 2.1,
      lower: 90,
      upper: 100,
      unit: 'mm',
    })
    expect(wouldDecide).toBeCloseTo(0.8, 12)
    expect(words).toContain('below 0.8 mm would decide it; there is 2.1')
  })
  it('refuses no limit and limits the wrong way round', () => {
    expect(() => decideAgainstLimits({ value: 1, expanded: 1, lower: null, upper: null, unit: '' })).toThrow(
      /at least one/,
    )
    expect(() => decideAgainstLimits({ value: 1, expanded: 1, lower: 2, upper: 1, unit: '' })).toThrow(/exchange/)
  })
})

describe('Grubbs', () => {
  const test = (values: number[], more: object = {}) => grubbsTest(grubbs.input.parse({ values, ...more }))
  it('the worked example of the NIST handbook, 1.3.5.17.1', () => {
    const values = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57]
    const found = test(values, { sides: 'greatest' })
    expect(found).toMatchObject({ at: 7, value: 245.57, standsOut: true })
    expect(found.g).toBeCloseTo(2.46876461, 8)
    expect(found.critical).toBeCloseTo(2.031652, 6)
  })
  it.each([
    // Two-sided, 5 %; 7: one reprinted table says 2.202, which is a misprint.
    [3, 1.1543],
    [7, 2.02],
    [10, 2.29],
    [20, 2.7082],
    [30, 2.9085],
  ])('critical value for %i', (n, critical) => {
    expect(test(Array.from({ length: n }, (_, at) => at)).critical).toBeCloseTo(critical, 4)
  })
  it.each([
    // From quantiles of Student's t; 15: one reprinted table says 2.755 at 1 %, which is a misprint.
    [8, 0.01, 'either', 2.2744],
    [15, 0.01, 'either', 2.8061],
    [30, 0.01, 'either', 3.2361],
    [5, 0.05, 'greatest', 1.6714],
    [8, 0.05, 'greatest', 2.0317],
    [20, 0.05, 'greatest', 2.5566],
  ])('critical value for %i at %d, %s', (n, significance, sides, critical) => {
    const values = Array.from({ length: n }, (_, at) => at)
    expect(test(values, { significance, sides }).critical).toBeCloseTo(critical, 4)
  })
  it('refuses values that do not differ', () => expect(() => test([1, 1, 1])).toThrow(/finer step/))
})
