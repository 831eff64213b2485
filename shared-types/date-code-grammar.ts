import { z } from 'zod'
import { lineText, requiredLine } from './units.ts'

/** What one place of a date code can say. `shift`, `plant` and `serial` are kept as words and date nothing. */
export const dateCodeField = z.enum(['year', 'month', 'day', 'week', 'day of year', 'shift', 'plant', 'serial'])
export type DateCodeField = z.infer<typeof dateCodeField>

const pieceName = z
  .string()
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/)
  .max(40)

/** A number in figures: `maxDigits` 1 with field `year` is a last digit, 2 a year without its century, 4 a whole year. */
const figures = z.strictObject({
  kind: z.literal('figures'),
  field: dateCodeField,
  minDigits: z.number().int().min(1).max(8),
  maxDigits: z.number().int().min(1).max(8),
})

/**
 * One letter out of a row of letters in the order they stand for values: `ABCDEFGHJKLM` is a month row without I,
 * `ABCDEFGHIJKL` one with it. The first letter means `first`, the next one more. For a year, `first` is a whole year, and
 * `repeats` says that the row begins anew when it is used up.
 */
const letters = z.strictObject({
  kind: z.literal('letters'),
  field: dateCodeField,
  letters: z.string().min(1).max(60),
  first: z.number().int().min(0).max(9999),
  repeats: z.boolean().default(false),
})

/** Written marks with their values, where neither figures nor a row of letters will do: a maker's own table. */
const table = z.strictObject({
  kind: z.literal('table'),
  field: dateCodeField,
  rows: z
    .array(
      z.strictObject({ text: requiredLine, value: z.number().int().min(0).max(9999), words: lineText.default('') }),
    )
    .min(1)
    .max(500),
})

/** Fixed marks, such as a diamond or a dash; one of `texts` must stand there, or nothing when `optional`. */
const fixed = z.strictObject({
  kind: z.literal('fixed'),
  texts: z.array(requiredLine).min(1).max(20),
  optional: z.boolean().default(false),
})

/** A part of the code that is described under `pieces`: used where several orders share it. A ring of them is refused. */
const piece = z.strictObject({ kind: z.literal('piece'), name: pieceName, optional: z.boolean().default(false) })

/** Elements that repeat. `atMost` null would never end and is refused with its cure. */
const repeated = z.strictObject({
  kind: z.literal('repeated'),
  name: pieceName,
  atLeast: z.number().int().min(0).max(20),
  atMost: z.number().int().min(1).max(20).nullable(),
})

const element = z.discriminatedUnion('kind', [figures, letters, table, fixed, piece, repeated])
export type DateCodeElement = z.infer<typeof element>

const dayOfAnyYear = z.strictObject({
  month: z.number().int().min(1).max(12),
  day: z.number().int().min(1).max(31),
})

/** How a maker counts: which weeks a week number means, where its year begins, which days its works were closed. */
const makerCalendar = z.strictObject({
  /**
   * `sunday, first full week`: 49 CFR 574.5; `iso 8601`: Monday, the week with the first Thursday; `from 1 January`: week 1
   * is the first seven days; `from the start of the maker's year`: sevens of days from `yearBegins`.
   */
  weeks: z.enum(['sunday, first full week', 'iso 8601', 'from 1 January', "from the start of the maker's year"]),
  /**
   * Where the maker's year N begins. Null: 1 January. `in the year before`: model year N began in N - 1; a month or day
   * before it belongs to N.
   */
  yearBegins: dayOfAnyYear.extend({ inTheYearBefore: z.boolean() }).nullable(),
  /** Days of the week worked, 0 Sunday to 6 Saturday; empty: not known, any. */
  daysWorked: z.array(z.number().int().min(0).max(6)).max(7),
  /** Stretches of every year in which nothing was made. */
  closed: z.array(z.strictObject({ from: dayOfAnyYear, to: dayOfAnyYear, words: requiredLine })).max(20),
})
export type MakerCalendar = z.infer<typeof makerCalendar>

/** The way one kind of date code is written and read, as data of a reference sheet. */
export const dateCodeGrammar = z.strictObject({
  id: pieceName,
  label: requiredLine,
  /** Where the grammar is from, and whether it was seen there, is common practice or recalled. */
  source: requiredLine,
  /** Years in which the code was in use: only these are answered. */
  usedFrom: z.number().int().min(1880).max(2100),
  usedTo: z.number().int().min(1880).max(2100),
  /** Spaces, dots, dashes and strokes in the code as found say nothing and are passed over. */
  passOverSeparators: z.boolean().default(true),
  elements: z.array(element).min(1).max(20),
  pieces: z.record(pieceName, z.array(element).min(1).max(20)).default({}),
  calendar: makerCalendar.default({ weeks: 'iso 8601', yearBegins: null, daysWorked: [], closed: [] }),
})
export type DateCodeGrammar = z.infer<typeof dateCodeGrammar>
