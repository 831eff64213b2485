import type { DateCodeField, DateCodeGrammar, MakerCalendar } from '../../../shared-types/date-code-grammar.ts'
import { type DaySpan, dayOf, daysInMonth, isoWeek, MONTH_NAMES, tyreWeek, weekdayOf, yearOf } from './calendar.ts'
import type { Said } from './match-date-code.ts'

/** One reading of a code: days, or why there are none. */
export type Dated = { readonly words: string } & ({ readonly span: DaySpan } | { readonly because: string })

/** Every year of use with what the code says of it: one-digit years keep each decade, rows of letters each turn. */
export function daysOf(said: readonly Said[], { calendar, usedFrom, usedTo }: DateCodeGrammar): Dated[] {
  const clash = contradiction(said)
  if (clash !== null) return [{ words: wordsOf(said), because: clash }]
  const yearsSaid = said.filter(({ field }) => field === 'year')
  const years = Array.from({ length: usedTo - usedFrom + 1 }, (_, count) => usedFrom + count).filter((year) =>
    yearsSaid.every((each) => matchesYear(each, year)),
  )
  if (years.length === 0) {
    return [
      {
        words: wordsOf(said),
        because: `No year from ${usedFrom} to ${usedTo}, when the code was in use, is meant by it.`,
      },
    ]
  }
  return years.flatMap((year) => inYear(year, said, calendar))
}

const matchesYear = ({ value, comesAgain }: Said, year: number): boolean =>
  comesAgain === null ? year === value : year >= (value >= 1000 ? value : 0) && (year - value) % comesAgain === 0

const wordsOf = (said: readonly Said[]): string => said.map(({ field, meaning }) => `${field} ${meaning}`).join(', ')

const valueFor = (said: readonly Said[], field: DateCodeField): number | null =>
  said.find((each) => each.field === field)?.value ?? null

function contradiction(said: readonly Said[]): string | null {
  for (const field of ['month', 'day', 'week', 'day of year'] as const) {
    const values = new Set(said.filter((each) => each.field === field).map(({ value }) => value))
    if (values.size > 1) return `Its ${field} is written twice and differs.`
  }
  const month = valueFor(said, 'month')
  if (month !== null && (month < 1 || month > 12)) return `There is no month ${month}.`
  const day = valueFor(said, 'day')
  if (day === null || month !== null) return null
  if (valueFor(said, 'week') === null) return 'A day alone, without month or week, is no date.'
  return day >= 1 && day <= 7 ? null : `A week has no day ${day}.`
}

function inYear(year: number, said: readonly Said[], calendar: MakerCalendar): Dated[] {
  const whole = makersYear(year, calendar)
  const words = `${wordsOf(said)}: ${year}`
  const found: Dated[] = []
  let because = ''
  for (const calendarYear of new Set([yearOf(whole.from), yearOf(whole.to)])) {
    const part = partOfYear(calendarYear, said, calendar, whole)
    if ('because' in part) {
      because = part.because
      continue
    }
    const span = { from: Math.max(part.span.from, whole.from), to: beyondYearEnd(part.span, whole, said) }
    if (span.from > span.to) continue
    const idle = notWorked(span, calendar)
    found.push(idle === null ? { words, span } : { words, because: idle })
  }
  if (found.length > 0) return found
  return [{ words, because: because === '' ? `It does not lie in the maker’s year ${year}.` : because }]
}

/** The last week of a year may run into the next; months and days may not. */
const beyondYearEnd = (span: DaySpan, whole: DaySpan, said: readonly Said[]): number =>
  valueFor(said, 'week') !== null && span.from >= whole.from && span.from <= whole.to
    ? span.to
    : Math.min(span.to, whole.to)

function makersYear(year: number, { yearBegins }: MakerCalendar): DaySpan {
  if (yearBegins === null) return { from: dayOf(year, 1, 1), to: dayOf(year, 12, 31) }
  const first = yearBegins.inTheYearBefore ? year - 1 : year
  return {
    from: dayOf(first, yearBegins.month, yearBegins.day),
    to: dayOf(first + 1, yearBegins.month, yearBegins.day) - 1,
  }
}

type Part = { readonly span: DaySpan } | { readonly because: string }

function partOfYear(year: number, said: readonly Said[], calendar: MakerCalendar, whole: DaySpan): Part {
  const week = valueFor(said, 'week')
  const dayOfYear = valueFor(said, 'day of year')
  const month = valueFor(said, 'month')
  const day = valueFor(said, 'day')
  if (week !== null) return weekOf(year, week, month === null ? day : null, calendar, whole)
  if (dayOfYear !== null) {
    const from = dayOf(year, 1, dayOfYear)
    return dayOfYear >= 1 && yearOf(from) === year
      ? { span: { from, to: from } }
      : { because: `${year} has no day ${dayOfYear}.` }
  }
  if (month === null) return { span: whole }
  if (day === null) return { span: { from: dayOf(year, month, 1), to: dayOf(year, month + 1, 1) - 1 } }
  if (day < 1 || day > daysInMonth(year, month))
    return { because: `${MONTH_NAMES[month - 1]} ${year} has no day ${day}.` }
  const from = dayOf(year, month, day)
  return { span: { from, to: from } }
}

function weekOf(year: number, week: number, day: number | null, { weeks }: MakerCalendar, whole: DaySpan): Part {
  const span = countedWeek(year, week, weeks, whole)
  if (span === null) return { because: week === 0 ? 'Weeks are counted from 1.' : `The year has no week ${week}.` }
  return { span: day === null ? span : { from: span.from + day - 1, to: span.from + day - 1 } }
}

function countedWeek(year: number, week: number, weeks: MakerCalendar['weeks'], whole: DaySpan): DaySpan | null {
  if (weeks === 'iso 8601') return isoWeek(year, week)
  if (weeks === 'sunday, first full week') return tyreWeek(year, week)
  const end = weeks === 'from 1 January' ? dayOf(year, 12, 31) : whole.to
  const from = (weeks === 'from 1 January' ? dayOf(year, 1, 1) : whole.from) + (week - 1) * 7
  return week >= 1 && from <= end ? { from, to: Math.min(from + 6, end) } : null
}

/** Why nothing can have been made in these days; null when something can. */
function notWorked(span: DaySpan, { daysWorked, closed }: MakerCalendar): string | null {
  const reasons = new Set<string>()
  for (let day = span.from; day <= span.to; day += 1) {
    const shut = closed.find(({ from, to }) => within(day, from, to))
    if (shut !== undefined) reasons.add(`The works were closed: ${shut.words}.`)
    else if (daysWorked.length > 0 && !daysWorked.includes(weekdayOf(day)))
      reasons.add('Nothing was made on that day of the week.')
    else return null
  }
  return [...reasons].join(' ')
}

/** A stretch of every year; one that ends before it begins runs over the turn of the year. */
function within(day: number, from: { month: number; day: number }, to: { month: number; day: number }): boolean {
  const year = yearOf(day)
  const first = dayOf(year, from.month, from.day)
  const last = dayOf(year, to.month, to.day)
  return first <= last ? day >= first && day <= last : day >= first || day <= last
}
