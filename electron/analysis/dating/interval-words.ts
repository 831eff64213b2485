import { dayNumber, dayOf, daysInMonth, isoDay, MONTH_NAMES } from './calendar.ts'

/** First and last day of something, both counted; null ends are open. */
export interface OpenInterval {
  readonly from: string | null
  readonly to: string | null
}

const partsOf = (day: string) => {
  const [year = 0, month = 0, date = 0] = day.split('-').map(Number)
  return { year, month, date, name: MONTH_NAMES[month - 1] ?? '' }
}

/** `1960-05-26` as `26 May 1960`. */
export function dayWords(day: string): string {
  const { year, name, date } = partsOf(day)
  return `${date} ${name} ${year}`
}

/** An interval as one says it: `1974`, `July 1962`, `1 March to 26 May 1960`, `not after 9 June 1960`, `not dated`. */
export function intervalWords({ from, to }: OpenInterval): string {
  if (from === null) return to === null ? 'not dated' : `not after ${dayWords(to)}`
  if (to === null) return `not before ${dayWords(from)}`
  if (from === to) return dayWords(from)
  const [first, last] = [partsOf(from), partsOf(to)]
  const wholeMonths = first.date === 1 && last.date === daysInMonth(last.year, last.month)
  const sameYear = first.year === last.year
  if (!wholeMonths) return `${sameYear ? `${first.date} ${first.name}` : dayWords(from)} to ${dayWords(to)}`
  if (sameYear && first.month === last.month) return `${first.name} ${first.year}`
  if (first.month === 1 && last.month === 12) return sameYear ? `${first.year}` : `${first.year} to ${last.year}`
  return `${first.name}${sameYear ? '' : ` ${first.year}`} to ${last.name} ${last.year}`
}

const some = (count: number, unit: string): string => `${count} ${unit}${count === 1 ? '' : 's'}`

/** A stretch of days as one says it, whole units only and never more than it is: `2 years 1 month`, `6 weeks`, `3 days`. */
export function stretchWords(from: string, to: string): string {
  const days = dayNumber(to) - dayNumber(from)
  if (days < 14) return some(days, 'day')
  const [first, last] = [partsOf(from), partsOf(to)]
  const whole = (last.year - first.year) * 12 + last.month - first.month
  // A month is full when its day of the month is reached; 31 January to 28 February is less than one.
  const months = isoDay(dayOf(first.year, first.month + whole, first.date)) > to ? whole - 1 : whole
  if (months < 3) return some(Math.floor(days / 7), 'week')
  const years = Math.floor(months / 12)
  if (years === 0) return some(months, 'month')
  return months % 12 === 0 ? some(years, 'year') : `${some(years, 'year')} ${some(months % 12, 'month')}`
}
