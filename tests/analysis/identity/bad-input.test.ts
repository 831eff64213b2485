import { describe, expect, it } from 'vitest'
import { answerIdentity } from '../../../electron/analysis/identity/answer-identity.ts'
import { identityInput } from '../../../shared-types/identity-answer.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'

const sound = {
  variables: [
    { name: 'plant', values: ['Ost', 'West'] },
    { name: 'lamp', values: ['round', 'square'] },
  ],
}
const ask = (model: object, evidence: object = {}) =>
  answerIdentity(identityInput.parse({ model: { ...sound, ...model }, evidence }))
const problemOf = (act: () => unknown) => {
  try {
    act()
  } catch (fault) {
    if (fault instanceof ProblemError) return fault.problem
    throw fault
  }
  throw new Error('It was let through.')
}
const rule = (id: string, variable: string, value: string) => ({ id, thenAny: [[variable, [value]]] })
const claim = (id: string, repeats: string | null) => ({
  id,
  says: [['plant', ['Ost']]],
  saidWhenTrue: 0.9,
  saidWhenFalse: 0.1,
  repeats,
})

describe('what does not fit together is refused with place and cure', () => {
  it.each([
    [
      'unknown variable',
      { rules: [rule('r', 'plnat', 'Ost')] },
      /no variable “plnat”. Did you mean plant/,
      'rules[0] r.thenAny',
    ],
    ['unknown value', { rules: [rule('r', 'plant', 'Nord')] }, /no value of plant “Nord”/, 'rules[0] r.thenAny'],
    [
      'two rules with one id',
      { rules: [rule('r', 'plant', 'Ost'), rule('r', 'plant', 'Ost')] },
      /“r” is there twice/,
      'rules[1]',
    ],
    [
      'a variable twice',
      { variables: [...sound.variables, ...sound.variables] },
      /“plant” is there twice/,
      'variables[2]',
    ],
    [
      'rules that forbid everything',
      { rules: [rule('r', 'plant', 'Ost'), rule('s', 'plant', 'West')] },
      /forbid every build/,
      'rules',
    ],
    ['a rule that forbids everything by itself', { rules: [{ id: 'r' }] }, /forbid every build/, 'rules'],
    [
      'a table of the wrong length',
      { tables: [{ id: 't', scope: ['plant'], weights: [1, 2, 3] }] },
      /3 numbers.*2 combinations/,
      'tables[0] t',
    ],
    ['weights all 0', { tables: [{ id: 't', scope: ['plant'], weights: [0, 0] }] }, /weights are 0/, 'tables[0] t'],
    [
      'counts all 0',
      { accounts: [{ id: 'a', reliability: 1, tables: [{ id: 't', scope: ['plant'], counts: [0, 0] }] }] },
      /counts are 0/,
      'accounts[0] a, table t',
    ],
    [
      'counts that cannot all be true',
      {
        rules: [{ id: 'r', ifs: [['plant', ['Ost']]], thenAny: [['lamp', ['round']]] }],
        accounts: [
          {
            id: 'a',
            reliability: 1,
            tables: [
              { id: 't', scope: ['plant'], counts: [90, 10] },
              { id: 'u', scope: ['lamp'], counts: [50, 50] },
            ],
          },
        ],
      },
      /cannot all be true at once/,
      'accounts.a',
    ],
    [
      'donor shares above 1',
      {
        donors: [
          {
            id: 'd',
            kinds: [
              { id: 'x', share: 0.7, fitted: {} },
              { id: 'y', share: 0.7, fitted: {} },
            ],
          },
        ],
      },
      /add up to 1.4/,
      'donors[0] d',
    ],
  ])('%s', (_, model, message, field) => {
    const problem = problemOf(() => ask(model))
    expect(problem.message).toMatch(message)
    expect(problem).toMatchObject({ code: 'input-refused', field })
  })

  it('claims that repeat each other in a circle', () => {
    const problem = problemOf(() => ask({}, { claims: [claim('c1', 'c2'), claim('c2', 'c1')] }))
    expect(problem.message).toMatch(/in a circle/)
  })
  it('an unknown tell, an unknown outcome', () => {
    expect(problemOf(() => ask({}, { readings: [{ id: 'x', tell: 'horn', seen: { loud: 1 } }] })).message).toMatch(
      /no tell “horn”/,
    )
    const tells = [{ id: 'lamp', variable: 'lamp', reads: { kind: 'part' } }]
    const problem = problemOf(() => ask({ tells }, { readings: [{ id: 'x', tell: 'lamp', seen: { oval: 1 } }] }))
    expect(problem).toMatchObject({ field: 'readings.x.seen' })
  })
  it.each([
    [
      'a million values',
      { variables: [{ name: 'day', values: Array.from({ length: 1_000_000 }, (_, at) => `${at}`) }] },
    ],
    [
      'a negative count',
      { accounts: [{ id: 'a', reliability: 1, tables: [{ id: 't', scope: ['plant'], counts: [-1, 2] }] }] },
    ],
    ['a share above 1', { doubts: [{ id: 'd', holds: 1.2 }] }],
    ['a weight that is no number', { tables: [{ id: 't', scope: ['plant'], weights: [Number.NaN, 1] }] }],
  ])('%s is refused by the schema', (_, model) => {
    expect(identityInput.safeParse({ model: { ...sound, ...model } }).success).toBe(false)
  })
})

describe('claims', () => {
  const shareOfOst = (claims: readonly object[]) => ask({}, { claims }).posterior?.variables.plant?.Ost
  it('a claim that repeats another is no second witness', () => {
    expect(shareOfOst([claim('c1', null), claim('c2', 'c1')])).toBeCloseTo(shareOfOst([claim('c1', null)]) ?? 0, 12)
    expect(shareOfOst([claim('c1', null)])).toBeCloseTo(0.9, 12)
    // Two that stand alone: odds 9 · 9.
    expect(shareOfOst([claim('c1', null), claim('c2', null)])).toBeCloseTo(81 / 82, 12)
  })
})
