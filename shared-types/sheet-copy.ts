import { z } from 'zod'
import { instant, requiredLine } from './units.ts'

/** Name of a reference sheet, of a tell in it, of a value: short, in small letters. */
export const sheetName = z
  .string()
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/)
  .max(80)

/**
 * A reference sheet as this record took it in: its bytes lie frozen in the record, whatever becomes of the file they came
 * from. Keyed by `sheetId`.
 */
export const sheetCopy = z.strictObject({
  sheetId: sheetName,
  title: requiredLine,
  edition: requiredLine,
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
  byteLength: z.number().int().positive(),
  takenAt: instant,
})
export type SheetCopy = z.infer<typeof sheetCopy>
