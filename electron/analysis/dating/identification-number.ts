import type { z } from 'zod'
import type { identificationNumber, NumberCheck } from '../../../shared-types/dating.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { checkCharacter, IDENTIFICATION_ALPHABET, sumOfProducts, UNREADABLE } from './check-digit.ts'
import { modelYears, type NumberQuestion, YEAR_CODES } from './model-year-code.ts'
import { completionsOf } from './number-completions.ts'

type Answer = z.infer<typeof identificationNumber.output>

const LENGTH = 17
/** First model year of the fixed format (43 FR 36448). */
export const FIRST_MODEL_YEAR = 1981
const rule = '49 CFR 565.15'

/** A number as it is compared: capitals, without spaces, points and hyphens. */
export const plainIdentificationNumber = (written: string): string => written.toUpperCase().replace(/[\s.·-]/g, '')

/**
 * A number of the 17-character format: which checks of 49 CFR part 565 pass, fail or do not apply, what position 10 can
 * mean, and all numbers that fill places that could not be read. A failing check says that the characters as read do
 * not agree with the rule, and nothing of why.
 * @throws ProblemError when a character is neither of the format nor marked unreadable.
 */
export function checkIdentificationNumber(question: NumberQuestion): Answer {
  const number = plainIdentificationNumber(question.asRead)
  const early = whyTooEarly(number, question)
  if (early !== null) return withoutFormat(number, early)
  const foreign = [...number].filter((one) => one !== UNREADABLE && !IDENTIFICATION_ALPHABET.includes(one))
  const checks: NumberCheck[] = [alphabetCheck(foreign)]
  const nothing = { normalised: number, makerCode: null, lowVolumeMaker: null, completions: [], modelYears: [] }
  if (foreign.length > 0) return { ...nothing, checks, completionCount: '0', bounded: false }
  const lawful = question.market === 'United States' || question.market === 'Canada'
  const years = modelYears(number, question)
  checks.push(checkDigit(number, question), years.check, serialCheck(number, question))
  const { list, count } = number.includes(UNREADABLE)
    ? completionsOf(number, allowedAt(lawful, number, question), lawful, question.maxCompletions)
    : { list: [], count: 0n }
  const third = number[2]
  return {
    normalised: number,
    checks,
    modelYears: years.years,
    makerCode: makerCode(number),
    lowVolumeMaker: third === UNREADABLE ? null : third === '9',
    completions: list,
    completionCount: count.toString(),
    bounded: count > BigInt(list.length),
  }
}

function whyTooEarly(number: string, { modelYearTo }: NumberQuestion): string | null {
  if (number.length === 0) {
    throw new ProblemError('input-refused', 'Enter the characters as read, with ? for each one that cannot be read.', {
      field: 'asRead',
    })
  }
  if (modelYearTo !== null && modelYearTo < FIRST_MODEL_YEAR)
    return 'The format of 17 characters was asked for from model year 1981; an earlier number is read by the grammar of its sheet.'
  if (number.length !== LENGTH)
    return `The number has ${number.length} characters, not 17: read again, or read it by the grammar of its sheet if the car is of before 1981.`
  return null
}

function withoutFormat(number: string, because: string): Answer {
  const ids = ['characters', 'check digit', 'model year', 'serial figures']
  return {
    normalised: number,
    checks: ids.map((id) => ({
      id,
      result: 'does not apply' as const,
      because,
      source: '43 FR 36448; 49 CFR part 565',
    })),
    modelYears: [],
    makerCode: null,
    lowVolumeMaker: null,
    completions: [],
    completionCount: '0',
    bounded: false,
  }
}

const alphabetCheck = (foreign: readonly string[]): NumberCheck => ({
  id: 'characters',
  result: foreign.length === 0 ? 'passes' : 'fails',
  because:
    foreign.length === 0
      ? 'All characters that could be read are of the format.'
      : `${[...new Set(foreign)].join(', ')} cannot stand in such a number; I, O and Q were left out because they look like 1 and 0. Look again.`,
  source: '49 CFR 565.13(g); ISO 3779:2009',
})

function checkDigit(number: string, { market }: NumberQuestion): NumberCheck {
  const base = { id: 'check digit', source: `${rule}(c)` }
  if (number.includes(UNREADABLE))
    return {
      ...base,
      result: 'does not apply',
      because: 'Not every character could be read; the completions take it into account where it is law.',
    }
  const sum = sumOfProducts(number)
  const wanted = checkCharacter(sum)
  const agrees = wanted === number[8]
  const worked = `Sum of products ${sum}, remainder by 11 is ${sum % 11}: position 9 should be ${wanted} and is ${number[8]}.`
  if (market === 'elsewhere')
    return {
      ...base,
      result: 'does not apply',
      because: `Outside the United States and Canada no check digit is asked for. ${worked}`,
    }
  if (market === 'not known')
    return {
      ...base,
      result: 'does not apply',
      because: `The market of first sale is not known; enter it to have this judged. ${worked}`,
    }
  return { ...base, result: agrees ? 'passes' : 'fails', because: worked }
}

function serialCheck(number: string, { vehicle, market }: NumberQuestion): NumberCheck {
  const base = { id: 'serial figures', source: `${rule}(d)` }
  if (market !== 'United States' && market !== 'Canada')
    return {
      ...base,
      result: 'does not apply',
      because: 'The places that must be figures are a rule of the United States and Canada.',
    }
  if (vehicle === 'not known')
    return {
      ...base,
      result: 'does not apply',
      because: 'The weight class is not known; it says whether four or five places are figures.',
    }
  const figures = serialPlaces(vehicle, number[2] ?? '')
  const fits = /^[0-9?]+$/.test(number.slice(LENGTH - figures))
  return {
    ...base,
    result: fits ? 'passes' : 'fails',
    because: `The last ${figures} characters must be figures${fits ? '' : ' and are not all'}.`,
  }
}

/** Where a maker of few vehicles has its code in positions 12 to 14, only the last three are left for figures. */
const serialPlaces = (vehicle: NumberQuestion['vehicle'], third: string): number => {
  if (third === '9' || third === UNREADABLE) return 3
  return vehicle === 'car or light vehicle up to 4536 kg' ? 5 : 4
}

/** First three characters; with 9 in third place, positions 12 to 14 complete the code of a maker of few vehicles. */
function makerCode(number: string): string | null {
  const first = number.slice(0, 3)
  if (first.includes(UNREADABLE)) return null
  return first.endsWith('9') ? `${first} ${number.slice(11, 14)}` : first
}

function allowedAt(lawful: boolean, number: string, { vehicle }: NumberQuestion): readonly string[] {
  return Array.from({ length: LENGTH }, (_, place) => {
    if (!lawful) return IDENTIFICATION_ALPHABET
    if (place === 8) return '0123456789X'
    if (place === 9) return YEAR_CODES
    const figures = serialPlaces(vehicle, number[2] ?? '')
    return place >= LENGTH - figures ? '0123456789' : IDENTIFICATION_ALPHABET
  })
}
