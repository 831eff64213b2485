import { describe, expect, it } from 'vitest'
import { mostProbableBuilds } from '../../../electron/analysis/identity/best-builds.ts'
import { compileModel } from '../../../electron/analysis/identity/compile-circuit.ts'
import { type Contribution, contributions } from '../../../electron/analysis/identity/contributions.ts'
import { indexModel } from '../../../electron/analysis/identity/index-model.ts'
import { countLegalBuilds } from '../../../electron/analysis/identity/legal-builds.ts'
import { posterior } from '../../../electron/analysis/identity/posterior.ts'
import { itemsOf, makeReasoner, viewOf } from '../../../electron/analysis/identity/reasoner.ts'
import { valueOfInformation } from '../../../electron/analysis/identity/value-of-information.ts'
import { legalBuilds } from './enumeration.ts'
import { publishedCases } from './published-cases.ts'

const TOLERANCE = 1e-12

type Tree = { readonly [key: string]: number | Tree }
/** Greatest distance between numbers at the same places of two trees. */
function distance(found: Tree, wanted: Tree): number {
  expect(Object.keys(found)).toEqual(expect.arrayContaining(Object.keys(wanted)))
  return Object.entries(wanted).reduce((worst, [key, value]) => {
    const own = found[key]
    if (typeof value === 'number') return Math.max(worst, typeof own === 'number' ? Math.abs(own - value) : Infinity)
    return Math.max(worst, typeof own === 'object' ? distance(own, value) : Infinity)
  }, 0)
}

describe.each(publishedCases)('$id, $provenance', ({ model, evidence, expected, target, hypothesis }) => {
  const reasoner = makeReasoner(compileModel(indexModel(model)))
  const view = viewOf(reasoner, itemsOf(reasoner, evidence))
  const before = viewOf(reasoner, [])
  if (view === null || before === null) throw new Error('The evidence must be possible.')

  it('prior', () => {
    expect(distance(posterior(reasoner, before).variables, expected.prior)).toBeLessThan(TOLERANCE)
  })
  it('posterior', () => {
    expect(distance(posterior(reasoner, view).variables, expected.posterior)).toBeLessThan(TOLERANCE)
  })
  it('posterior of and under each source', () => {
    const { accounts } = posterior(reasoner, view)
    const shares = Object.fromEntries(accounts.map(({ id, share }) => [id, share]))
    expect(distance(shares, expected.posteriorOfSource ?? {})).toBeLessThan(TOLERANCE)
    const each = Object.fromEntries(accounts.map(({ id, variables }) => [id, variables ?? {}]))
    expect(distance(each, expected.posteriorBySource ?? {})).toBeLessThan(TOLERANCE)
  })
  it('legal builds', () => {
    expect(countLegalBuilds(reasoner.compiled)).toBe(BigInt(expected.legalBuilds))
  })
  it('most probable build', () => {
    const { builds, proved } = mostProbableBuilds(reasoner, view, 3)
    expect(proved).toBe(true)
    expect(Math.abs((builds[0]?.probability ?? 0) - expected.mostProbableBuild.probability)).toBeLessThan(TOLERANCE)
    const equal = builds.filter(({ probability }) => Math.abs(probability - (builds[0]?.probability ?? 0)) < TOLERANCE)
    expect(equal.map(({ build }) => build)).toContainEqual(expected.mostProbableBuild.build)
  })
  it('value of information, entropy, best tell', () => {
    const { entropyBits, tells } = valueOfInformation(
      reasoner,
      view,
      { about: 'variable', variable: target },
      new Set(),
    )
    expect(Math.abs((entropyBits ?? Number.NaN) - expected.targetEntropyBits)).toBeLessThan(TOLERANCE)
    const bits = Object.fromEntries(tells.map(({ tell, bits: own }) => [tell, own]))
    expect(distance(bits, expected.voiBits)).toBeLessThan(TOLERANCE)
    expect(tells[0]?.tell).toBe(expected.bestTell)
  })
  it('decibans', () => {
    const [variable, value] = hypothesis
    const items = itemsOf(reasoner, evidence)
    const { total, leaveOneOut, inOrder } = contributions(reasoner, items, [[variable, [value]]])
    expect(Math.abs((total.decibans ?? Number.NaN) - expected.decibans.total)).toBeLessThan(TOLERANCE * 10)
    const alone = contributions(reasoner, items, [[variable, [value]]], { each: false, inOrder: false })
    expect(Math.abs((alone.total.decibans ?? Number.NaN) - expected.decibans.total)).toBeLessThan(TOLERANCE * 10)
    expect(Object.keys(alone.leaveOneOut)).toEqual([])
    const byId = (some: readonly Contribution[]) =>
      Object.fromEntries(some.map(({ id, decibans }) => [id, decibans ?? 0]))
    expect(distance(byId(leaveOneOut), expected.decibans.leaveOneOut)).toBeLessThan(TOLERANCE * 10)
    expect(distance(byId(inOrder), expected.decibans.inOrder)).toBeLessThan(TOLERANCE * 10)
  })
  it('enumeration, the oracle of the random models, finds the published count', () => {
    expect(legalBuilds(model)).toHaveLength(expected.legalBuilds)
  })
})
