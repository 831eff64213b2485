import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { answerIdentity } from '../../../electron/analysis/identity/answer-identity.ts'
import { decibans } from '../../../electron/analysis/identity/decibans.ts'
import { measuredLikelihood } from '../../../electron/analysis/identity/measured-likelihood.ts'
import { support } from '../../../electron/analysis/identity/support-scale.ts'
import { identityAnswer, identityInput } from '../../../shared-types/identity-answer.ts'
import { enfsiSupportBands } from '../../../shared-types/support-scale.ts'
import { posteriorByEnumeration } from './enumeration.ts'
import { randomEvidence, randomModel } from './random-models.ts'

const ask = (input: unknown) => identityAnswer.parse(answerIdentity(identityInput.parse(input)))

describe('decibans', () => {
  it('twenty heads in a row, prior odds 1 to 10 000: General Report on Tunny, p. 39, prints 20 db, 100 to 1 on', () => {
    const after = decibans(2 ** 20) + decibans(1 / 10_000)
    expect(Math.round(20 * Math.round(decibans(2))) - 40).toBe(20)
    expect(after).toBeCloseTo(20.206, 3)
    expect(10 ** (after / 10)).toBeCloseTo(104.8576, 9)
  })
  it.each([
    [2, 3.0103],
    [3, 4.7712],
    [20, 13.0103],
    [150, 21.7609],
    [1e6, 60],
  ])('a factor of %d is %d decibans (common logarithms)', (factor, wanted) => {
    expect(decibans(factor)).toBeCloseTo(wanted, 4)
  })
  it('the same penny asked of the engine: 20 observations, one hypothesis', () => {
    const heads = Array.from({ length: 20 }, (_, at) => ({
      id: `throw ${at}`,
      variable: 'penny',
      likelihood: { fair: 0.5, 'double-headed': 1 },
    }))
    const { contributions, support: found } = ask({
      model: {
        variables: [{ name: 'penny', values: ['fair', 'double-headed'] }],
        tables: [{ id: 'w', scope: ['penny'], weights: [10_000, 1] }],
      },
      evidence: { observations: heads },
      statement: [['penny', ['double-headed']]],
    })
    expect(contributions?.total.decibans).toBeCloseTo(60.206, 3)
    expect(contributions?.leaveOneOut.map((each) => each.decibans?.toFixed(4))).toEqual(heads.map(() => '3.0103'))
    expect((contributions?.after ?? 0) / (1 - (contributions?.after ?? 0))).toBeCloseTo(104.8576, 6)
    expect(found).toMatchObject({ supports: 'first', words: 'extremely strong', decisive: false })
  })
})

it('several statements asked at once are answered as each alone', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
      const model = randomModel(seed)
      const evidence = randomEvidence(model, seed + 1)
      const says = model.variables.slice(0, 3).map(({ name, values }) => [[name, values.slice(0, 1)]])
      const together = ask({ model, evidence, statements: says.map((each, at) => ({ id: `s${at}`, says: each })) })
      for (const [at, each] of says.entries()) {
        const alone = ask({ model, evidence, statement: each })
        expect(together.statements[at]?.contributions).toEqual(alone.contributions)
        expect(together.statements[at]?.support).toEqual(alone.support)
      }
    }),
    { numRuns: 20, seed: 1961 },
  )
})

describe('words for support (ENFSI Guideline for Evaluative Reporting, 2015, guidance note 4)', () => {
  it.each([
    [1, 'neither', 'no support'],
    [2, 'first', 'weak'],
    [10, 'first', 'moderate'],
    [99.9, 'first', 'moderate'],
    [100, 'first', 'moderately strong'],
    [1000, 'first', 'strong'],
    [10_000, 'first', 'very strong'],
    [999_999, 'first', 'very strong'],
    [1_000_000, 'first', 'extremely strong'],
    [1 / 500, 'second', 'moderately strong'],
  ])('a ratio of %d', (ratio, supports, words) => {
    expect(support(ratio)).toMatchObject({ supports, words })
  })
  it('bands join without gap', () => {
    enfsiSupportBands.forEach(({ to }, at) => {
      expect(to).toBe(enfsiSupportBands[at + 1]?.from ?? null)
    })
  })
  it('an impossible proposition has no ratio', () => {
    expect(support(Number.POSITIVE_INFINITY)).toMatchObject({
      likelihoodRatio: null,
      decisive: true,
      supports: 'first',
    })
    expect(support(0)).toMatchObject({ likelihoodRatio: null, decisive: true, supports: 'second' })
  })
})

