import { describe, expect, it } from 'vitest'
import { answerIdentity } from '../../../electron/analysis/identity/answer-identity.ts'
import { compileSheets } from '../../../electron/sheets/reference/compile-sheets.ts'
import { shippedSheets } from '../../../electron/sheets/reference/shipped-sheets.ts'
import type { IdentityModel } from '../../../shared-types/identity-model.ts'

const era = shippedSheets().find(({ sheet }) => sheet.sheetId === 'era')?.sheet
if (era === undefined) throw new Error('The sheet of regulation and practice is not shipped.')
const { model, problems } = compileSheets([era])

/** Shares of every variable once the tells named were seen as said; `known` is what is known of the build. */
function shares(seen: Readonly<Record<string, string>>, known: readonly [string, string][] = []) {
  const answer = answerIdentity({
    model: model as IdentityModel,
    evidence: {
      readings: Object.entries(seen).map(([tell, value]) => ({ id: tell, tell: `era/${tell}`, seen: { [value]: 1 } })),
      observations: known.map(([variable, value]) => ({
        id: variable,
        variable: `era/${variable}`,
        likelihood: { [value]: 1 },
      })),
      claims: [],
      certain: [],
    },
    question: { about: 'build' },
    statement: null,
    statements: [],
    chains: null,
    likeliest: [],
    inOrder: false,
    options: null,
    builds: 0,
  })
  if (answer.posterior === null) return null
  const { variables } = answer.posterior
  const built = (first: number, last: number): number =>
    Object.entries(variables['era/built'] ?? {})
      .filter(([year]) => Number(year.slice(1)) >= first && Number(year.slice(1)) <= last)
      .reduce((sum, [, share]) => sum + share, 0)
  return { built, market: variables['era/first-market'] ?? {} }
}

describe('the sheet of regulation and practice', () => {
  it('holds together, and favours no year and no market before anything is seen', () => {
    expect(problems).toEqual([])
    const nothing = shares({})
    expect(nothing?.built(1945, 1954)).toBeCloseTo(10 / 46, 12)
    expect(nothing?.built(1981, 1990)).toBeCloseTo(10 / 46, 12)
    expect(nothing?.market['great-britain']).toBeCloseTo(1 / 3, 12)
  })

  it('says of every fact where it comes from, and of recalled ones that they are', () => {
    const sources = new Map(era.sources.map((source) => [source.id, source]))
    const facts = [...era.tells, ...era.rules]
    expect(facts.filter(({ source }) => source === null || !sources.has(source))).toEqual([])
    for (const source of era.sources.filter(({ learned }) => learned === 'recalled'))
      expect(source.where).toMatch(/^Recalled; open the text/)
    expect(era.sources.some(({ learned }) => learned === 'recalled')).toBe(true)
  })

  it('keeps accounts that disagree on a day as an interval, with both in words', () => {
    const disagreeing = era.sources.filter(({ note }) => note.startsWith('Accounts disagree'))
    expect(disagreeing.length).toBeGreaterThan(5)
    const number = era.tells.find(({ id }) => id === 'gb-identification-number')
    expect(number?.how).toMatch(/April or August 1980/)
  })

  // 49 CFR 571.108 with its history: lamps on the flanks of cars made from 1 January 1969, in the United States alone.
  it('counts a missing duty only where and when the rule held', () => {
    /** Weight of a market against what it had before, once the lamps were looked for in vain. */
    const odds = (market: string, year: number): number =>
      (shares({ 'side-marker-lamps': 'absent' }, [['built', `y${year}`]])?.market[market] ?? 0) * 3
    expect(odds('united-states', 1972)).toBeLessThan(0.5)
    expect(odds('elsewhere', 1972)).toBeGreaterThan(1)
    expect(odds('united-states', 1960)).toBeCloseTo(1, 9)
  })

  // Construction and Use Regulations 1986, regulation 46: by first use in Great Britain, not by build.
  it('meets a rule of first use with the year of first use, so that the year before it is caught in part', () => {
    const inches = (year: number): number =>
      shares({ 'gb-front-anchorages': 'absent' }, [['built', `y${year}`]])?.market['great-britain'] ?? 0
    expect(inches(1960)).toBeCloseTo(1 / 3, 9)
    expect(inches(1964)).toBeLessThan(1 / 3)
    expect(inches(1966)).toBeLessThan(inches(1964))
  })

  it('lets a mark date its part and never the car', () => {
    const marked = shares({ 'dot-on-glass': 'there' })
    const before = (marked?.built(1945, 1972) ?? 0) / (28 / 46)
    expect(before).toBeGreaterThan(0.5)
    expect(before).toBeLessThan(1)
    const certain = shares({ 'dot-on-glass': 'there', 'approval-r43': 'there' }, [['built', 'y1955']])
    expect(certain).not.toBeNull()
  })
})
