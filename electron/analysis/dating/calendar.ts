import type { DateInterval } from '../../../shared-types/dating.ts'

const MS_PER_DAY = 86_400_000

/** Names of the months, January first. */
export const MONTH_NAMES: readonly string[] =
  'January February March April May June July August September October November December'.split(' ')

/** A day as a whole number: days since 1 January 1970 in the Gregorian calendar. */
export type DayNumber = number

/** Both ends counted. */
export interface DaySpan {
  readonly from: DayNumber
  readonly to: DayNumber
}

/** Number of a day `2026-05-14`. */
export const dayNumber = (isoDay: string): DayNumber => Math.round(Date.parse(`${isoDay}T00:00:00Z`) / MS_PER_DAY)

/** Number of a day from its year, month 1 to 12 and day; months and days beyond their end run on. */
export function dayOf(year: number, month: number, day: number): DayNumber {
  const date = new Date(0)
  date.setUTCFullYear(year, month - 1, day)
  return Math.round(date.getTime() / MS_PER_DAY)
}

export const isoDay = (day: DayNumber): string => new Date(day * MS_PER_DAY).toISOString().slice(0, 10)

export const yearOf = (day: DayNumber): number => new Date(day * MS_PER_DAY).getUTCFullYear()

/** 0 Sunday to 6 Saturday; 1 January 1970 was a Thursday. */
export const weekdayOf = (day: DayNumber): number => (((day + 4) % 7) + 7) % 7

export const daysInMonth = (year: number, month: number): number => dayOf(year, month + 1, 1) - dayOf(year, month, 1)

export const intervalOf = ({ from, to }: DaySpan): DateInterval => ({ from: isoDay(from), to: isoDay(to) })

/**
 * Days of a week of ISO 8601: Monday to Sunday, week 1 being the one with the first Thursday. Null when the year has no
 * such week.
 */
export function isoWeek(year: number, week: number): DaySpan | null {
  const fourth = dayOf(year, 1, 4)
  const from = fourth - ((weekdayOf(fourth) + 6) % 7) + (week - 1) * 7
  return week >= 1 && yearOf(from + 3) === year ? { from, to: from + 6 } : null
}

/**
 * Days of a week of 49 CFR 574.5(b)(3): Sunday to Saturday, week 1 being the first full one; the last may run up to six
 * days into the next year. Null when the year has no such week.
 */
export function tyreWeek(year: number, week: number): DaySpan | null {
  const first = dayOf(year, 1, 1)
  const from = first + ((7 - weekdayOf(first)) % 7) + (week - 1) * 7
  return week >= 1 && yearOf(from) === year ? { from, to: from + 6 } : null
}
