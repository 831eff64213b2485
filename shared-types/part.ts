import { z } from 'zod'
import type { Caution } from './caution.ts'
import { fasteningFound } from './fastening.ts'
import { lineText, noteText, requiredLine } from './units.ts'
import { type BodyStyle, howLearned, partState } from './words.ts'

/** Neutral part id with side or number where a car carries several: `wheel.L`, `spark-plug.3`. */
export const partId = z
  .string()
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*(\.([LR]|[1-9][0-9]?))?$/)
  .max(80)

/** Id of a part without side or number. */
export const partBase = (id: string): string => id.replace(/\.([LR]|[1-9][0-9]?)$/, '')

/** What was found of one part; keyed by `partId`. A part without a row is not seen. */
export const partEntry = z.strictObject({
  partId,
  state: partState,
  numberAsRead: lineText,
  dateAsRead: lineText,
  marks: lineText,
  expected: lineText,
  learned: howLearned,
  exhibits: z.array(z.number().int().positive()).max(200),
  /** Parts counted as one with it by the surveyor's word: a set of the parts list, or null for none; null: as listed. */
  countsWith: z
    .strictObject({ set: z.string().max(80).nullable(), reason: requiredLine })
    .nullable()
    .default(null),
  /** Head, drive, thread, plating, mark and witness marks of fastenings, expected and found; null: not looked at so. */
  fastening: fasteningFound.nullable().default(null),
  note: noteText,
})
export type PartEntry = z.infer<typeof partEntry>

/** One part of the parts list: reference data, not part of a record. */
export interface PartDefinition {
  readonly id: string
  readonly group: string
  readonly us: string
  readonly uk: string
  readonly identifyBy: readonly string[]
  readonly check: string
  readonly cautions: readonly Caution[]
  readonly travelsWith: string | null
  readonly replacedInService: 'routine' | 'often' | 'seldom' | 'not-a-part'
  /** `every car`: counted as not seen until entered. `some cars`: counted once it is entered. */
  readonly carried: 'every car' | 'some cars'
  /** Body styles that can carry it; null for all. */
  readonly bodies: readonly BodyStyle[] | null
}
