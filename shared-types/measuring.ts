import { z } from 'zod'
import { requiredLine } from './units.ts'

const coverage = z.number().min(0.5).max(0.9999).default(0.95)
const positive = z.number().positive()
const nonNegative = z.number().min(0)

/** One thing that makes a result uncertain, with how the result moves when it moves. */
const uncertaintySource = z.strictObject({
  label: requiredLine,
  /** Change of the result for one unit of this quantity. */
  sensitivity: z.number().default(1),
  by: z.discriminatedUnion('kind', [
    /** Type A: repeated readings; their mean counts. */
    z.strictObject({ kind: z.literal('readings'), values: z.array(z.number()).min(2).max(10_000) }),
    /** A standard uncertainty with its degrees of freedom; null when they are taken as infinite. */
    z.strictObject({ kind: z.literal('standard uncertainty'), u: nonNegative, degreesOfFreedom: positive.nullable() }),
    /** Type B: within plus or minus a half-width. Arcsine: swings to and fro, such as a temperature held by a thermostat. */
    z.strictObject({
      kind: z.literal('half-width'),
      halfWidth: nonNegative,
      shape: z.enum(['rectangular', 'triangular', 'arcsine']),
    }),
    /** Type B: an expanded uncertainty as a certificate states it. */
    z.strictObject({ kind: z.literal('certificate'), expanded: nonNegative, k: positive }),
  ]),
})
export type UncertaintySource = z.infer<typeof uncertaintySource>

const unit = z.string().max(20)

export const combinedUncertainty = {
  about: 'Standard and expanded uncertainty of a result by JCGM 100:2008, with Welch-Satterthwaite degrees of freedom.',
  input: z.strictObject({ sources: z.array(uncertaintySource).min(1).max(100), coverage, unit }),
  output: z.strictObject({
    standard: nonNegative,
    /** Null: infinite. */
    degreesOfFreedom: z.number().nullable(),
    k: z.number(),
    expanded: nonNegative,
    coverage: z.number(),
    sources: z.array(z.strictObject({ label: z.string(), standard: z.number(), share: z.number() })).readonly(),
    words: z.string(),
  }),
}

const drawn = z.strictObject({
  mean: z.number(),
  standard: z.number(),
  /** Interval with equal shares left out below and above. */
  low: z.number(),
  high: z.number(),
  /** Shortest interval with the coverage. */
  shortestLow: z.number(),
  shortestHigh: z.number(),
  draws: z.number().int(),
})
export type DrawnDistribution = z.infer<typeof drawn>

const draws = z.number().int().min(1000).max(1_000_000).default(10_000)
const seed = z.string().max(100).default('1')

export const drawnUncertainty = {
  about: 'The distribution of a sum of uncertain quantities by drawing (JCGM 101:2008).',
  input: z.strictObject({
    estimate: z.number(),
    sources: z.array(uncertaintySource).min(1).max(100),
    coverage,
    draws,
    seed,
  }),
  output: drawn,
}

export const limitDecision = {
  about: 'A measured value against limits with its uncertainty (ISO 14253-1): inside, outside, or cannot be proven.',
  input: z.strictObject({
    value: z.number(),
    expanded: nonNegative,
    lower: z.number().nullable(),
    upper: z.number().nullable(),
    unit,
  }),
  output: z.strictObject({
    decision: z.enum(['inside', 'outside', 'cannot be proven']),
    /** Expanded uncertainty below which this value would be decided. */
    wouldDecide: z.number(),
    words: z.string(),
  }),
}

export type LimitDecision = z.infer<typeof limitDecision.output>['decision']

export const grubbs = {
  about: 'Whether the value furthest from the mean stands out from the rest (Grubbs). It is marked, never left out.',
  input: z.strictObject({
    values: z.array(z.number()).min(3).max(1000),
    significance: z.number().min(0.001).max(0.2).default(0.05),
    sides: z.enum(['either', 'greatest', 'least']).default('either'),
  }),
  output: z.strictObject({
    at: z.number().int(),
    value: z.number(),
    g: z.number(),
    critical: z.number(),
    standsOut: z.boolean(),
  }),
}

/** A place in the picture, pixels from the upper left corner, y down. */
const picturePoint = z.strictObject({ x: z.number(), y: z.number() })
export type PicturePoint = z.infer<typeof picturePoint>
const planePoint = z.strictObject({ xMm: z.number(), yMm: z.number() })

