import type { DateInterval } from '../../../shared-types/dating.ts'
import { type DaySpan, dayOf, daysInMonth, intervalOf, isoWeek, MONTH_NAMES, tyreWeek } from './calendar.ts'

/** A date as it stands in a line of English, and the days it means. */
export interface WrittenDate {
  readonly text: string
  /** Place of its first character in the line. */
  readonly at: number
  readonly precision: 'day' | 'week' | 'month' | 'year'
  readonly interval: DateInterval
}

const month = `(${MONTH_NAMES.map((name) => `${name.slice(0, 3)}(?:${name.slice(3)})?`).join('|')})\\.?`
const year = '(18[89][0-9]|19[0-9][0-9]|20[0-9][0-9])'
const forms: readonly { readonly form: RegExp; readonly read: Read }[] = [
  {
    form: new RegExp(`\\b${year}-([0-9]{2})-([0-9]{2})\\b`, 'gi'),
    read: ([y, m, d]) => oneDay(Number(y), Number(m), Number(d)),
  },
  {
    form: new RegExp(`\\b([0-9]{1,2})\\s+${month}\\s+${year}\\b`, 'gi'),
    read: ([d, m, y]) => oneDay(Number(y), monthOf(m), Number(d)),
  },
  {
    form: new RegExp(`\\bweek\\s+([0-9]{1,2})\\s+of\\s+${year}\\b`, 'gi'),
    read: ([w, y]) => week(Number(y), Number(w)),
  },
  {
    form: new RegExp(`\\b${month}\\s+${year}\\b`, 'gi'),
    read: ([m, y]) => ({
      precision: 'month',
      span: { from: dayOf(Number(y), monthOf(m), 1), to: dayOf(Number(y), monthOf(m) + 1, 1) - 1 },
    }),
  },
  {
    // A year stands alone: figures before or after it make it part of a number.
    form: new RegExp(`(?<![0-9][\\s.,-]?)\\b${year}\\b(?!\\s?(?:[0-9]|cm|mm|km|mile))`, 'gi'),
    read: ([y]) => ({ precision: 'year', span: { from: dayOf(Number(y), 1, 1), to: dayOf(Number(y), 12, 31) } }),
  },
]
type Read = (
  groups: readonly string[],
) => { readonly precision: WrittenDate['precision']; readonly span: DaySpan } | null

const monthOf = (name = ''): number =>
  1 + MONTH_NAMES.findIndex((each) => each.slice(0, 3).toLowerCase() === name.slice(0, 3).toLowerCase())

function oneDay(inYear: number, inMonth: number, day: number): ReturnType<Read> {
  if (inMonth < 1 || inMonth > 12 || day < 1 || day > daysInMonth(inYear, inMonth)) return null
  const from = dayOf(inYear, inMonth, day)
  return { precision: 'day', span: { from, to: from } }
}

/** A week by either count, ISO 8601 or 49 CFR 574.5: words do not say by which. */
function week(inYear: number, number: number): ReturnType<Read> {
  const spans = [isoWeek(inYear, number), tyreWeek(inYear, number)].filter((span) => span !== null)
  if (spans.length === 0) return null
  return {
    precision: 'week',
    span: { from: Math.min(...spans.map(({ from }) => from)), to: Math.max(...spans.map(({ to }) => to)) },
  }
}

/** Dates written out in a line of English, in the order they stand, each as exact as it is written; months by name only. */
export function datesInWords(line: string): readonly WrittenDate[] {
  const found: WrittenDate[] = []
  const taken: { readonly from: number; readonly to: number }[] = []
  for (const { form, read } of forms) {
    for (const match of line.matchAll(form)) {
      const [text, ...groups] = match
      const end = match.index + text.length
      if (taken.some(({ from, to }) => match.index < to && from < end)) continue
      // Words that name no day, such as 30 February, are not read as less than they say.
      taken.push({ from: match.index, to: end })
      const dated = read(groups)
      if (dated === null) continue
      found.push({ text, at: match.index, precision: dated.precision, interval: intervalOf(dated.span) })
    }
  }
  return found.sort((one, other) => one.at - other.at)
}

/** What a line about a paper says of time: when the paper was made, and when the car was first registered. */
export interface PaperDates {
  readonly made: WrittenDate | null
  readonly firstRegistered: WrittenDate | null
}

const registered = /first registered(?: on| in)?\s*$/i
const issued = /\b(?:issue of|issued(?: on| in)?|dated)\s*$/i
/** Words before a date that speak of what the paper tells, not of the paper. */
const told = /\b(?:between|and|from|to|until|since|after|before|by|built(?: in| on)?|of about)\s*$/i

/**
 * Reads the caption of a paper. "first registered DATE" is the registration; the paper itself is dated by "issue of",
 * "issued" or "dated", or else by the first whole day that no word such as "between" or "from" takes for its story.
 */
export function datesOfPaper(caption: string): PaperDates {
  const dates = datesInWords(caption).map((date) => ({ date, before: caption.slice(0, date.at) }))
  const plain = dates.filter(({ before }) => !registered.test(before))
  const made =
    plain.find(({ before }) => issued.test(before)) ??
    plain.find(({ date, before }) => date.precision === 'day' && !told.test(before))
  return {
    made: made?.date ?? null,
    firstRegistered: dates.find(({ before }) => registered.test(before))?.date ?? null,
  }
}

/** A distance as an odometer shows it, `61 208 miles`; null when the line holds none. */
export function distanceInWords(line: string): { readonly value: number; readonly unit: 'km' | 'mile' } | null {
  const found = /([0-9]{1,3}(?:[\s\u202f,.][0-9]{3})+|[0-9]+)\s*(miles?|mi\b|km\b|kilomet(?:re|er)s?)/i.exec(line)
  if (found === null) return null
  const [, digits = '', unit = ''] = found
  return { value: Number(digits.replace(/[^0-9]/g, '')), unit: unit.toLowerCase().startsWith('mi') ? 'mile' : 'km' }
}
