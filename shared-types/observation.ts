import { z } from 'zod'
import { sheetName } from './sheet-copy.ts'
import { noteText } from './units.ts'

/** How a tell stands after it was looked for. `disturbed`: it is there, but no longer tells of the factory. */
export const observationState = z.enum(['seen', 'believed', 'measured', 'cannot be seen', 'disturbed'])

/** A tell of a sheet, `sheet-name/tell-name`. */
export const tellKey = z
  .string()
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*\/[a-z0-9]+(-[a-z0-9]+)*$/)
  .max(161)

/** What was seen of one tell; keyed by `tell`. A tell without a row was not looked at. */
export const observation = z.strictObject({
  tell: tellKey,
  state: observationState,
  /** The value seen or believed; null when measured, or when nothing can be said. */
  value: sheetName.nullable(),
  /** For `believed`: how sure, as a share of 100 that the value is the one named. */
  surePercent: z.number().min(1).max(99).nullable(),
  /** For `measured`: the value in the tell's unit, with its standard uncertainty (JCGM 100). */
  measured: z
    .strictObject({
      value: z.number(),
      standardUncertainty: z.number().positive(),
      /** Number of the measurement it was taken from, among `exhibits`; the value follows when that is measured again. */
      from: z.number().int().positive().optional(),
    })
    .nullable(),
  exhibits: z.array(z.number().int().positive()).max(200),
  note: noteText,
})
export type Observation = z.infer<typeof observation>
