import type {
  DatedRow,
  DatedWindow,
  FigureSpan,
  TimeLineFigure,
  TimeLineFigureRow,
  TimeLineView,
} from '../../shared-types/time-line-view.ts'
import { dayOf, MONTH_NAMES, yearOf } from '../analysis/dating/calendar.ts'
import { type TimeScale, timeScale } from './time-scale.ts'

const BUILDING = 'car:built'
/** Months are marked where one is at least this share of the axis wide. */
const LEAST_MONTH = 0.008
/** Figures of two years stand at least so far apart. */
const LEAST_BETWEEN_YEARS = 0.06
/** Months are named where one is at least this share wide. */
const LEAST_NAMED_MONTH = 0.026

/**
 * The time line as plain geometry: one row for each thing, along an axis that leaves out the years in which nothing is
 * dated. What is said of a thing alone is outlined, what everything together leaves of it is solid.
 */
export function timeLineFigure(view: TimeLineView): TimeLineFigure {
  const scale = timeScale(
    view.rows.flatMap((row) => [...row.given, row.narrowed]),
    view.built,
  )
  const span = ({ from, to }: DatedWindow): FigureSpan | null => scale.span(from, to)
  const conflictsOf = (row: DatedRow) =>
    view.conflicts.filter(({ rows }) => rows.includes(row.id)).map(({ number }) => number)
  const rows = view.rows.map((row): TimeLineFigureRow => {
    const out = new Set(row.dropped.map(({ words }) => words))
    return {
      id: row.id,
      label: row.label,
      beside: row.asRead,
      given: row.given.filter(({ words }) => !out.has(words)).flatMap((window) => span(window) ?? []),
      dropped: row.dropped.flatMap((window) => span(window) ?? []),
      narrowed: span(row.narrowed),
      leaves:
        row.standing === 'may have come with the car' && row.leavesForBuilding !== null
          ? span(row.leavesForBuilding)
          : null,
      isBuilding: row.id === BUILDING,
      standing: row.standing,
      conflicts: conflictsOf(row),
      words: rowWords(row),
    }
  })
  return {
    rows,
    stretches: scale.stretches,
    ticks: ticksOf(scale),
    building: view.built === null || view.built.days === null ? null : span(view.built),
    conflicts: view.conflicts.map(({ number, rows: joined }) => ({
      number,
      rows: view.rows.flatMap(({ id }, at) => (joined.includes(id) ? [at] : [])),
    })),
    textAlternative:
      `Time line of ${rows.length} dated things. ${rows.map(({ words }) => words).join(' ')} ${view.conflicts.map(({ number, title }) => `Conflict ${number}: ${title}.`).join(' ')}`.trim(),
  }
}

function rowWords({ label, asRead, given, narrowed, standing }: DatedRow): string {
  const said = given.map(({ words }) => words).join(' or ')
  const left = narrowed.words === said ? '' : `, left ${narrowed.words}`
  const stands = standing === 'not compared' || standing === 'holds with the rest' ? '' : `, ${standing}`
  return `${label}${asRead === '' ? '' : ` “${asRead}”`}: ${said === '' ? narrowed.words : `${said}${left}`}${stands}.`
}

/** Beginnings of years, and of months where there is room for them. */
function ticksOf(scale: TimeScale): TimeLineFigure['ticks'] {
  return scale.days.flatMap(({ from, to }) => {
    const monthWide = scale.at(from + 30) - scale.at(from)
    const ticks: TimeLineFigure['ticks'][number][] = []
    let named = Number.NEGATIVE_INFINITY
    for (let year = yearOf(from); year <= yearOf(to); year += 1) {
      for (let month = 1; month <= 12; month += 1) {
        const day = dayOf(year, month, 1)
        if (day < from || day > to) continue
        const isYear = month === 1 || day === from
        const at = scale.at(day)
        if (isYear) {
          const hasRoom = at - named >= LEAST_BETWEEN_YEARS
          ticks.push({ at, kind: 'year', label: hasRoom ? String(year) : '' })
          if (hasRoom) named = at
        } else if (monthWide >= LEAST_MONTH) {
          const letter = monthWide >= LEAST_NAMED_MONTH ? (MONTH_NAMES[month - 1] ?? '').slice(0, 1) : ''
          ticks.push({ at, kind: 'month', label: letter })
        }
      }
    }
    return ticks
  })
}
