import { describe, expect, test } from 'vitest'
import { answerIdentity } from '../../../electron/analysis/identity/answer-identity.ts'
import { type CompiledSheets, compileSheets } from '../../../electron/sheets/reference/compile-sheets.ts'
import { identityInput } from '../../../shared-types/identity-answer.ts'
import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import { type Build, everyBuild, isLegal, posteriorByHand } from './direct-reading.ts'
import { sheetFrom, smallSheetText } from './small-sheets.ts'

const small = sheetFrom(smallSheetText)

function modelOf({ model, problems }: CompiledSheets) {
  if (model === null) throw new Error(JSON.stringify(problems))
  return model
}

function answer(sheet: ReferenceSheet, read: Readonly<Record<string, string>>) {
  const model = modelOf(compileSheets([sheet]))
  const readings = Object.entries(read).map(([tell, value]) => ({
    id: tell,
    tell: `${sheet.sheetId}/${tell}`,
    seen: { [value]: 1 },
  }))
  return answerIdentity(identityInput.parse({ model, evidence: { readings } }))
}

const tellsRead = (sheet: ReferenceSheet, read: Readonly<Record<string, string>>) =>
  Object.entries(read).flatMap(([id, value]) => {
    const tell = sheet.tells.find((each) => each.id === id)
    return tell === undefined ? [] : [[tell, value] as const]
  })

describe('a small sheet against its words gone through build by build', () => {
  const uncounted = { ...small, counts: [] }

  test('exactly the builds its rules allow are counted', () => {
    const legal = everyBuild(small).filter((build) => isLegal(small, build))
    // 3 quarters: plain with three speeds; fine with four; fine with overdrive from the second quarter on.
    expect(legal).toHaveLength(3 + 3 + 2)
    expect(answer(uncounted, {}).legalBuilds).toBe('8')
    expect(answer(small, {}).legalBuilds).toBe('8')
  })

  /** Overdrive is on a fifth of fine cars from the second quarter on; the rest have the standard box. */
  const option = ({ series, gearbox, built }: Build): number =>
    series === 'plain' ? 1 : built === 'q1' ? 1 : gearbox === 'overdrive' ? 0.2 : 0.8

  test('an option keeps its share and takes nothing from days on which it was not offered', () => {
    const { prior } = answer(uncounted, {})
    const byHand = posteriorByHand(uncounted, option, [])
    for (const variable of ['built', 'series', 'gearbox'])
      for (const [value, share] of Object.entries(byHand[variable] ?? {}))
        expect(prior.variables[`teasel/${variable}`]?.[value]).toBeCloseTo(share, 12)
    expect(prior.variables['teasel/gearbox']?.overdrive).toBeCloseTo((0.5 * 2 * 0.2) / 3, 12)
  })

  test.each([
    { bracket: 'welded' },
    { bracket: 'screwed' },
    { box: 'three' },
    { bracket: 'welded', box: 'overdrive' },
    { bracket: 'screwed', box: 'four' },
  ])('after reading %j every variable has the share found by hand', (read) => {
    const seen = answer(uncounted, read).posterior?.variables
    const byHand = posteriorByHand(uncounted, option, tellsRead(uncounted, read))
    for (const variable of ['built', 'series', 'gearbox'])
      for (const [value, share] of Object.entries(byHand[variable] ?? {}))
        expect(Math.abs((seen?.[`teasel/${variable}`]?.[value] ?? -1) - share)).toBeLessThan(1e-12)
  })

  test('a change on 15 May falls into the second quarter: 45 of its 91 days are before it', () => {
    const model = modelOf(compileSheets([small]))
    const mixture = model.variables.find(({ name }) => name === 'tell teasel/bracket')?.values.at(-1)
    expect(mixture).toContain(`welded ${Number(((100 * 45) / 91).toPrecision(12))}`.slice(0, 14))
  })

  test('each source has its own account, met exactly and weighed by how sure it is', () => {
    const { prior } = answer(small, {})
    const [ledger, returns] = prior.accounts
    expect(prior.accounts.map(({ id }) => id)).toEqual(['teasel/ledger', 'teasel/returns'])
    expect(ledger?.priorShare).toBeCloseTo(0.8 / 1.2, 12)
    expect(ledger?.variables?.['teasel/series']?.plain).toBeCloseTo(0.75, 12)
    expect(returns?.variables?.['teasel/built']?.q3).toBeCloseTo(150 / 400, 12)
  })
})

test('a count with one named cell and a number for all others is met exactly', () => {
  const count = {
    id: 'fours',
    source: 'ledger',
    note: '',
    name: 'Fine cars with four speeds',
    account: null,
    cells: [{ when: { series: ['fine'], gearbox: ['four'] }, built: 30 }],
    others: 370,
  }
  const { posterior } = answer({ ...small, counts: [count] }, {})
  // Four speeds are on fine cars alone.
  expect(posterior?.variables['teasel/gearbox']?.four).toBeCloseTo(30 / 400, 12)
})

describe('what the model rests on', () => {
  const compiled = compileSheets([small])
  const model = modelOf(compiled)

  test('every clause, table, count, tell and donor names its fact, and the source or that there is none', () => {
    const ids = [
      ...model.rules.map(({ id }) => id),
      ...model.tables.map(({ id }) => id),
      ...model.accounts.flatMap(({ tables }) => tables.map(({ id }) => id)),
      ...model.tells.map(({ id }) => id),
      ...model.donors.map(({ id }) => id),
    ]
    for (const id of ids) expect(compiled.cites.get(id)?.length, id).toBeGreaterThan(0)
    expect(model.rules.find(({ id }) => id === 'teasel/no-plain-four')?.source).toBe('Works, Ledger, 4 (invented)')
    expect(compiled.cites.get('shares of teasel/gearbox')).toEqual([
      { sheetId: 'teasel', factId: 'overdrive-option', source: null },
    ])
    expect(model.rules.find(({ id }) => id.startsWith('teasel/overdrive-option'))?.source).toBe('no source')
  })

  test('a contradiction is told in facts of the sheet', () => {
    const { conflicts } = answerIdentity(
      identityInput.parse({
        model,
        evidence: {
          certain: [
            {
              id: 'seen',
              says: [
                ['teasel/series', ['plain']],
                ['teasel/gearbox', ['four']],
              ],
            },
          ],
        },
      }),
    )
    expect(conflicts.conflicts).toEqual([
      [
        { id: 'teasel/no-plain-four', kind: 'rule', source: 'Works, Ledger, 4 (invented)' },
        { id: 'seen', kind: 'certain', source: '' },
      ],
    ])
  })

  test('a rule that is only partly sure can be wrong', () => {
    const rules = small.rules.map((rule) => (rule.id === 'no-plain-four' ? { ...rule, surePercent: 90 } : rule))
    const doubtful = { ...small, counts: [], rules }
    const { prior } = answer(doubtful, {})
    expect(prior.doubts).toHaveProperty('doubt teasel/no-plain-four')
    expect(prior.variables['teasel/gearbox']?.four).toBeGreaterThan(
      answer({ ...small, counts: [] }, {}).prior.variables['teasel/gearbox']?.four ?? 1,
    )
  })
})
