import { z } from 'zod'
import { sampleTaken } from './fastening-sample.ts'
import { planPoint, viewId } from './finding.ts'
import { pictureMeasure } from './measuring.ts'
import { panelId } from './panel.ts'
import { tapeTaken } from './tape-question.ts'
import { instant, lineText, noteText } from './units.ts'

/** SHA-256 in lower-case hexadecimal (FIPS 180-4). */
export const sha256 = z.string().regex(/^[0-9a-f]{64}$/)

/** A picture as imported: its file, what its EXIF says, and the size of the upright rendering. */
export const photograph = z.strictObject({
  sha256,
  fileName: z.string().max(400),
  mediaType: z.enum(['image/jpeg', 'image/png', 'image/webp', 'image/tiff', 'image/heic']),
  byteLength: z.number().int().positive(),
  /** Size in pixels once turned upright. */
  widthPx: z.number().int().positive(),
  heightPx: z.number().int().positive(),
  /** EXIF orientation 1 to 8 (CIPA DC-008); 1 when the file has none. */
  orientation: z.number().int().min(1).max(8),
  /** Local camera time `2026-05-14T10:42:16`, as the camera had it; null when the file has none. */
  takenAt: z.string().max(40).nullable(),
  /** Offset from UTC such as `+01:00`; null when the camera did not say. */
  takenOffset: z.string().max(6).nullable(),
  camera: lineText,
  focalLengthMm: z.number().positive().nullable(),
  latitude: z.number().min(-90).max(90).nullable(),
  longitude: z.number().min(-180).max(180).nullable(),
})
export type Photograph = z.infer<typeof photograph>

/** A value measured by hand or on a photograph; `uncertainty` is expanded, k = 2 (JCGM 100:2008, 6.2). */
export const measurement = z.strictObject({
  what: lineText,
  value: z.number(),
  unit: z.enum(['mm', 'mm²', 'µm', '°', 'kg', '°C', 'count']),
  uncertainty: z.number().min(0).nullable(),
  method: lineText,
  instrument: lineText,
  /** What was read, where the value was worked out of several readings. */
  taken: tapeTaken.optional(),
  /** What was drawn and looked at, where the value is the count of a random sample; its exact bounds follow from it. */
  sample: sampleTaken.optional(),
})
export type Measurement = z.infer<typeof measurement>

/** What was picked on a photograph, in pixels of the upright picture, so that it can be opened and picked again. */
export const pickedGeometry = pictureMeasure.input
  .omit({ picture: true, coverage: true, draws: true, seed: true })
  .extend({
    /** Number of the exhibit that holds the photograph. */
    photograph: z.number().int().positive(),
  })
export type PickedGeometry = z.infer<typeof pickedGeometry>

/** What the user may write about an exhibit. */
export const exhibitWords = z.strictObject({
  caption: noteText,
  madeBy: lineText,
  place: lineText,
  panelId: panelId.nullable(),
  view: viewId.nullable(),
  at: planPoint.nullable(),
  inReport: z.boolean(),
})
export type ExhibitWords = z.infer<typeof exhibitWords>

/** An exhibit that is not a photograph. */
export const exhibitDraft = exhibitWords.extend({
  kind: z.enum(['document', 'measurement', 'statement', 'recording']),
  measurement: measurement.nullable(),
})
export type ExhibitDraft = z.infer<typeof exhibitDraft>

/** Evidence that findings and verdicts cite. Number E1, E2... for ever. */
export const exhibit = exhibitWords.extend({
  number: z.number().int().positive(),
  kind: z.enum(['photograph', 'document', 'measurement', 'statement', 'recording']),
  photograph: photograph.nullable(),
  measurement: measurement.nullable(),
  /** For a measurement read off a photograph; null for every other. */
  picked: pickedGeometry.nullable(),
  addedAt: instant,
})
export type Exhibit = z.infer<typeof exhibit>
