import type { DatedWindow, FigureSpan, TimeLineFigure } from '../../shared-types/time-line-view.ts'
import {
  type DayNumber,
  type DaySpan,
  dayNumber,
  dayOf,
  daysInMonth,
  isoDay,
  yearOf,
} from '../analysis/dating/calendar.ts'
import { intervalWords } from '../analysis/dating/interval-words.ts'

/** Years without a date that are left out of the axis when there are at least so many days of them. */
const LEAST_LEFT_OUT_DAYS = 550
/** Share of the axis left empty at each break. */
const BREAK = 0.016
/** Share of the axis for each stretch in which the car was not built, and the most for all of them. */
const EACH_ASIDE = 0.075
const MOST_ASIDE = 0.4

/** Days to places along an axis from 0 to 1, broken where nothing is dated. */
export interface TimeScale {
  /** The stretches drawn, as days. */
  readonly days: readonly DaySpan[]
  readonly stretches: TimeLineFigure['stretches']
  at(day: DayNumber): number
  /** Place of a window; an open end reaches to the end of the axis. Null when both ends are open. */
  span(from: string | null, to: string | null): FigureSpan | null
}

/**
 * A scale over some windows. Windows less than a year and a half apart share a stretch of whole months; the stretch in
 * which the car was built has at least three fifths of the axis, the others divide the rest by the root of their length.
 */
export function timeScale(windows: readonly DatedWindow[], built: DatedWindow | null): TimeScale {
  const days = stretchesOf(windows)
  const widths = widthsOf(days, built)
  let left = 0
  const placed = days.map((span, at) => {
    const from = left
    left += (widths[at] ?? 0) + BREAK
    return { span, from, to: from + (widths[at] ?? 0) }
  })
  const at = (day: DayNumber): number => {
    const own = placed.find(({ span }) => day <= span.to + 1)
    if (own === undefined) return 1
    const share = (day - own.span.from) / (own.span.to + 1 - own.span.from)
    return own.from + Math.max(0, share) * (own.to - own.from)
  }
  return {
    days,
    stretches: placed.map(({ span, from, to }) => ({
      from,
      to,
      words: intervalWords({ from: isoDay(span.from), to: isoDay(span.to) }),
    })),
    at,
    span: (from, to) => {
      if (from === null && to === null) return null
      return { from: from === null ? 0 : at(dayNumber(from)), to: to === null ? 1 : at(dayNumber(to) + 1) }
    },
  }
}

/** Whole months that hold every closed end, joined where little lies between. */
function stretchesOf(windows: readonly DatedWindow[]): readonly DaySpan[] {
  const spans = windows
    .flatMap(({ from, to }) => {
      const first = from ?? to
      const last = to ?? from
      return first === null || last === null ? [] : [{ from: dayNumber(first), to: dayNumber(last) }]
    })
    .sort((one, other) => one.from - other.from)
  const joined: DaySpan[] = []
  for (const span of spans) {
    const before = joined.at(-1)
    if (before !== undefined && span.from - before.to < LEAST_LEFT_OUT_DAYS)
      joined[joined.length - 1] = { from: before.from, to: Math.max(before.to, span.to) }
    else joined.push(span)
  }
  return joined.map(({ from, to }) => ({ from: monthOf(from).first, to: monthOf(to).last }))
}

function monthOf(day: DayNumber): { readonly first: DayNumber; readonly last: DayNumber } {
  const year = yearOf(day)
  const month = Number(isoDay(day).slice(5, 7))
  const first = dayOf(year, month, 1)
  return { first, last: first + daysInMonth(year, month) - 1 }
}

function widthsOf(days: readonly DaySpan[], built: DatedWindow | null): readonly number[] {
  const room = 1 - BREAK * Math.max(0, days.length - 1)
  const day = built?.from ?? built?.to ?? null
  const main = day === null ? -1 : days.findIndex(({ from, to }) => dayNumber(day) >= from && dayNumber(day) <= to)
  const weights = days.map(({ from, to }, at) => (at === main ? 0 : Math.sqrt(to + 1 - from)))
  const all = weights.reduce((sum, weight) => sum + weight, 0)
  const others = main < 0 ? room : Math.min(MOST_ASIDE, weights.filter((weight) => weight > 0).length * EACH_ASIDE)
  return weights.map((weight, at) => (at === main ? room - others : (others * weight) / all))
}
