import fc from 'fast-check'
import { expect, test } from 'vitest'
import { answerIdentity } from '../../../electron/analysis/identity/answer-identity.ts'
import { compileSheets } from '../../../electron/sheets/reference/compile-sheets.ts'
import { identityInput } from '../../../shared-types/identity-answer.ts'
import { type ReferenceSheet, referenceSheet } from '../../../shared-types/reference-sheet.ts'
import { everyBuild, isLegal, posteriorByHand } from './direct-reading.ts'

/*
 * Small invented lines made at random, each compiled and asked by the engine, and gone through build by build from the
 * words of the sheet: both must say the same.
 */

const values = ['a', 'b', 'c']
const quarters = [
  { id: 'q1', name: 'q1', from: '1958-01-01', to: '1958-03-31' },
  { id: 'q2', name: 'q2', from: '1958-04-01', to: '1958-06-30' },
  { id: 'q3', name: 'q3', from: '1958-07-01', to: '1958-09-30' },
]
const choice = (id: string) => ({ id, name: id, values: values.map((value) => ({ id: value, name: value })) })
const day = fc.constantFrom(null, '1958-02-10', '1958-04-01', '1958-06-30', '1958-08-20')
const set = fc.subarray(values, { minLength: 1, maxLength: 2 })
const quarterSet = fc.subarray(['q1', 'q2', 'q3'], { minLength: 1, maxLength: 2 })
const condition = fc.dictionary(fc.constantFrom('x', 'y', 'z'), set, { minKeys: 1, maxKeys: 2, noNullPrototype: true })
const anyCondition = fc.oneof(
  condition,
  fc.tuple(condition, quarterSet).map(([own, built]) => ({ ...own, built })),
)
const days = fc
  .tuple(day, day)
  .map(([one, other]) =>
    one !== null && other !== null && one > other ? { from: other, until: one } : { from: one, until: other },
  )
const rule = fc.oneof(
  fc.tuple(anyCondition, days).map(([when, own]) => ({ kind: 'not built together', when, ...own })),
  fc.tuple(anyCondition, condition, days).map(([when, needs, own]) => ({ kind: 'requires', when, needs, ...own })),
  fc
    .tuple(fc.constantFrom('only from', 'only until'), condition, fc.constantFrom('1958-02-10', '1958-06-30'))
    .map(([kind, when, own]) => ({ kind, when, day: own })),
  fc
    .tuple(fc.constantFrom('standard', 'option'), fc.constantFrom(...values), set, days)
    .map(([kind, value, x, own]) => ({ kind, variable: 'z', value, on: { x }, ...own })),
)
const tenths = fc.integer({ min: 0, max: 10 }).map((count) => count / 10)
const shown = fc.oneof(
  fc.constantFrom('one', 'two', 'three'),
  tenths.map((one) => ({ one, two: 1 - one })),
)
const cased = fc.record({
  cases: fc.array(
    fc.tuple(anyCondition, days, shown).map(([when, own, shows]) => ({ when, ...own, shows })),
    { minLength: 1, maxLength: 4 },
  ),
  otherwise: fc.option(shown, { nil: null }),
  misread: fc.oneof(fc.constantFrom(0, 0.03), fc.constant({ one: { one: 0.8, three: 0.2 } })),
  wrong: fc.constantFrom(0, 0.05),
  replaced: fc.option(fc.constant({ share: 0.2, by: { one: 0.25, three: 0.75 } }), { nil: null }),
  travelsWith: fc.constantFrom(null, 'breaker'),
})
type Cased = typeof cased extends fc.Arbitrary<infer Value> ? Value : never

const line = (rules: readonly object[], tell: Cased): ReferenceSheet =>
  referenceSheet.parse({
    form: 1,
    sheetId: 'teasel',
    title: 'Teasel',
    edition: '1',
    variables: [
      choice('x'),
      choice('y'),
      choice('z'),
      { id: 'built', name: 'built', kind: 'dates', basis: 'manufacture', values: quarters },
    ],
    rules: rules.map((each, at) => ({ id: `r${at}`, ...each })),
    tells: [
      {
        id: 'tell',
        name: 'tell',
        lookAt: '',
        where: { words: 'there' },
        effort: 1,
        access: 'from below',
        follows: {
          kind: 'by cases',
          values: ['one', 'two', 'three'].map((id) => ({ id, name: id })),
          cases: tell.cases,
          otherwise: tell.otherwise,
        },
        misread: tell.misread,
        wrong: tell.wrong,
        replaced: tell.replaced,
        travelsWith: tell.travelsWith,
      },
    ],
    donors: [
      {
        id: 'breaker',
        name: 'breaker',
        kinds: [{ id: 'van', name: 'van', share: 0.1, brings: tell.travelsWith === null ? {} : { tell: { two: 1 } } }],
      },
    ],
  })

test('what random lines say is what the engine answers: legal builds exactly, shares to 1e-12', () => {
  let impossible = 0
  fc.assert(
    fc.property(
      fc.array(rule, { maxLength: 5 }),
      cased,
      fc.constantFrom('one', 'two', 'three'),
      (rules, tell, read) => {
        const sheet = line(rules, tell)
        const { model, problems } = compileSheets([sheet])
        expect(problems.filter(({ severity }) => severity === 'error')).toEqual([])
        const legal = everyBuild(sheet).filter((build) => isLegal(sheet, build))
        const ask = () =>
          answerIdentity(
            identityInput.parse({
              model,
              evidence: { readings: [{ id: 'seen', tell: 'teasel/tell', seen: { [read]: 1 } }] },
            }),
          )
        if (legal.length === 0) {
          expect(ask).toThrow('forbid every build')
          return
        }
        const { legalBuilds, posterior } = ask()
        expect(legalBuilds).toBe(String(legal.length))
        const [own] = sheet.tells
        if (own === undefined) throw new Error('The sheet has lost its tell.')
        const byHand = posteriorByHand(sheet, () => 1, [[own, read]])
        if (posterior === null) {
          impossible += 1
          expect(Object.values(byHand.x ?? {}).every(Number.isNaN)).toBe(true)
          return
        }
        for (const { id, values: all } of sheet.variables)
          for (const { id: value } of all)
            expect(
              Math.abs((posterior.variables[`teasel/${id}`]?.[value] ?? -1) - (byHand[id]?.[value] ?? -2)),
            ).toBeLessThan(1e-12)
      },
    ),
    { numRuns: 150 },
  )
  expect(impossible).toBeLessThan(75)
})
