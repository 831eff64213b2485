import type { z } from 'zod'
import type { tyreCode } from '../../../shared-types/dating.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { type DaySpan, dayNumber, intervalOf, isoWeek, tyreWeek } from './calendar.ts'

type Question = z.infer<typeof tyreCode.input>
type Answer = z.infer<typeof tyreCode.output>

/** Part 574 asks for a code from 1971; three figures until the rule of 8 July 1999 (64 FR 36807), four by July 2000. */
const THREE_FIGURE_YEARS = Array.from({ length: 30 }, (_, count) => 1971 + count)
const FIRST_FOUR_FIGURE_YEAR = 1999

const notes = [
  'Weeks run from Sunday to Saturday and week 01 is the first full one (49 CFR 574.5). Some makers outside the United States may count ISO 8601 weeks; both are shown and lie at most seven days apart.',
  'A tyre dates service, not the car.',
]

/**
 * Every reading of the date group of a tyre identification number. Three figures keep every decade from 1971 to 2000; four
 * figures were allowed from July 1999. A week the year does not have is named with the reason.
 * @throws ProblemError when the group is not three or four figures.
 */
export function readTyreCode({ asRead, notBefore, notAfter }: Question): Answer {
  const figures = asRead.replace(/[\s◁◀△▲]/g, '')
  if (!/^[0-9]{3,4}$/.test(figures)) {
    throw new ProblemError(
      'input-refused',
      'Enter the last three or four figures of the tyre code, such as 0109 or 031.',
      {
        field: 'asRead',
      },
    )
  }
  const week = Number(figures.slice(0, 2))
  const era = figures.length === 3 ? ('three figures' as const) : ('four figures' as const)
  const readings: Answer['readings'][number][] = []
  const impossible: Answer['impossible'][number][] = []
  for (const year of yearsOf(figures)) {
    const span = tyreWeek(year, week)
    const because = span === null ? noSuchWeek(year, week) : outside(span, era, notBefore, notAfter)
    if (span === null || because !== null) {
      impossible.push({ reading: `week ${week} of ${year}`, because: because ?? '' })
      continue
    }
    const iso = isoWeek(year, week)
    readings.push({ interval: intervalOf(span), week, year, era, isoWeek: iso === null ? null : intervalOf(iso) })
  }
  return { readings, impossible, notes: figures.length === 4 ? [...notes, dayWeekYear] : notes }
}

const dayWeekYear =
  'Before 2000 a maker could mould day, week and year in the last places (letter of the agency of 24 January 1973), so four figures on an older tyre need not be week and year.'

const yearsOf = (figures: string): readonly number[] => {
  if (figures.length === 3) return THREE_FIGURE_YEARS.filter((year) => year % 10 === Number(figures[2]))
  const year = Number(figures.slice(2))
  return [year === 99 ? FIRST_FOUR_FIGURE_YEAR : 2000 + year]
}

const noSuchWeek = (year: number, week: number): string =>
  week === 0
    ? 'Weeks are counted from 01.'
    : `${year} has no week ${week}: its last week by 49 CFR 574.5 is ${tyreWeek(year, 53) === null ? 52 : 53}.`

function outside(span: DaySpan, era: string, notBefore: string | null, notAfter: string | null): string | null {
  if (era === 'three figures' && span.from > dayNumber('2000-07-31'))
    return 'Four figures were asked for from July 2000.'
  if (era === 'four figures' && span.to < dayNumber('1999-07-08'))
    return 'Four figures were allowed from 8 July 1999 on (64 FR 36807).'
  if (notBefore !== null && span.to < dayNumber(notBefore)) return `Before ${notBefore}, which is known.`
  if (notAfter !== null && span.from > dayNumber(notAfter)) return `After ${notAfter}, which is known.`
  return null
}