const knownLength = z.strictObject({ from: picturePoint, to: picturePoint, lengthMm: z.number(), uMm: nonNegative })

const plane = z.discriminatedUnion('kind', [
  /** Four or more points of the plane with their places on it. */
  z.strictObject({
    kind: z.literal('known points'),
    points: z
      .array(z.strictObject({ picture: picturePoint, plane: planePoint }))
      .min(4)
      .max(40),
    /** Standard uncertainty of each coordinate on the plane. */
    uMm: nonNegative,
  }),
  /** A bar in the plane, the camera looking at it squarely. */
  z.strictObject({ kind: z.literal('scale bar'), bar: knownLength }),
  /**
   * Corners in order round of a four-sided figure whose opposite sides are parallel. Its corners are square, or the focal
   * length in pixels is known; the middle of the picture is where the lens looks.
   */
  z.strictObject({
    kind: z.literal('two pairs of parallels'),
    corners: z.array(picturePoint).length(4),
    known: knownLength,
    focalLengthPx: positive.nullable(),
  }),
])
export type PicturePlane = z.infer<typeof plane>

const wanted = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('distance'), points: z.array(picturePoint).length(2) }),
  /** At the second point. */
  z.strictObject({ kind: z.literal('angle'), points: z.array(picturePoint).length(3) }),
  z.strictObject({ kind: z.literal('circle diameter'), points: z.array(picturePoint).min(3).max(200) }),
  z.strictObject({ kind: z.literal('area'), points: z.array(picturePoint).min(3).max(200) }),
])
export type WantedMeasure = z.infer<typeof wanted>

export const pictureMeasure = {
  about: 'A distance, angle, circle or area on a plane of a photograph, with first-order and drawn uncertainty.',
  input: z.strictObject({
    picture: z.strictObject({ widthPx: positive, heightPx: positive }),
    plane,
    wanted,
    /** Standard uncertainty of picking a point, pixels, each way. */
    pickPx: positive,
    /** Greatest distortion the lens leaves in the picture, pixels; null when the camera is not known. */
    distortionPx: nonNegative.nullable(),
    /** How far what is measured may lie off the plane, and how far the camera was from it; null when not known. */
    offPlane: z.strictObject({ offsetMm: nonNegative, cameraMm: positive }).nullable(),
    coverage,
    draws,
    seed,
  }),
  output: z.strictObject({
    value: z.number(),
    unit: z.enum(['mm', '°', 'mm²']),
    /** First-order standard uncertainty (JCGM 100). */
    standard: z.number(),
    drawn,
    /** Whether the two agree within a tenth of the drawn one. Where not, the drawn interval counts. */
    agree: z.boolean(),
    expanded: z.number(),
    coverage: z.number(),
    /** What the first-order value is made of, as standard uncertainties; their squares add up to its square. */
    parts: z.strictObject({ picking: nonNegative, reference: nonNegative, distortion: nonNegative }),
    /** Greatest error from lying off the plane, in the unit of the value; null when not stated. */
    offPlaneError: z.number().nullable(),
    notes: z.array(z.string()).readonly(),
  }),
}
export type PictureQuestion = z.infer<typeof pictureMeasure.input>
export type PictureMeasured = z.infer<typeof pictureMeasure.output>

const expectedValue = z.strictObject({ id: requiredLine, mean: z.number(), standardDeviation: nonNegative })

export const tellExactness = {
  about: 'Whether a measured value decides between the values of a tell, and how exact it would have to be to decide.',
  input: z.strictObject({
    value: z.number(),
    standardUncertainty: positive,
    /** What one measures when it is each value, with the spread of the thing itself. */
    expected: z.array(expectedValue).min(2).max(200),
    /** Likelihood ratio to the next likeliest value from which it counts as decided: "moderately strong" of ENFSI 2015. */
    enough: z.number().min(2).max(1e9).default(100),
    /** Standard deviations from a value beyond which it does not fit it. */
    fitsWithin: z.number().min(1).max(10).default(3),
  }),
  output: z.strictObject({
    decision: z.enum(['decides', 'does not decide', 'fits none']),
    likeliest: z.string(),
    /** Of the likeliest value to the next; null beyond what a number can hold. */
    likelihoodRatio: z.number().nullable(),
    /** Greatest standard uncertainty with which this value would decide; null when none would. */
    wouldDecide: z.number().nullable(),
  }),
}
