import { partBase } from '../../../shared-types/part.ts'
import type { PartDateReading } from '../../../shared-types/part-expectation.ts'
import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import { dayNumber } from '../../analysis/dating/calendar.ts'
import { readDateCode } from '../../analysis/dating/date-code.ts'
import { partDefinition } from '../../sheets/parts-list.ts'
import { dateVariableOf } from '../../sheets/reference/date-literals.ts'
import type { SheetNames } from '../../sheets/reference/sheet-names.ts'
import type { AskedAnswer } from './asked-shares.ts'
import { citedSource } from './part-facts.ts'

interface DatesOfPart {
  readonly dates: readonly PartDateReading[]
  readonly impossibleDates: readonly string[]
}

interface Stretch {
  readonly first: number
  readonly last: number
  readonly weight: number
}

type Code = ReferenceSheet['dateCodes'][number]

/** A day of building lighter than this is taken for one the car was not built on. */
const LIGHT = 0.001

/** Stretches of what was written down, the longest first, so that a date is found among words such as “etched 4 60, both”. */
function stretchesOf(written: string): readonly (readonly string[])[] {
  const words = written.split(/[\s,;:()“”"]+/).filter((word) => word !== '')
  return words.map((_, shorter) => {
    const length = words.length - shorter
    return Array.from({ length: shorter + 1 }, (_each, at) => words.slice(at, at + length).join(' '))
  })
}

/**
 * All readings of a date on a part by the grammars of the sheets. The part's own grammars come first; another part's are
 * tried where it has none that fits, and each such reading says whose grammar it is.
 */
export function datesOfPart(
  partId: string,
  written: string,
  sheets: readonly ReferenceSheet[],
  names: SheetNames,
  answer: AskedAnswer | null,
): DatesOfPart {
  if (written.trim() === '') return { dates: [], impossibleDates: [] }
  const base = partBase(partId)
  const codes = sheets.flatMap((sheet) => sheet.dateCodes.map((code) => ({ sheet, code })))
  const own = codes.filter(({ code }) => partBase(code.part) === base)
  const others = codes.filter(({ code }) => partBase(code.part) !== base)
  for (const some of [own, others]) {
    for (const stretches of stretchesOf(written)) {
      const dates = stretches.flatMap((asRead) =>
        some.flatMap(({ sheet, code }) => readingsOf(asRead, base, sheet, code, names, answer)),
      )
      if (dates.length > 0) return { dates: onceEach(dates), impossibleDates: [] }
    }
  }
  const impossible = own.flatMap(({ code }) => readDateCode(asked(written, code)).impossible)
  return {
    dates: [],
    impossibleDates: impossible.map(({ label, reading, because }) => `${label}: ${reading}. ${because}`),
  }
}

const asked = (asRead: string, { grammar }: Code) => ({
  asRead,
  grammars: [grammar],
  notBefore: null,
  notAfter: null,
})

/** Two grammars that read the same days off the same marks are one reading. */
const onceEach = (dates: readonly PartDateReading[]): readonly PartDateReading[] =>
  dates.filter(
    ({ from, to, asRead }, at) =>
      dates.findIndex((each) => each.from === from && each.to === to && each.asRead === asRead) === at,
  )

function readingsOf(
  asRead: string,
  base: string,
  sheet: ReferenceSheet,
  code: Code,
  names: SheetNames,
  answer: AskedAnswer | null,
): readonly PartDateReading[] {
  const built = builtStretches(sheet, names, answer)
  return readDateCode(asked(asRead, code)).readings.map(({ interval, label }) => ({
    asRead,
    from: interval.from,
    to: interval.to,
    grammar: label,
    givenFor: partBase(code.part) === base ? null : (partDefinition(code.part)?.uk ?? code.part),
    source: citedSource(sheet, code.source),
    ...comparedWith(built, dayNumber(interval.from), dayNumber(interval.to), code.leadDays),
  }))
}

function builtStretches(sheet: ReferenceSheet, names: SheetNames, answer: AskedAnswer | null): readonly Stretch[] {
  const dates = dateVariableOf(names, sheet)
  const weights = dates === null ? undefined : answer?.variables[dates.key]
  if (dates === null || weights === undefined) return []
  return dates.values.flatMap((value, at) => {
    const span = dates.spans[at]
    return span === undefined ? [] : [{ ...span, weight: weights[value] ?? 0 }]
  })
}

/** Without lead times a part can be of any age; it cannot be younger than the car. */
function comparedWith(
  built: readonly Stretch[],
  from: number,
  to: number,
  lead: Code['leadDays'],
): Pick<PartDateReading, 'buildsPercent' | 'agrees'> {
  if (built.length === 0) return { buildsPercent: null, agrees: 'nothing to compare with' }
  const least = lead?.least ?? 0
  const most = lead?.most ?? Number.POSITIVE_INFINITY
  const fits = built.filter(({ first, last }) => from <= last - least && to >= first - most)
  const weight = fits.reduce((sum, each) => sum + each.weight, 0)
  const buildsPercent = 100 * Math.min(1, weight)
  if (weight >= 0.01) return { buildsPercent, agrees: 'agrees with the build' }
  const likely = built.filter((each) => each.weight > LIGHT)
  const later = likely.every(({ last }) => from > last - least)
  return { buildsPercent, agrees: later ? 'later than the car' : 'earlier than usual' }
}
