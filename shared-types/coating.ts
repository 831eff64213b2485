import { z } from 'zod'
import { calendarDay, instant, noteText, requiredLine, shownUnits, thicknessUm } from './units.ts'

const finite = z.number().min(-1e6).max(1e6)

/** A maker's declared error of a gauge, ±(a + b·t), and what it means: no maker's sheet says the same. */
export const declaredError = z.strictObject({
  constantUm: z.number().min(0).max(1000),
  percent: z.number().min(0).max(100),
  /** `95 % limit` is halved; a `tolerance` is the half-width of an even distribution (JCGM 100:2008, 4.3.7). */
  meaning: z.enum(['95 % limit', 'tolerance']),
})
export type DeclaredError = z.infer<typeof declaredError>
/** Error supposed of a gauge that declares none: common practice, no source. */
export const usualGaugeError: DeclaredError = { constantUm: 3, percent: 3, meaning: 'tolerance' }

/** One check of a gauge on a shim or on bare metal. */
export const shimCheck = z.strictObject({
  at: instant,
  /** Certified thickness, 0 for bare metal, and its standard uncertainty. */
  shimUm: thicknessUm,
  shimUncertaintyUm: z.number().min(0).max(1000).default(0),
  readUm: z.array(thicknessUm).min(1).max(10),
})
export type ShimCheck = z.infer<typeof shimCheck>

export const coatingPrinciple = z.enum(['magnetic induction', 'eddy current', 'ultrasonic'])
export const coatingSubstrate = z.enum([
  'steel',
  'zinc-coated steel',
  'aluminium',
  'lead-loaded seam',
  'glass fibre',
  'plastic',
  'wood',
  'unknown',
])
export type CoatingPrinciple = z.infer<typeof coatingPrinciple>
export type CoatingSubstrate = z.infer<typeof coatingSubstrate>

/** What a gauge of one principle shows over one substrate. */
export const substrateReach = z.strictObject({
  principle: coatingPrinciple,
  substrate: coatingSubstrate,
  reads: z.enum(['yes', 'with care', 'no']),
  /** What the number then contains, and what a wrong mode would show. */
  shows: requiredLine,
  /** A layer read with the paint, and between which thicknesses it usually lies. */
  adds: z.strictObject({ what: requiredLine, fromUm: thicknessUm, toUm: thicknessUm }).optional(),
  /** Name of a publication, or `common practice, no source`. */
  source: requiredLine,
})
export type SubstrateReach = z.infer<typeof substrateReach>

/** A span of thickness with a name of the trade. Guidance, editable, never a verdict on one number. */
export const practiceRange = z.strictObject({
  name: z.enum([
    'thinner film than the rest of the car',
    'film like the rest of the car',
    'thicker film, refinished',
    'skim of filler',
    'deep filler',
  ]),
  /** Thickness above the car's own film at which this begins, um; null for the thinnest, which has no lower end. */
  fromAboveFilmUm: z.number().min(-1000).max(100_000).nullable(),
  basis: requiredLine,
  author: requiredLine,
  date: calendarDay,
})
export const practiceRanges = z.array(practiceRange).min(2).max(12)
export type PracticeRange = z.infer<typeof practiceRange>

/** A paint film: its median and the standard deviation of its logarithm from place to place. */
const paintFilm = z.strictObject({
  medianUm: z.number().min(5).max(2000),
  logDeviation: z.number().min(0.01).max(1).default(0.1),
})

const fieldReading = z.strictObject({
  xMm: finite,
  yMm: finite,
  value: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('value'), um: thicknessUm }),
    z.strictObject({ kind: z.literal('more than'), um: thicknessUm }),
    z.strictObject({ kind: z.literal('no reading') }),
  ]),
  /** Standard uncertainty of the gauge at this reading, where its checks say it; else it follows from the declared error. */
  gaugeUm: z.number().min(0.01).max(100_000).optional(),
})

/** Where the panel is asked about: unrolled coordinates, and the true surface each node stands for. */
const fieldNode = z.strictObject({
  xMm: finite,
  yMm: finite,
  areaMm2: z.number().positive().max(1e7),
  /** False where the gauge cannot read: the node is left out of area and volume and counted as not assessed. */
  readable: z.boolean().default(true),
})

/** Question about the filler of one panel. */
export const coatingFieldInput = z.strictObject({
  readings: z.array(fieldReading).max(100_000),
  nodes: z.array(fieldNode).min(1).max(20_000),
  gauge: declaredError,
  /** The film of this car away from repairs; null lets the panel speak for itself. */
  reference: paintFilm.nullable(),
  /** Film and filler together thicker than this count as filler. */
  thresholdUm: z.number().min(20).max(20_000).default(300),
  /** Ranges of practice to class the surface by, and the car's own film with the standard uncertainty of its median. */
  classes: z
    .strictObject({
      ranges: practiceRanges,
      carFilm: z.strictObject({
        medianUm: z.number().min(5).max(2000),
        standardUncertaintyUm: z.number().min(0).max(1000),
      }),
    })
    .optional(),
  draws: z.number().int().min(60).max(2000).default(399),
  seed: z.string().max(100).default('coating'),
  /** Units the words of the answer are told in, metric where none are named; every number stays metric. */
  shownIn: shownUnits.optional(),
})
export type CoatingFieldInput = z.infer<typeof coatingFieldInput>

/** An extent with the ends of its interval. */
export const extentInterval = z.strictObject({
  low: z.number(),
  middle: z.number(),
  high: z.number(),
  /** Null where the interval has not been shown to hold what its share says. */
  coverage: z.number().nullable(),
  words: noteText,
})
const perNode = z.array(z.number()).readonly()

export const coatingFieldAnswer = z.strictObject({
  filmUm: z.number(),
  usedReadings: z.number().int(),
  /** Readings that failed, or lay outside; why, in words. */
  leftOut: z.array(z.strictObject({ count: z.number().int(), why: z.string() })).readonly(),
  saturated: z.number().int(),
  assessedM2: z.number(),
  notAssessedM2: z.number(),
  fillerAreaM2: extentInterval,
  fillerVolumeCm3: extentInterval,
  /** Share of the assessed surface in each range asked about, with the middle nine tenths of its draws; empty when none was. */
  classes: z
    .array(
      z.strictObject({
        name: practiceRange.shape.name,
        share: z.number(),
        lowShare: z.number(),
        highShare: z.number(),
        /** Chance that it covers a fiftieth of the surface or more, and that it covers more than any other. */
        presentChance: z.number(),
        largestChance: z.number(),
      }),
    )
    .readonly(),
  /** Chance that a node is filler, and thickness there with the ends of its 90 % interval; nodes in the order given. */
  fillerChance: perNode,
  thicknessUm: z.strictObject({ low: perNode, middle: perNode, high: perNode }),
  next: z.strictObject({
    spots: z.array(z.strictObject({ node: z.number().int(), xMm: z.number(), yMm: z.number(), words: z.string() })),
    words: z.string(),
  }),
  method: z.string(),
})
export type CoatingFieldAnswer = z.infer<typeof coatingFieldAnswer>

/** The paint film alone, where readings may be paint; nodes in the order given. */
export const filmMapAnswer = z.strictObject({
  paintReadings: z.number().int(),
  leftOutAsMore: z.number().int(),
  lowUm: perNode,
  middleUm: perNode,
  highUm: perNode,
  words: z.string(),
})
export type FilmMapAnswer = z.infer<typeof filmMapAnswer>
