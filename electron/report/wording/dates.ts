import { MONTH_NAMES } from '../../analysis/dating/calendar.ts'
import { NARROW } from './numbers.ts'

/** `2026-11-09` or an instant as `9 November 2026`; never through the machine's own time zone. */
export function dayText(day: string): string {
  const [year, month, date] = day.slice(0, 10).split('-')
  const name = MONTH_NAMES[Number(month) - 1]
  return name === undefined ? day : `${Number(date)} ${name} ${year}`
}

/** An instant as `9 November 2026, 10:42:16 UTC`. */
export const instantText = (instant: string): string => `${dayText(instant)}, ${instant.slice(11, 19)}${NARROW}UTC`

/** Days joined: `9 and 10 November 2026`, or each in full when months differ. */
export function daysText(days: readonly string[]): string {
  const distinct = [...new Set(days.map((day) => day.slice(0, 10)))].sort()
  const months = new Set(distinct.map((day) => day.slice(0, 7)))
  const last = distinct.at(-1)
  if (last === undefined) return ''
  if (months.size === 1 && distinct.length > 1) {
    return joined([...distinct.slice(0, -1).map((day) => String(Number(day.slice(8)))), dayText(last)])
  }
  return joined(distinct.map(dayText))
}

/** `a, b and c`. */
export function joined(words: readonly string[]): string {
  if (words.length < 2) return words[0] ?? ''
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
}

/** Camera time with its offset, or that the camera did not say: `9 November 2026, 10:42:16 (UTC+01:00)`. */
export function cameraTime(takenAt: string | null, offset: string | null): string {
  if (takenAt === null) return 'the camera gave no time'
  const clock = `${dayText(takenAt)}, ${takenAt.slice(11, 19)}`
  return offset === null ? `${clock} (offset from UTC not given)` : `${clock} (UTC${offset.replace('-', '\u2212')})`
}
