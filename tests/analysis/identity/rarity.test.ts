import { describe, expect, it } from 'vitest'
import { indexModel } from '../../../electron/analysis/identity/index-model.ts'
import { rarity } from '../../../electron/analysis/identity/rarity.ts'
import { identityModel } from '../../../shared-types/identity-model.ts'
import { chanceFrom } from './random-models.ts'

const yesNo = (name: string) => ({ name, values: ['yes', 'no'] })
const table = (scope: readonly string[], counts: readonly number[]) => ({ id: scope.join('-'), scope, counts })
const withTables = (tables: readonly object[], rules: readonly object[] = [], second: readonly object[] = []) =>
  indexModel(
    identityModel.parse({
      variables: [yesNo('a'), yesNo('b'), yesNo('c')],
      rules,
      accounts: [
        { id: 'works', reliability: 1, tables },
        ...(second.length > 0 ? [{ id: 'club', reliability: 1, tables: second }] : []),
      ],
    }),
  )

describe('number built like this car', () => {
  it('two options counted apart are bounded, not multiplied: 700 and 600 of 1000 are 300 to 600 together', () => {
    const found = rarity(withTables([table(['a'], [700, 300]), table(['b'], [600, 400])]), [
      ['a', ['yes']],
      ['b', ['yes']],
    ])
    expect(found).toMatchObject({ low: 300, high: 600, boundsOnly: true, neverBuilt: false })
  })
  it('bounds are taken inside an option both tables share', () => {
    const tables = [table(['a', 'b'], [80, 20, 500, 400]), table(['a', 'c'], [70, 30, 1, 899])]
    const all = ['a', 'b', 'c'].map((name) => [name, ['yes']] as const)
    expect(rarity(withTables(tables), all)).toMatchObject({ low: 50, high: 70 })
  })
  it('an option no account counts leaves nothing but an upper bound', () => {
    const found = rarity(withTables([table(['a'], [700, 300])]), [
      ['a', ['yes']],
      ['c', ['yes']],
    ])
    expect(found).toMatchObject({ low: 0, high: 700, boundsOnly: true })
    expect(found.accounts[0]?.notCounted).toEqual(['c'])
  })
  it('what the rules imply needs no count, what they forbid was never built', () => {
    const rule = { id: 'r', ifs: [['a', ['yes']]], thenAny: [['b', ['yes']]] }
    const model = withTables([table(['a'], [700, 300])], [rule])
    expect(
      rarity(model, [
        ['b', ['yes']],
        ['a', ['yes']],
      ]),
    ).toMatchObject({ low: 700, high: 700, boundsOnly: false })
    expect(
      rarity(model, [
        ['a', ['yes']],
        ['b', ['no']],
      ]),
    ).toMatchObject({ low: 0, high: 0, neverBuilt: true })
  })
  it('accounts that disagree give a range', () => {
    const model = withTables([table(['a'], [350, 24_650])], [], [table(['a'], [1650, 23_350])])
    expect(rarity(model, [['a', ['yes']]])).toMatchObject({ low: 350, high: 1650, boundsOnly: false })
  })
  it('bounds hold the true number, on 500 drawn productions', () => {
    const chance = chanceFrom(9)
    for (let draw = 0; draw < 500; draw++) {
      const built = Array.from({ length: 8 }, () => chance.below(100))
      const sum = (keep: (cell: number) => boolean) => built.reduce((total, n, cell) => total + (keep(cell) ? n : 0), 0)
      const bit = (cell: number, at: number) => (cell >> at) & 1
      const pair = (one: number, other: number) =>
        [0, 1, 2, 3].map((want) => sum((cell) => bit(cell, one) === want >> 1 && bit(cell, other) === (want & 1)))
      const found = rarity(withTables([table(['a', 'b'], pair(0, 1)), table(['a', 'c'], pair(0, 2))]), [
        ['a', ['yes']],
        ['b', ['yes']],
        ['c', ['yes']],
      ])
      expect(found.low).toBeLessThanOrEqual(built[0] ?? 0)
      expect(found.high).toBeGreaterThanOrEqual(built[0] ?? 0)
    }
  })
})
