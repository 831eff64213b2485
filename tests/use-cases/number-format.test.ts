import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { assess } from '../../electron/use-cases/assess.ts'
import type { CarNumberDraft, Particulars } from '../../shared-types/car.ts'
import { beginning } from '../record/sample-record.ts'
import { type Survey, startSurvey } from './survey-program.ts'

let survey: Survey
beforeEach(async () => {
  survey = await startSurvey()
})
afterEach(() => survey.end())

const number = (asRead: string, more: Partial<CarNumberDraft> = {}): CarNumberDraft => ({
  kind: 'chassis plate',
  where: '',
  howRead: 'read character by character',
  asRead,
  onPaper: '',
  paper: '',
  exhibits: [],
  note: '',
  ...more,
})
const carOf = (more: Partial<Particulars>) =>
  survey.ask('particulars.set', { particulars: { ...beginning.particulars, ...more } })
const results = async () =>
  (await survey.ask('numbers.format', {})).numbers.map(({ checks }) => checks.map(({ id, result }) => [id, result]))

// 49 CFR 565.15(c), table VI: the worked example of the rule, and the same with another check digit.
const RULE = '1G4AH59H45G118341'
const OTHER_DIGIT = '1G4AH59H55G118341'

describe('numbers of 17 characters of a record', () => {
  it('do not apply to a car of before model year 1981, whatever they are, and the reason is given', async () => {
    await carOf({ builtFrom: '1960-01-01', builtTo: '1960-12-31', marketOfFirstSale: 'United States' })
    await survey.ask('carNumber.add', { draft: number(OTHER_DIGIT) })
    const { applies, numbers } = await survey.ask('numbers.format', {})
    expect(applies).toMatch(/from model year 1981 .* does not apply to a car built by 31 December 1960/)
    expect(numbers[0]?.checks.map(({ result }) => result)).toEqual(Array(4).fill('does not apply'))
    expect(numbers[0]?.checks[0]?.because).toMatch(/earlier number is read by the grammar of its sheet/)
  })

  it('pass and fail by market and build interval, and nothing is ever called forged', async () => {
    await carOf({ builtFrom: '2004-06-01', builtTo: '2005-06-30', marketOfFirstSale: 'United States' })
    await survey.ask('carNumber.add', { draft: number('1G4AH-59H4 5G118341') })
    await survey.ask('carNumber.add', { draft: number('', { onPaper: OTHER_DIGIT, howRead: 'from paper' }) })
    const [rule, other] = (await survey.ask('numbers.format', {})).numbers
    expect(rule).toMatchObject({ rows: [1], text: RULE, from: 'as read', modelYears: [2005], makerCode: '1G4' })
    expect(rule?.checks.map(({ id, result }) => [id, result])).toEqual([
      ['characters', 'passes'],
      ['check digit', 'passes'],
      ['model year', 'passes'],
      ['serial figures', 'passes'],
    ])
    expect(other).toMatchObject({ rows: [2], from: 'on paper' })
    expect(other?.checks[1]).toMatchObject({
      result: 'fails',
      because: expect.stringContaining('should be 4 and is 5'),
    })
    const { numberFormat } = await assess(survey.program)
    expect(numberFormat.numbers).toEqual([rule, other])
    expect(JSON.stringify(numberFormat)).not.toMatch(/forg|fake/i)
    // Rules outside the United States and Canada ask for no check digit (ISO 3779).
    await carOf({ builtFrom: '2004-06-01', builtTo: '2005-06-30', marketOfFirstSale: 'Ruritania' })
    expect((await results())[1]?.[1]).toEqual(['check digit', 'does not apply'])
    // A car built in 1991 cannot be of model year 2005.
    await carOf({ builtFrom: '1991-01-01', builtTo: '1991-12-31', marketOfFirstSale: 'Canada' })
    expect((await results())[0]?.[2]).toEqual(['model year', 'fails'])
  })

  it('give every completion of what could not be read, and leave other lengths alone', async () => {
    await carOf({ builtFrom: '2004-06-01', builtTo: null, marketOfFirstSale: 'USA' })
    await survey.ask('carNumber.add', { draft: number('1G4AH59H45G1183?1') })
    await survey.ask('carNumber.add', { draft: number('SC 11387') })
    const { numbers } = await survey.ask('numbers.format', {})
    expect(numbers).toHaveLength(1)
    expect(numbers[0]).toMatchObject({ completions: [RULE], completionCount: '1' })
    expect(numbers[0]?.checks[1]).toMatchObject({ id: 'check digit', result: 'does not apply' })
  })

  it('say that I, O and Q cannot stand there', async () => {
    await carOf({ builtFrom: '2004-06-01', marketOfFirstSale: 'USA' })
    await survey.ask('carNumber.add', { draft: number('1G4AH59H45G11834O') })
    expect(await results()).toEqual([[['characters', 'fails']]])
  })
})
