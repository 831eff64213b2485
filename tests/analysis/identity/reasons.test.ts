import { describe, expect, it } from 'vitest'
import { mostProbableBuilds } from '../../../electron/analysis/identity/best-builds.ts'
import { cheapestStory } from '../../../electron/analysis/identity/cheapest-story.ts'
import { compileModel } from '../../../electron/analysis/identity/compile-circuit.ts'
import { contributions } from '../../../electron/analysis/identity/contributions.ts'
import { indexModel } from '../../../electron/analysis/identity/index-model.ts'
import { itemsOf, makeReasoner, viewOf } from '../../../electron/analysis/identity/reasoner.ts'
import { valueOfInformation } from '../../../electron/analysis/identity/value-of-information.ts'
import {
  type IdentityEvidence,
  type IdentityLiteral,
  type IdentityModel,
  type IdentityQuestion,
  identityModel,
} from '../../../shared-types/identity-model.ts'
import { type Case, posteriorByEnumeration, readingChance } from './enumeration.ts'
import { randomEvidence, randomModel } from './random-models.ts'

interface Drawn {
  readonly seed: number
  readonly model: IdentityModel
  readonly evidence: IdentityEvidence
  readonly reasoner: ReturnType<typeof makeReasoner>
  readonly truth: ReturnType<typeof posteriorByEnumeration>
}

/** Random models whose evidence is possible. */
function drawn(count: number, first: number): readonly Drawn[] {
  const found: Drawn[] = []
  for (let seed = first; found.length < count; seed++) {
    const model = randomModel(seed)
    const evidence = randomEvidence(model, seed)
    const truth = posteriorByEnumeration(model, evidence)
    if (!(truth.total > 0)) continue
    found.push({
      seed,
      model,
      evidence,
      truth,
      reasoner: makeReasoner(compileModel(indexModel(model, evidence.claims))),
    })
  }
  return found
}

const viewed = ({ reasoner, evidence }: Drawn) => {
  const view = viewOf(reasoner, itemsOf(reasoner, evidence))
  if (view === null) throw new Error('The evidence must be possible.')
  return view
}
const says = (literals: readonly IdentityLiteral[], { build }: Case) =>
  literals.every(([name, values]) => values.includes(build[name] ?? ''))
const bitsOf = (shares: Iterable<number>) => [...shares].reduce((sum, p) => (p > 0 ? sum - p * Math.log2(p) : sum), 0)
const firstOf = ({ model }: Drawn) => model.variables[0] ?? { name: '', values: [''] }
const statementOf = ({ model }: Drawn): readonly IdentityLiteral[] =>
  model.variables.slice(0, 2).map(({ name, values }) => [name, values.slice(0, Math.ceil(values.length / 2))])

/** Mutual information of a tell's outcome and the group of each case, from the definition. */
function bitsByDefinition(
  { model, truth }: Drawn,
  tell: IdentityModel['tells'][number],
  groupOf: (one: Case) => string,
): number {
  const values = model.variables.find(({ name }) => name === tell.variable)?.values ?? []
  const outcomes = tell.reads.kind === 'direct' ? tell.reads.outcomes : values
  const joint = new Map<string, number[]>()
  truth.cases.forEach((one, at) => {
    const row = joint.get(groupOf(one)) ?? outcomes.map(() => 0)
    joint.set(
      groupOf(one),
      row.map((sum, place) => sum + (truth.weights[at] ?? 0) * readingChance(model, tell, outcomes[place] ?? '', one)),
    )
  })
  const rows = [...joint.values()]
  const whole = outcomes.map((_, place) => rows.reduce((sum, row) => sum + (row[place] ?? 0), 0))
  const shares = rows.map((row) => row.reduce((sum, each) => sum + each, 0))
  return bitsOf(whole) + bitsOf(shares) - bitsOf(rows.flat())
}

