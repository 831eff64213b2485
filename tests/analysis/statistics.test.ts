import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { spotSummary } from '../../electron/analysis/statistics/spot-summary.ts'
import { univariate } from '../../electron/analysis/statistics/univariate.ts'

const alternating = (base: number, pairs: number): number[] => [
  base + 0.2,
  ...Array.from({ length: pairs }, () => [base + 0.1, base + 0.3]).flat(),
]

const mavro = `2.0018 2.0017 2.0018 2.0019 2.0018 2.0017 2.0015 2.0014 2.0015 2.0015 2.0017 2.0018 2.0018 2.0019 2.0019
2.0021 2.0020 2.0016 2.0014 2.0013 2.0013 2.0015 2.0015 2.0016 2.0015 2.0014 2.0013 2.0014 2.0015 2.0014 2.0015 2.0016
2.0015 2.0016 2.0019 2.0020 2.0020 2.0021 2.0022 2.0023 2.0024 2.0025 2.0027 2.0026 2.0026 2.0026 2.0027 2.0026 2.0025
2.0024`
/** Hundredths above 299, as far as they go; speed of light less 299 000 km/s, Michelson 1879. */
const michelson = `85 74 90 107 93 85 95 98 98 88 100 98 93 65 76 81 100 100 96 96 96 94 96 94 88 80 85 88 90 84 83 79 81 88
88 83 80 79 76 80 88 88 88 86 72 72 62 86 97 95 88 91 85 87 84 84 85 84 84 84 89 81 81 82 80 77 76 74 75 76 91 92 89 86
88 72 84 85 85 78 89 84 78 81 76 81 79 81 82 85 87 87 81 74 81 94 95 80 81 87`
const numbers = (text: string): number[] => text.split(/\s+/).map(Number)

/**
 * NIST Statistical Reference Datasets, univariate summary statistics: certified mean and standard deviation. Tolerances
 * are relative; NumAcc3's spread cannot be had nearer than 1e-9, because its values are already rounded as doubles;
 * NumAcc4's no nearer than 1e-8.
 */
const certified = [
  { name: 'NumAcc1', values: [10000001, 10000003, 10000002], mean: 10000002, deviation: 1, tolerance: 1e-15 },
  { name: 'NumAcc2', values: alternating(1, 500), mean: 1.2, deviation: 0.1, tolerance: 1e-13 },
  { name: 'NumAcc3', values: alternating(1_000_000, 500), mean: 1000000.2, deviation: 0.1, tolerance: 1e-9 },
  { name: 'NumAcc4', values: alternating(10_000_000, 500), mean: 10000000.2, deviation: 0.1, tolerance: 1e-8 },
  { name: 'Mavro', values: numbers(mavro), mean: 2.001856, deviation: 0.000429123454003053, tolerance: 1e-12 },
  {
    name: 'Michelso',
    values: numbers(michelson).map((hundredths) => Number((299 + hundredths / 100).toFixed(2))),
    mean: 299.8524,
    deviation: 0.0790105478190518,
    tolerance: 1e-12,
  },
]

describe.each(certified)('NIST StRD $name', ({ values, mean, deviation, tolerance }) => {
  const found = univariate(values)
  it('mean', () => expect(Math.abs(found.mean - mean) / mean).toBeLessThanOrEqual(1e-15))
  it('standard deviation', () => {
    expect(Math.abs((found.standardDeviation ?? 0) - deviation) / deviation).toBeLessThanOrEqual(tolerance)
  })
})

it('the one-pass formula fails NumAcc3, so that this test can tell the two apart', () => {
  const values = alternating(1_000_000, 500)
  const [sum, squares] = values.reduce(([s, q], value) => [s + value, q + value * value], [0, 0])
  const onePass = Math.sqrt(Math.max(0, squares - sum ** 2 / values.length) / (values.length - 1))
  expect(Math.abs(onePass - 0.1) / 0.1).toBeGreaterThan(1e-9)
})

it('moves with its values and grows with their scale', () => {
  const value = fc.double({ min: -1e6, max: 1e6, noNaN: true })
  fc.assert(
    fc.property(
      fc.array(value, { minLength: 2, maxLength: 30 }),
      fc.integer({ min: -1000, max: 1000 }),
      (values, shift) => {
        const plain = univariate(values)
        const moved = univariate(values.map((one) => one + shift))
        const doubled = univariate(values.map((one) => 2 * one))
        expect(moved.mean).toBeCloseTo(plain.mean + shift, 6)
        expect(moved.standardDeviation).toBeCloseTo(plain.standardDeviation ?? 0, 5)
        expect(doubled.median).toBeCloseTo(2 * plain.median, 6)
        expect(plain.min).toBeLessThanOrEqual(plain.median)
        expect(plain.median).toBeLessThanOrEqual(plain.max)
      },
    ),
  )
})

describe('a spot', () => {
  const value = (um: number) => ({ kind: 'value', um }) as const

  it('has a standard uncertainty of s over root n, and none from one reading (JCGM 100:2008, 4.2.3)', () => {
    const found = spotSummary({ values: [118, 120, 122].map(value), gauge: null })
    expect(found).toMatchObject({ n: 3, meanUm: 120, medianUm: 120, standardDeviationUm: 2, expandedUm: null })
    expect(found.typeAUm).toBeCloseTo(2 / Math.sqrt(3), 12)
    expect(spotSummary({ values: [value(120)], gauge: null })).toMatchObject({
      typeAUm: null,
      standardDeviationUm: null,
    })
  })

  it.each([
    // u = (a + b·t)/√3 at 120 µm (JCGM 100:2008, 4.3.7).
    { errorUm: 1, errorPercent: 1, u: 1.27 },
    { errorUm: 2, errorPercent: 3, u: 3.23 },
  ])('takes ±($errorUm µm + $errorPercent %) as rectangular', ({ errorUm, errorPercent, u }) => {
    const found = spotSummary({ values: [118, 120, 122].map(value), gauge: { errorUm, errorPercent } })
    expect(found.gaugeUm).toBeCloseTo(u, 2)
    expect(found.expandedUm).toBeCloseTo(2 * Math.hypot(found.gaugeUm ?? 0, 2 / Math.sqrt(3)), 12)
  })

  it('with a saturated reading is at least, without an uncertainty', () => {
    const found = spotSummary({
      values: [value(1800), { kind: 'more than', um: 2000 }, { kind: 'no reading' }],
      gauge: null,
    })
    expect(found).toMatchObject({
      n: 1,
      saturated: 1,
      failed: 1,
      meanUm: 1900,
      atLeast: true,
      typeAUm: null,
      expandedUm: null,
    })
  })

  it('of failures alone has no value', () => {
    expect(spotSummary({ values: [{ kind: 'no reading' }], gauge: null })).toMatchObject({
      n: 0,
      failed: 1,
      meanUm: null,
    })
  })
})
