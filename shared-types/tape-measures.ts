import { z } from 'zod'
import { limitDecision } from './measuring.ts'
import { requiredLine } from './units.ts'

const lengthMm = z.number()
/** Half-width a tape, calliper or rule is good to: true values within it are taken as equally likely. */
export const toolGoodToMm = z.number().positive()
export const tapeCoverage = z.number().min(0.5).max(0.9999).default(0.95)
const goodToMm = toolGoodToMm
const coverage = tapeCoverage
const decided = limitDecision.output

export const studPattern = z.strictObject({
  label: requiredLine,
  studs: z.number().int().min(3).max(20),
  diameterMm: z.number().positive(),
})

export const studCircle = {
  about: 'Diameter of a stud circle from spacings of neighbours or of studs further on, and the patterns it can be.',
  input: z.strictObject({
    studs: z.number().int().min(3).max(20),
    /** Between centres; `step` 1 neighbours, 2 the next but one, half the number of studs opposite ones. */
    spacings: z
      .array(z.strictObject({ mm: lengthMm, step: z.number().int().min(1).max(10) }))
      .min(1)
      .max(60),
    goodToMm,
    patterns: z.array(studPattern).max(500),
    coverage,
  }),
  output: z.strictObject({
    diameterMm: z.number(),
    standardMm: z.number(),
    expandedMm: z.number(),
    /** Nearest first; `possible` when the measurement does not rule it out. */
    patterns: z
      .array(z.strictObject({ label: z.string(), diameterMm: z.number(), offMm: z.number(), possible: z.boolean() }))
      .readonly(),
    /** Expanded uncertainty of the diameter below which one pattern would be left; null with fewer than two. */
    wouldDecideMm: z.number().nullable(),
    /** Whether the spacings agree with one circle within what the tape is good to. */
    spacingsAgree: z.boolean(),
    words: z.string(),
  }),
}

export const drumWear = {
  about: 'A drum or disc against its nominal sizes and wear limit, and whether that can be proven.',
  input: z.strictObject({
    readingsMm: z.array(lengthMm).min(1).max(100),
    goodToMm,
    /** `limitMm`: greatest diameter of a worn drum, least thickness of a worn disc. */
    sizes: z
      .array(z.strictObject({ label: requiredLine, nominalMm: z.number().positive(), limitMm: z.number().positive() }))
      .min(1)
      .max(50),
    coverage,
  }),
  output: z.strictObject({
    meanMm: z.number(),
    expandedMm: z.number(),
    sizes: z
      .array(z.strictObject({ label: z.string(), possible: z.boolean(), wearMm: z.number(), limit: decided }))
      .readonly(),
    words: z.string(),
  }),
}

const joint = z
  .array(z.strictObject({ atMm: z.number(), gapMm: lengthMm }))
  .min(3)
  .max(50)

export const gapSeries = {
  about: 'Gaps of one joint at three or more places: mean, range, taper, and the difference of the other side.',
  input: z.strictObject({
    left: joint,
    right: joint.nullable(),
    goodToMm,
    coverage,
    /** `flush`: how far one panel stands proud of the other; below nothing where it stands back. */
    of: z.enum(['gap', 'flush']).default('gap'),
  }),
  output: z.strictObject({
    sides: z
      .array(
        z.strictObject({
          side: z.enum(['left', 'right']),
          meanMm: z.number(),
          rangeMm: z.number(),
          /** From the first place to the last, along a straight line of least squares. */
          taperMm: z.number(),
          expandedTaperMm: z.number(),
        }),
      )
      .readonly(),
    differenceMm: z.number().nullable(),
    expandedDifferenceMm: z.number().nullable(),
    words: z.string(),
  }),
}

export const diagonals = {
  about: 'Two diagonals of a four-sided opening: difference, the sideways lean it means, and what it does not prove.',
  input: z.strictObject({
    firstMm: lengthMm,
    secondMm: lengthMm,
    widthMm: lengthMm,
    lengthMm,
    goodToMm,
    limitMm: z.number().positive().nullable(),
    coverage,
  }),
  output: z.strictObject({
    differenceMm: z.number(),
    expandedMm: z.number(),
    leanMm: z.number(),
    limit: decided.nullable(),
    notes: z.array(z.string()).readonly(),
  }),
}

const place = { xMm: z.number(), yMm: z.number() }

export const trilateration = {
  about: 'Where a point lies from its distances to three or more known ones, by least squares with residuals.',
  input: z.strictObject({
    from: z
      .array(z.strictObject({ label: requiredLine, ...place, distanceMm: lengthMm }))
      .min(3)
      .max(100),
    /** Standard uncertainty of each distance. */
    uMm: z.number().positive(),
  }),
  output: z.strictObject({
    ...place,
    uxMm: z.number(),
    uyMm: z.number(),
    residuals: z.array(z.strictObject({ label: z.string(), mm: z.number() })).readonly(),
    /** Sum of squared residuals over u², and the most that chance gives once in twenty times. */
    misfit: z.number(),
    misfitLimit: z.number(),
    fits: z.boolean(),
  }),
}

export const sheetThickness = {
  about: 'Thickness of sheet from the travel time of ultrasound, and how much paint adds when it is not left out.',
  input: z.strictObject({
    travelTimeUs: z.number(),
    uTimeUs: z.number().min(0),
    velocityMetalMs: z.number().positive().default(5920),
    uVelocityMetalMs: z.number().min(0).default(0),
    /** Between two echoes of the back wall, which leaves the paint out; otherwise from the surface of the paint. */
    echoToEcho: z.boolean(),
    paintUm: z.number().min(0),
    uPaintUm: z.number().min(0),
    velocityPaintMs: z.number().positive().default(2500),
    nominalMm: z.number().positive().nullable(),
    coverage,
  }),
  output: z.strictObject({
    thicknessMm: z.number(),
    expandedMm: z.number(),
    /** What the paint would add if it were taken for metal. */
    paintErrorMm: z.number(),
    lossPercent: z.number().nullable(),
    expandedLossPercent: z.number().nullable(),
    notes: z.array(z.string()).readonly(),
  }),
}

export const weldPitch = {
  about: 'Pitch of a row of spot welds: mean, spread, the one that stands out, against what the sheet says.',
  input: z.strictObject({
    pitchesMm: z.array(lengthMm).min(3).max(500),
    goodToMm,
    expected: z.strictObject({ lowMm: z.number().positive(), highMm: z.number().positive() }).nullable(),
    coverage,
  }),
  output: z.strictObject({
    meanMm: z.number(),
    standardDeviationMm: z.number(),
    expandedMm: z.number(),
    standsOut: z.number().int().nullable(),
    limit: decided.nullable(),
    words: z.string(),
  }),
}
