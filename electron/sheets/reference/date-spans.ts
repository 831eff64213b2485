import type { ChangeDay } from '../../../shared-types/reference-fact.ts'
import { dayNumber } from '../../analysis/dating/calendar.ts'

/** Days since 1 January 1970, by the Gregorian calendar; both counted. Infinite where the sheet leaves an end open. */
export interface DaySpan {
  readonly first: number
  readonly last: number
}

/** The few days a sheet speaks of are asked about thousands of times for one answer. */
const MOST_DAYS_KEPT = 20_000
const daysKept = new Map<string, number>()

function dayKept(day: string): number {
  const known = daysKept.get(day)
  if (known !== undefined) return known
  const made = dayNumber(day)
  if (daysKept.size >= MOST_DAYS_KEPT) daysKept.clear()
  daysKept.set(day, made)
  return made
}

export const spanOf = (from: string | null, to: string | null): DaySpan => ({
  first: from === null ? Number.NEGATIVE_INFINITY : dayKept(from),
  last: to === null ? Number.POSITIVE_INFINITY : dayKept(to),
})

export const overlap = (one: DaySpan, other: DaySpan): boolean => one.first <= other.last && other.first <= one.last

const changeSpan = (day: ChangeDay): DaySpan =>
  typeof day === 'string' ? spanOf(day, day) : spanOf(day.earliest, day.latest)

/** Days in which something may hold, and those in which it surely does (`first` after `last` when there are none). */
export interface FactDays {
  readonly from: ChangeDay | null
  readonly until: ChangeDay | null
}
const possibleDays = ({ from, until }: FactDays): DaySpan => ({
  first: from === null ? Number.NEGATIVE_INFINITY : changeSpan(from).first,
  last: until === null ? Number.POSITIVE_INFINITY : changeSpan(until).last,
})
const certainDays = ({ from, until }: FactDays): DaySpan => ({
  first: from === null ? Number.NEGATIVE_INFINITY : changeSpan(from).last,
  last: until === null ? Number.POSITIVE_INFINITY : changeSpan(until).first,
})

/** The fact may hold for a car built on some day of the span. */
export const mayHold = (days: FactDays, span: DaySpan): boolean => overlap(possibleDays(days), span)

/** The fact holds for a car built on any day of the span. */
export const surelyHolds = (days: FactDays, span: DaySpan): boolean => {
  const certain = certainDays(days)
  return certain.first <= span.first && span.last <= certain.last
}

const within01 = (share: number): number => Math.min(1, Math.max(0, share))

/**
 * Share of the cars built in the span for which the fact holds: any day of the span alike likely, and any day of the
 * interval a change is known by. A span with an open end that the change falls into counts half.
 */
export function shareHolding(days: FactDays, span: DaySpan): number {
  if (surelyHolds(days, span)) return 1
  if (!mayHold(days, span)) return 0
  if (!Number.isFinite(span.first) || !Number.isFinite(span.last)) return 0.5
  const from = days.from === null ? null : changeSpan(days.from)
  const until = days.until === null ? null : changeSpan(days.until)
  let sum = 0
  for (let built = span.first; built <= span.last; built++) {
    const begun = from === null ? 1 : within01((built - from.first + 1) / (from.last - from.first + 1))
    const lasting = until === null ? 1 : within01((until.last - built + 1) / (until.last - until.first + 1))
    sum += begun * lasting
  }
  return sum / (span.last - span.first + 1)
}

/** The day, or the interval, is in order. */
export const inOrder = ({ first, last }: DaySpan): boolean => first <= last
export const changeInOrder = (day: ChangeDay): boolean => inOrder(changeSpan(day))
