import type { z } from 'zod'
import type { identificationNumber, NumberCheck } from '../../../shared-types/dating.ts'
import { UNREADABLE } from './check-digit.ts'

export type NumberQuestion = z.infer<typeof identificationNumber.input>

/** Codes of position 10 for 1980 on; the row begins anew in 2010. No I, O, Q, U, Z, 0 (49 CFR 565.15(d)(1), table VII). */
export const YEAR_CODES = 'ABCDEFGHJKLMNPRSTVWXY123456789'
const CYCLES = [1980, 2010] as const

/**
 * Model years position 10 can mean. On cars and light vehicles a figure in position 7 means the years to 2009 and a letter
 * the years from 2010 (final rule of 2008, 49 CFR 565.15(d)); elsewhere the code is not asked for at all.
 */
export function modelYears(
  number: string,
  question: NumberQuestion,
): { readonly years: readonly number[]; readonly check: NumberCheck } {
  const base = { id: 'model year', source: '49 CFR 565.15(d)(1), table VII' }
  const code = number[9] ?? ''
  const say = (result: NumberCheck['result'], because: string, years: readonly number[]) => ({
    years,
    check: { ...base, result, because },
  })
  if (question.market === 'elsewhere')
    return say(
      'does not apply',
      'ISO 3779 asks for no year in position 10; the maker may have put something else there.',
      [],
    )
  if (code === UNREADABLE) return say('does not apply', 'Position 10 could not be read.', [])
  const at = YEAR_CODES.indexOf(code)
  if (at < 0) {
    const result = question.market === 'not known' ? 'does not apply' : 'fails'
    return say(result, `${code} is no year code in position 10.`, [])
  }
  const cycles = cyclesOf(number[6] ?? '', question.vehicle)
  const all = cycles.map((start) => start + at)
  const years = all.filter((year) => year >= (question.modelYearFrom ?? year) && year <= (question.modelYearTo ?? year))
  const meant = `${code} in position 10 means ${all.join(' or ')}${cycles.length === 1 ? ' with this position 7' : ''}.`
  if (question.market === 'not known')
    return say('does not apply', `${meant} Whether the code is law depends on the market, which is not known.`, years)
  return years.length > 0 ? say('passes', meant, years) : say('fails', `${meant} Other evidence says otherwise.`, [])
}

function cyclesOf(seventh: string, vehicle: NumberQuestion['vehicle']): readonly number[] {
  if (vehicle !== 'car or light vehicle up to 4536 kg' || seventh === UNREADABLE) return CYCLES
  return /[0-9]/.test(seventh) ? [CYCLES[0]] : [CYCLES[1]]
}
