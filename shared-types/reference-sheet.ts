import { z } from 'zod'
import { referenceFacts, sheetReference, sheetSketch } from './reference-fact.ts'
import { sheetName } from './sheet-copy.ts'
import { calendarDay, lineText, noteText, requiredLine } from './units.ts'

/** Version of the form of reference sheets this program writes. A sheet of a later form is refused, not guessed at. */
export const SHEET_FORM = 1

/** Most values a variable may have; the identity engine takes no more. */
export const MOST_SHEET_VALUES = 5000

/** Somebody who says something, and where. Facts cite it by `id`. */
export const sheetSource = z.strictObject({
  id: sheetName,
  /** Person, office or works that says it. */
  who: requiredLine,
  /** Title of the book, list, standard or drawing; or what was told and when. */
  where: requiredLine,
  /** Page, table or paragraph. */
  page: lineText.default(''),
  /** Of a hundred statements from there, how many hold. Weighs sources that disagree on counts. */
  surePercent: z.number().min(1).max(100).default(90),
  /** How the writer of the sheet came by it. */
  learned: z.enum(['seen in the source itself', 'seen at second hand', 'recalled', 'common practice', 'invented']),
  note: noteText.default(''),
})
export type SheetSource = z.infer<typeof sheetSource>

/** One value a variable may have. `from` and `to`, both counted, only for a variable of kind `dates`. */
export const sheetValue = z.strictObject({
  id: sheetName,
  name: requiredLine,
  from: calendarDay.nullable().default(null),
  to: calendarDay.nullable().default(null),
  sketch: sheetSketch.nullable().default(null),
})

/** Values taken together under one name, usable wherever a value is: the year `1958` for its twelve months. */
export const sheetGroup = z.strictObject({
  id: sheetName,
  name: requiredLine,
  values: z.array(sheetName).min(1).max(MOST_SHEET_VALUES),
})

/**
 * Something the factory settled when it built the car. `dates`: values are stretches of days in order, without gaps or
 * overlaps. Date variables of several sheets with one `basis` speak of the same day and are tied together.
 */
export const sheetVariable = z.strictObject({
  id: sheetName,
  name: requiredLine,
  kind: z.enum(['choice', 'dates']).default('choice'),
  /** Which day the dates are; for other variables null. */
  basis: z.enum(['manufacture', 'first use', 'registration', 'model year', 'sale']).nullable().default(null),
  values: z
    .array(sheetValue)
    .min(1, 'Give it at least one value.')
    .max(MOST_SHEET_VALUES, `At most ${MOST_SHEET_VALUES} values: group days into months, or numbers into ranges.`),
  groups: z.array(sheetGroup).max(500).default([]),
  note: noteText.default(''),
})
export type SheetVariable = z.infer<typeof sheetVariable>

/** Another sheet this one speaks about: its names are known here, and it applies wherever this one does. */
export const sheetImport = z.strictObject({
  sheetId: sheetName,
  /** The edition meant; empty for any. */
  edition: lineText.default(''),
})

/**
 * Facts about a car line or an era, as data anybody can write. Names are unique within the sheet: variables among
 * themselves, sources among themselves, and all facts together. A fact of another sheet is named `sheet/name`.
 */
export const referenceSheet = z.strictObject({
  form: z.literal(SHEET_FORM),
  sheetId: sheetName,
  title: requiredLine,
  edition: requiredLine,
  about: noteText.default(''),
  imports: z.array(sheetImport).max(20).default([]),
  sources: z.array(sheetSource).max(1000).default([]),
  variables: z.array(sheetVariable).max(300).default([]),
  /** Date variable the dates of facts are read against; null: the only one of this sheet, or of those it is used with. */
  datesAgainst: sheetReference.nullable().default(null),
  ...referenceFacts,
})
export type ReferenceSheet = z.infer<typeof referenceSheet>
