import { describe, expect, it } from 'vitest'
import { compileModel } from '../../../electron/analysis/identity/compile-circuit.ts'
import { indexModel } from '../../../electron/analysis/identity/index-model.ts'
import { countLegalBuilds } from '../../../electron/analysis/identity/legal-builds.ts'
import { posterior } from '../../../electron/analysis/identity/posterior.ts'
import { itemsOf, makeReasoner, viewOf } from '../../../electron/analysis/identity/reasoner.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { everyCase, legalBuilds, posteriorByEnumeration } from './enumeration.ts'
import { randomEvidence, randomModel } from './random-models.ts'

const MODELS = 3000
const SEED = 20_261

/** Worst distance of all posterior probabilities of one model from enumeration; null when nothing is possible. */
function worstError(seed: number): { error: number; state: 'possible' | 'impossible' | 'no build' } {
  const model = randomModel(seed)
  const evidence = randomEvidence(model, seed)
  const wanted = posteriorByEnumeration(model, evidence)
  const prior = everyCase(model).reduce((sum, { prior: [first] }) => sum + (first ?? 0), 0)
  let compiled: ReturnType<typeof compileModel>
  let reasoner: ReturnType<typeof makeReasoner>
  try {
    compiled = compileModel(indexModel(model, evidence.claims))
    reasoner = makeReasoner(compiled)
  } catch (fault) {
    expect(fault).toBeInstanceOf(ProblemError)
    expect(prior > 0).toBe(false)
    return { error: 0, state: 'no build' }
  }
  expect(countLegalBuilds(compiled)).toBe(BigInt(legalBuilds(model).length))
  const view = viewOf(reasoner, itemsOf(reasoner, evidence))
  if (view === null) {
    expect(wanted.total).toBe(0)
    return { error: 0, state: 'impossible' }
  }
  const found = posterior(reasoner, view)
  const errors: number[] = []
  const sumWhere = (is: (one: (typeof wanted.cases)[number]) => boolean) =>
    wanted.cases.reduce((sum, one, at) => sum + (is(one) ? (wanted.weights[at] ?? 0) : 0), 0)
  for (const { name, values } of model.variables)
    for (const value of values)
      errors.push((found.variables[name]?.[value] ?? Number.NaN) - sumWhere(({ build }) => build[name] === value))
  for (const { id } of model.doubts)
    errors.push((found.doubts[id] ?? Number.NaN) - sumWhere(({ doubts }) => doubts[id] === true))
  for (const { id, kinds } of model.donors)
    for (const kind of ['none', ...kinds.map((each) => each.id)])
      errors.push((found.donors[id]?.[kind] ?? Number.NaN) - sumWhere(({ donors }) => donors[id] === kind))
  found.accounts.forEach(({ share }, at) => {
    errors.push(share - (wanted.shares[at] ?? Number.NaN))
  })
  return { error: errors.reduce((worst, error) => Math.max(worst, Math.abs(error)), 0), state: 'possible' }
}

describe('against enumeration of every combination', () => {
  it(`${MODELS} random models: worst error of any probability, number of legal builds exactly`, () => {
    let worst = 0
    const states = { possible: 0, impossible: 0, 'no build': 0 }
    for (let at = 0; at < MODELS; at++) {
      const { error, state } = worstError(SEED + at)
      if (!(error < 1e-12)) throw new Error(`seed ${SEED + at}: ${error}`)
      states[state] += 1
      worst = Math.max(worst, error)
    }
    expect(worst).toBeLessThan(1e-12)
    // The draw must hold enough of each sort for the test to mean anything.
    expect(states.possible).toBeGreaterThan(MODELS / 2)
    expect(states.impossible).toBeGreaterThan(10)
    process.stdout.write(`worst error ${worst.toExponential(1)}, ${JSON.stringify(states)}\n`)
  }, 120_000)
})