it('a measured value is likelier for the value it lies nearer to: 254.3 mm, u 1 mm, drums of 228.6 and 254 mm', () => {
  const drums = { d228: { mean: 228.6, standardDeviation: 0.5 }, d254: { mean: 254, standardDeviation: 0.5 } }
  const found = measuredLikelihood(254.3, 1, drums)
  expect(found.d254).toBe(1)
  // exp(-(25.7² - 0.3²) / (2 · 1.25)), worked by hand.
  expect(Math.log(found.d228 ?? 0)).toBeCloseTo(-(25.7 ** 2 - 0.3 ** 2) / 2.5, 9)
})

describe('properties', () => {
  const seeds = fc.integer({ min: 1, max: 1e6 })
  const answered = (seed: number, turn: <T>(some: readonly T[]) => readonly T[], keep = 99) => {
    const model = randomModel(seed)
    const { readings, observations, claims } = randomEvidence(model, seed)
    const evidence = {
      readings: turn(readings).slice(0, keep),
      observations: turn(observations).slice(0, keep),
      claims: turn(claims),
      certain: [],
    }
    return { model, evidence, answer: () => ask({ model, evidence, builds: 0 }) }
  }
  const possible = (seed: number) =>
    posteriorByEnumeration(randomModel(seed), randomEvidence(randomModel(seed), seed)).total > 0

  it('the order of observations does not matter', () => {
    fc.assert(
      fc.property(seeds.filter(possible), (seed) => {
        const one = answered(seed, (some) => some).answer()
        const other = answered(seed, (some) => some.toReversed()).answer()
        for (const [name, values] of Object.entries(one.posterior?.variables ?? {}))
          for (const [value, share] of Object.entries(values))
            expect(Math.abs(share - (other.posterior?.variables[name]?.[value] ?? Number.NaN))).toBeLessThan(1e-12)
      }),
      { seed: 4, numRuns: 60 },
    )
  })

  it('retracting restores: asking with more in between leaves the answer as it was, to the last bit', () => {
    fc.assert(
      fc.property(seeds.filter(possible), (seed) => {
        const { model, evidence } = answered(seed, (some) => some)
        const fewer = { ...evidence, readings: [], claims: [] }
        const before = ask({ model, evidence: fewer, builds: 0 })
        ask({ model, evidence, builds: 0 })
        expect(ask({ model, evidence: fewer, builds: 0 })).toEqual(before)
      }),
      { seed: 5, numRuns: 40 },
    )
  })
})

it('impossible evidence is a conflict with its reasons, and no number is given', () => {
  const found = ask({
    model: {
      variables: [
        { name: 'plant', values: ['Ost', 'West'] },
        { name: 'lamp', values: ['round', 'square'] },
      ],
      rules: [{ id: 'r1', source: 'list 4', ifs: [['plant', ['Ost']]], thenAny: [['lamp', ['round']]] }],
    },
    evidence: {
      observations: [
        { id: 'plate', variable: 'plant', likelihood: { Ost: 1 } },
        { id: 'lens', variable: 'lamp', likelihood: { square: 1 } },
        { id: 'glance', variable: 'lamp', likelihood: { square: 0.6, round: 0.4 } },
      ],
    },
    statement: [['plant', ['West']]],
  })
  expect(found).toMatchObject({ posterior: null, mostProbable: null, contributions: null, support: null, worths: null })
  expect(found.impossible?.conflicts.map((set) => set.map(({ id }) => id))).toEqual([['r1', 'plate', 'lens']])
  expect(found.impossible?.repairs.map((set) => set.map(({ id }) => id)).sort()).toEqual([['lens'], ['plate'], ['r1']])
  expect(found.buildsLeft).toBe('0')
})

it('readings that contradict each other sixty times over are weighed, not called impossible', () => {
  const names = Array.from({ length: 120 }, (_, at) => `mark ${at}`)
  const values = ['early', 'late']
  // Every mark follows the year; half of them were read early, half late, each wrong once in a million: 10 to the -360.
  const found = ask({
    model: {
      variables: [{ name: 'year', values }, ...names.map((name) => ({ name, values }))],
      rules: names.flatMap((name) =>
        values.map((value) => ({ id: `${name} ${value}`, ifs: [['year', [value]]], thenAny: [[name, [value]]] })),
      ),
    },
    evidence: {
      observations: names.map((variable, at) => ({
        id: `read ${variable}`,
        variable,
        likelihood: at % 2 === 0 ? { early: 1, late: 1e-6 } : { early: 1e-6, late: 1 },
      })),
    },
    statement: [['year', ['early']]],
    builds: 0,
  })
  expect(found.impossible).toBeNull()
  expect(found.posterior?.variables.year?.early).toBeCloseTo(0.5, 12)
  expect(found.contributions?.leaveOneOut[0]?.decibans).toBeCloseTo(60, 9)
  expect(found.story).toMatchObject({ decibansBehind: 0, build: { year: 'early' } })
})