describe('against enumeration', () => {
  const models = drawn(250, 70_000)

  it('worth of every tell in bits, for a variable, a statement and the whole build', () => {
    let worst = 0
    for (const one of models) {
      const statement = statementOf(one)
      const asked: readonly (readonly [IdentityQuestion, (each: Case) => string])[] = [
        [{ about: 'variable', variable: firstOf(one).name }, ({ build }) => build[firstOf(one).name] ?? ''],
        [{ about: 'statement', says: statement }, (each) => String(says(statement, each))],
        [{ about: 'build' }, ({ build, donors }) => JSON.stringify([build, donors])],
      ]
      for (const [question, groupOf] of asked) {
        const found = valueOfInformation(one.reasoner, viewed(one), question, new Set())
        for (const tell of one.model.tells) {
          const bits = found.tells.find((each) => each.tell === tell.id)?.bits ?? Number.NaN
          const error = Math.abs(bits - bitsByDefinition(one, tell, groupOf))
          if (!(error < 1e-11)) throw new Error(`seed ${one.seed}, ${tell.id} for ${question.about}: ${error}`)
          worst = Math.max(worst, error)
        }
      }
    }
    expect(worst).toBeLessThan(1e-11)
  })

  it('most probable builds with everything hidden summed out', () => {
    for (const one of models) {
      const sums = new Map<string, number>()
      one.truth.cases.forEach(({ build }, at) => {
        const key = JSON.stringify(Object.values(build))
        sums.set(key, (sums.get(key) ?? 0) + (one.truth.weights[at] ?? 0))
      })
      const wanted = [...sums.values()]
        .filter((share) => share > 0)
        .sort((a, b) => b - a)
        .slice(0, 3)
      const { builds, proved } = mostProbableBuilds(one.reasoner, viewed(one), 3)
      expect(proved, `seed ${one.seed}`).toBe(true)
      expect(builds.length).toBe(wanted.length)
      builds.forEach(({ build, probability }, at) => {
        expect(Math.abs(probability - (wanted[at] ?? 0))).toBeLessThan(1e-12)
        expect(Math.abs(probability - (sums.get(JSON.stringify(Object.values(build))) ?? 0))).toBeLessThan(1e-12)
      })
    }
  })

  it('leaving one observation out', () => {
    let compared = 0
    for (const one of models.slice(0, 100)) {
      const statement = statementOf(one)
      const odds = (evidence: IdentityEvidence) => {
        const { cases, weights } = posteriorByEnumeration(one.model, evidence)
        const share = (holds: boolean) =>
          cases.reduce((sum, each, at) => sum + (says(statement, each) === holds ? (weights[at] ?? 0) : 0), 0)
        return share(true) / share(false)
      }
      const { leaveOneOut } = contributions(one.reasoner, itemsOf(one.reasoner, one.evidence), statement)
      for (const { id } of one.evidence.observations) {
        const without = { ...one.evidence, observations: one.evidence.observations.filter((each) => each.id !== id) }
        const wanted = 10 * Math.log10(odds(one.evidence) / odds(without))
        const found = leaveOneOut.find((each) => each.id === id)?.decibans ?? null
        if (!Number.isFinite(wanted)) {
          expect(found === null || found === 0, `seed ${one.seed}`).toBe(true)
          continue
        }
        if (found === null) throw new Error(`seed ${one.seed}: ${wanted} expected`)
        expect(Math.abs(found - wanted), `seed ${one.seed}`).toBeLessThan(1e-8)
        compared += 1
      }
    }
    expect(compared).toBeGreaterThan(40)
  })
})

describe('cheapest story', () => {
  const model = identityModel.parse({
    variables: [
      { name: 'year', values: ['early', 'late'] },
      { name: 'engine', values: ['A', 'B'] },
      { name: 'box', values: ['A', 'B'] },
    ],
    rules: [
      { id: 'r1', ifs: [['year', ['early']]], thenAny: [['engine', ['A']]] },
      { id: 'r2', ifs: [['year', ['early']]], thenAny: [['box', ['A']]], doubt: 'list' },
      { id: 'r3', ifs: [['year', ['late']]], thenAny: [['engine', ['B']]] },
      { id: 'r4', ifs: [['year', ['late']]], thenAny: [['box', ['B']]] },
    ],
    doubts: [{ id: 'list', holds: 0.99 }],
    donors: [{ id: 'drivetrain', kinds: [{ id: 'late', share: 0.05, fitted: { engine: { B: 1 }, box: { B: 1 } } }] }],
    tells: ['engine', 'box'].map((part) => ({
      id: part,
      variable: part,
      reads: {
        kind: 'part',
        replaced: 0.02,
        service: { A: 0.5, B: 0.5 },
        wrong: 0.001,
        misread: 0.01,
        donor: 'drivetrain',
      },
    })),
  })
  const evidence: IdentityEvidence = {
    readings: ['engine', 'box'].map((part) => ({ id: `read ${part}`, tell: part, seen: { B: 1 } })),
    observations: [],
    claims: [],
    certain: [],
  }
  const reasoner = makeReasoner(compileModel(indexModel(model)))
  const told = (year: string) => cheapestStory(reasoner, evidence, itemsOf(reasoner, evidence), [['year', [year]]])

  it('one donor explains both late parts on an early car', () => {
    const story = told('early')
    expect(story?.donors).toEqual([{ donor: 'drivetrain', kind: 'late' }])
    expect(story?.steps.map(({ how }) => how)).toEqual(['off the donor', 'off the donor'])
    expect(story?.factsWrong).toEqual([])
    // Worked by hand: 0.05 · 0.99² against 0.95 · (0.979 · 0.99)², the doubtful list standing in both.
    expect(story?.decibansBehind).toBeCloseTo(10 * Math.log10((0.95 * (0.979 * 0.99) ** 2) / (0.05 * 0.99 ** 2)), 9)
  })
  it('the best story of all needs nothing', () => {
    expect(told('late')).toMatchObject({
      decibansBehind: 0,
      donors: [],
      build: { year: 'late', engine: 'B', box: 'B' },
    })
    expect(told('late')?.steps.map(({ how }) => how)).toEqual(['as built', 'as built'])
  })
})
