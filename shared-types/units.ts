import { z } from 'zod'

/** One inch in millimetres, exact by the international yard and pound agreement of 1959. */
export const MM_PER_INCH = 25.4
/** One mil (a thousandth of an inch) in micrometres, exact. */
export const UM_PER_MIL = 25.4
/** One foot, twelve inches, in millimetres, exact by the same agreement. */
export const MM_PER_FOOT = 304.8

/** A length in millimetres; the bound is wider than any road vehicle. */
export const lengthMm = z.number().min(0).max(30_000)
/** No coating is thicker, µm. */
export const MOST_COATING_UM = 100_000

/** A coating thickness in micrometres. Negative readings are gauge faults and are refused. */
export const thicknessUm = z.number().min(0).max(MOST_COATING_UM)
/** A share of something, 0 to 100. */
export const percent = z.number().min(0).max(100)

/** One line of text: a name, a number as read, a place. */
export const lineText = z.string().max(400)
/** One line that must not be empty. */
export const requiredLine = z.string().trim().min(1).max(400)
/** A note of any sensible length, kept letter for letter. */
export const noteText = z.string().max(100_000)

/** A calendar day, `2026-05-14`. */
export const calendarDay = z.iso.date()
/** An instant in UTC with milliseconds, `2026-05-14T09:42:07.000Z`. */
export const instant = z.iso.datetime({ precision: 3 })

/** How lengths are shown; the record always stores millimetres. */
export const lengthUnit = z.enum(['mm', 'in'])
/** How coating thickness is shown and entered; the record always stores micrometres. */
export const coatingUnit = z.enum(['µm', 'mil'])
export type LengthUnit = z.infer<typeof lengthUnit>
export type CoatingUnit = z.infer<typeof coatingUnit>

/** The two units a record chooses. Only words and figures follow them; what is stored and computed stays metric. */
export const shownUnits = z.strictObject({ coatingUnit, lengthUnit })
export type ShownUnits = z.infer<typeof shownUnits>
/** Where nobody chose: the units of what is stored. */
export const metricUnits: ShownUnits = { coatingUnit: 'µm', lengthUnit: 'mm' }
