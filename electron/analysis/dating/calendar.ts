import type { DateInterval } from '../../../shared-types/dating.ts'

const MS_PER_DAY = 86_400_000
const DAYS_OF_ERA = 146_097
/** Days from 1 March of the year 0 to 1 January 1970. */
const ERA_TO_1970 = 719_468

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

/**
 * Number of a day `2026-05-14`, by eras of 400 years that begin in March, so that the leap day is the last of a year
 * (Richards, Mapping Time, 1998, ch. 25, for the Gregorian calendar).
 */
export function dayNumber(isoDay: string): DayNumber {
  const month = Number(isoDay.slice(5, 7))
  const year = Number(isoDay.slice(0, 4)) - (month <= 2 ? 1 : 0)
  const era = Math.floor(year / 400)
  const ofEra = year - era * 400
  const ofYear = Math.floor((153 * ((month + 9) % 12) + 2) / 5) + Number(isoDay.slice(8, 10)) - 1
  return era * DAYS_OF_ERA + ofEra * 365 + Math.floor(ofEra / 4) - Math.floor(ofEra / 100) + ofYear - ERA_TO_1970
}

/** Number of a day from its year, month 1 to 12 and day; months and days beyond their end run on. */
export function dayOf(year: number, month: number, day: number): DayNumber {
  const date = new Date(0)
  date.setUTCFullYear(year, month - 1, day)
  return Math.round(date.getTime() / MS_PER_DAY)
}

/** A day as `2026-05-14`; the way back from `dayNumber`. */
export function isoDay(day: DayNumber): string {
  const days = day + ERA_TO_1970
  const era = Math.floor(days / DAYS_OF_ERA)
  const ofEra = days - era * DAYS_OF_ERA
  const leaps = Math.floor(ofEra / 1460) - Math.floor(ofEra / 36_524) + Math.floor(ofEra / 146_096)
  const yearOfEra = Math.floor((ofEra - leaps) / 365)
  const ofYear = ofEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100))
  const fromMarch = Math.floor((5 * ofYear + 2) / 153)
  const date = ofYear - Math.floor((153 * fromMarch + 2) / 5) + 1
  const month = fromMarch < 10 ? fromMarch + 3 : fromMarch - 9
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0)
  return `${String(year).padStart(4, '0')}-${month < 10 ? '0' : ''}${month}-${date < 10 ? '0' : ''}${date}`
}

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
