import { z } from 'zod'
import { coatingFieldInput } from './coating.ts'

const finite = z.number().min(-1e6).max(1e6)
const place = z.strictObject({ xMm: finite, yMm: finite })

/** A straight line across a panel, and how near it a reading must lie to be shown with it. */
export const sectionLine = z.strictObject({
  from: place,
  to: place,
  nearMm: z.number().min(1).max(1000).default(50),
})
export type SectionLine = z.infer<typeof sectionLine>

/** The question of a panel's field, and the line it is cut along. */
export const coatingSectionInput = z.strictObject({ field: coatingFieldInput, line: sectionLine })
export type CoatingSectionInput = z.infer<typeof coatingSectionInput>

const spread = z.strictObject({ low: z.number(), middle: z.number(), high: z.number() })

export const coatingSectionAnswer = z.strictObject({
  lengthMm: z.number(),
  nearMm: z.number(),
  /** Places along the line in rising order; `um` is null where the panel was not assessed or the line lies beside it. */
  places: z.array(z.strictObject({ alongMm: z.number(), um: spread.nullable() })).readonly(),
  /** Paint alone: the film's median, and between which thicknesses it lies at nine places in ten. */
  paintUm: spread,
  /** Readings near the line by their number in the question, where they lie along it and how far beside it. */
  readings: z
    .array(
      z.strictObject({
        reading: z.number().int(),
        alongMm: z.number(),
        besideMm: z.number(),
        um: z.number(),
        orMore: z.boolean(),
      }),
    )
    .readonly(),
  words: z.string(),
})
export type CoatingSectionAnswer = z.infer<typeof coatingSectionAnswer>
