import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  assignedValue,
  checkCharacter,
  IDENTIFICATION_ALPHABET,
  PLACE_WEIGHTS,
  sumOfProducts,
} from '../../../electron/analysis/dating/check-digit.ts'
import { checkIdentificationNumber } from '../../../electron/analysis/dating/identification-number.ts'
import { identificationNumber } from '../../../shared-types/dating.ts'

const ask = (asRead: string, more: object = {}) =>
  checkIdentificationNumber(
    identificationNumber.input.parse({
      asRead,
      market: 'United States',
      vehicle: 'car or light vehicle up to 4536 kg',
      ...more,
    }),
  )
const result = (answer: ReturnType<typeof ask>, id: string) => answer.checks.find((each) => each.id === id)?.result

describe('sum of products and check digit', () => {
  it.each([
    // 49 CFR 565.15(c), table VI: the worked example of the rule, products summed to 411.
    ['1G4AH59H45G118341', 411, '4'],
    // NHTSA, Outline for New Manufacturer Information: remainder 6/11, decimal .545.
    ['1J9RP1A36A1644345', 314, '6'],
    // Widely reprinted example with a check digit of ten.
    ['1M8GDM9AXKP042788', 351, 'X'],
    // All ones: degenerate, and right.
    ['11111111111111111', 89, '1'],
  ])('%s sums to %i and asks for %s', (number, sum, check) => {
    expect(sumOfProducts(number)).toBe(sum)
    expect(checkCharacter(sum)).toBe(check)
    expect(result(ask(number), 'check digit')).toBe('passes')
  })

  it('fails when the digit of the rule’s example is another one, and only where it is law', () => {
    const wrong = '1G4AH59H55G118341'
    expect(result(ask(wrong), 'check digit')).toBe('fails')
    // ISO 3779 and the rules of Europe ask for no check digit.
    expect(result(ask(wrong, { market: 'elsewhere' }), 'check digit')).toBe('does not apply')
    expect(result(ask(wrong, { market: 'not known' }), 'check digit')).toBe('does not apply')
    expect(JSON.stringify(ask(wrong))).not.toMatch(/forged|fake/i)
  })

  it('finds every substitution of another value and none of the same value', () => {
    // Weights of 2 to 10 are all coprime to 11; letters share values, so that A for J cannot be seen.
    const place = fc.constantFrom(...PLACE_WEIGHTS.flatMap((weight, at) => (weight === 0 ? [] : [at])))
    fc.assert(
      fc.property(place, fc.constantFrom(...IDENTIFICATION_ALPHABET), (at, other) => {
        const number = '1G4AH59H45G118341'
        const changed = number.slice(0, at) + other + number.slice(at + 1)
        const same = assignedValue(other) === assignedValue(number[at] ?? '')
        expect(checkCharacter(sumOfProducts(changed)) === '4').toBe(same)
      }),
    )
  })
})

describe('model year', () => {
  it.each([
    // 49 CFR 565.15(d)(1), table VII; a figure in position 7 means the years to 2009, a letter those from 2010.
    ['1G4AH59H45G118341', [2005]],
    ['1M8GDM9AXKP042788', [1989]],
    ['1J9RP1A36A1644345', [2010]],
  ])('%s', (number, years) => expect(ask(number).modelYears).toEqual(years))

  it('keeps both cycles where position 7 does not count', () => {
    expect(ask('1M8GDM9AXKP042788', { vehicle: 'other' }).modelYears).toEqual([1989, 2019])
    expect(ask('1M8GDM9AXKP042788', { vehicle: 'other', modelYearTo: 1999 }).modelYears).toEqual([1989])
  })

  it('refuses U as a year code', () => {
    expect(result(ask('1M8GDM9AXUP042788'), 'model year')).toBe('fails')
    expect(result(ask('1M8GDM9AXUP042788', { market: 'elsewhere' }), 'model year')).toBe('does not apply')
  })
})

describe('earlier and other numbers', () => {
  it('nothing applies to a car of before model year 1981, whatever the length', () => {
    for (const number of ['4G37K4N118341', '1G4AH59H45G118341']) {
      const { checks } = ask(number, { modelYearTo: 1974 })
      expect(checks.map((each) => each.result)).toEqual(Array(4).fill('does not apply'))
    }
  })
  it('names a maker of few vehicles with positions 12 to 14', () => {
    expect(ask('1J9RP1A36A1644345')).toMatchObject({ lowVolumeMaker: true, makerCode: '1J9 644' })
  })
  it('names characters that cannot stand there', () => {
    const answer = ask('1G4AH59H45G11834O')
    expect(answer.checks[0]).toMatchObject({ result: 'fails' })
    expect(answer.checks[0]?.because).toContain('O')
  })
  it('refuses nothing at all with a cure', () => expect(() => ask(' - ')).toThrow(/with \? for each/))
})

describe('unreadable characters', () => {
  it('one figure of the serial comes back alone, since the check digit settles it', () => {
    expect(ask('1G4AH59H45G1183?1').completions).toEqual(['1G4AH59H45G118341'])
  })
  it('agree with trying all characters, for two places', () => {
    const found = ask('1?4AH59H45G11?341', { maxCompletions: 5000 })
    const tried = [...IDENTIFICATION_ALPHABET].flatMap((one) =>
      [...'0123456789'].map((other) => `1${one}4AH59H45G11${other}341`),
    )
    const right = tried.filter((number) => checkCharacter(sumOfProducts(number)) === number[8])
    expect([...found.completions].sort()).toEqual(right.sort())
    expect(found.completionCount).toBe(String(right.length))
    expect(found.bounded).toBe(false)
  })
  it('an unreadable check digit is worked out', () => {
    expect(ask('1G4AH59H?5G118341').completions).toEqual(['1G4AH59H45G118341'])
  })
  it('elsewhere all 33 characters of the format are possible', () => {
    expect(ask('1G4AH59H45G1183?1', { market: 'elsewhere' }).completionCount).toBe('33')
  })
  it('says when it does not list all, and counts them all the same', () => {
    const found = ask('?????????????????', { market: 'elsewhere', maxCompletions: 10 })
    expect(found).toMatchObject({ bounded: true, completionCount: (33n ** 17n).toString() })
    expect(found.completions).toHaveLength(10)
  })
})
