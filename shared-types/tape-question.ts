import { z } from 'zod'
import { tellKey } from './observation.ts'
import {
  diagonals,
  drumWear,
  gapSeries,
  sheetThickness,
  studCircle,
  tapeCoverage,
  toolGoodToMm,
  trilateration,
  weldPitch,
} from './tape-measures.ts'
import { lineText } from './units.ts'

/** One quantity measured again and again, against limits where there are any. */
const repeated = z.strictObject({
  kind: z.literal('repeated'),
  readingsMm: z.array(z.number()).min(1).max(1000),
  goodToMm: toolGoodToMm,
  lowerMm: z.number().nullable(),
  upperMm: z.number().nullable(),
  coverage: tapeCoverage,
})

/** Readings of tape, calliper or probe as taken, by what is worked out of them; lengths in millimetres. */
export const tapeQuestion = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('stud circle'), ...studCircle.input.omit({ patterns: true }).shape }),
  z.strictObject({ kind: z.literal('drum or disc'), ...drumWear.input.shape }),
  z.strictObject({
    kind: z.literal('gaps'),
    ...gapSeries.input.shape,
    /** Id of a joint of the joint list; null where the joint is named in words only. */
    jointId: z.string().max(120).nullable(),
    /** False where the places were taken as evenly spaced and not measured. */
    placesMeasured: z.boolean(),
  }),
  z.strictObject({ kind: z.literal('diagonals'), ...diagonals.input.shape }),
  z.strictObject({ kind: z.literal('trilateration'), ...trilateration.input.shape, coverage: tapeCoverage }),
  z.strictObject({ kind: z.literal('sheet thickness'), ...sheetThickness.input.shape }),
  z.strictObject({ kind: z.literal('weld pitch'), ...weldPitch.input.shape }),
  repeated,
])
export type TapeQuestion = z.infer<typeof tapeQuestion>
export type TapeKind = TapeQuestion['kind']
export type TapeQuestionOf<K extends TapeKind> = Extract<TapeQuestion, { kind: K }>

/** What was read, where, and the tell of a sheet it is compared with. Kept with the measurement, so that it can be worked out again. */
export const tapeTaken = z.strictObject({ question: tapeQuestion, tell: tellKey.nullable(), where: lineText })
export type TapeTaken = z.infer<typeof tapeTaken>
