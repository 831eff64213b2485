import { z } from 'zod'
import { coating, coatingChange, coatingSection } from './coating-computations.ts'
import { dateCode, identificationNumber, odometer, timeLine, tyreCode } from './dating.ts'
import { fastening } from './fastening.ts'
import { identityAnswer, identityInput } from './identity-answer.ts'
import {
  combinedUncertainty,
  drawnUncertainty,
  grubbs,
  limitDecision,
  pictureMeasure,
  tellExactness,
} from './measuring.ts'
import { ownWeight, weightFound } from './own-weight.ts'
import { panelId } from './panel.ts'
import { readingValue } from './reading.ts'
import { jointOptions, partSupport, randomSample, sampleBound, sampleSize } from './sampling.ts'
import { areaJudgement, bounds, reference, shareRange } from './share-forms.ts'
import {
  diagonals,
  drumWear,
  gapSeries,
  sheetThickness,
  studCircle,
  trilateration,
  weldPitch,
} from './tape-measures.ts'
import { tellShares } from './tell-shares.ts'
import { coatingUnit, lengthUnit, percent, shownUnits, thicknessUm } from './units.ts'
import { howLearned, inspectionState, metalState, paintState, partState, walkLayer } from './words.ts'

const number = z.number().int().positive()
const areaM2 = z.number().positive()
/** One panel as the originality computation sees it. `areaM2` weighs it; `findings` are the steps behind its state. */
export const weighedPanel = z.strictObject({
  id: panelId,
  label: z.string(),
  /** Area of the body it is added up in, such as `left side`. */
  bodyArea: z.string(),
  layer: walkLayer,
  walked: z.boolean(),
  areaM2,
  areaIsMeasured: z.boolean(),
  inspection: inspectionState,
  reason: z.string(),
  metal: metalState,
  paint: paintState,
  backSeen: z.boolean(),
  findings: z
    .array(
      z.strictObject({
        number,
        text: z.string(),
        learned: howLearned,
        filler: z.boolean(),
        exhibits: z.array(number).readonly(),
      }),
    )
    .readonly(),
})
export type WeighedPanel = z.infer<typeof weighedPanel>

/** One part as counted. One that is left out is listed with the reason and not counted. */
export const countedPart = z.strictObject({
  id: z.string(),
  label: z.string(),
  group: z.string(),
  groupLabel: z.string(),
  state: partState,
  leftOut: z.enum(['added since', 'renewed by plan']).nullable(),
  learned: howLearned.nullable(),
  exhibits: z.array(number).readonly(),
})
export type CountedPart = z.infer<typeof countedPart>

const originality = {
  about:
    'Shares of metal, paint and parts as bounds, by area and by count times the user’s weights: low when all that is unseen is bad, high when it is all good.',
  input: z.strictObject({
    panels: z.array(weighedPanel).readonly(),
    parts: z.array(countedPart).readonly(),
    weights: z.array(ownWeight).default([]).readonly(),
    /** Units areas are told in, words only; metric where left out. */
    shownIn: shownUnits.optional(),
  }),
  output: z.strictObject({
    coverage: z
      .array(
        z.strictObject({
          layer: walkLayer,
          seen: z.number().int(),
          notAccessible: z.number().int(),
          walked: z.number().int(),
          all: z.number().int(),
        }),
      )
      .readonly(),
    whole: areaJudgement,
    areas: z.array(areaJudgement).readonly(),
    panels: z.array(areaJudgement).readonly(),
    parts: z.array(shareRange).readonly(),
    lookNext: z.array(z.strictObject({ panelId: z.string().nullable(), what: z.string(), why: z.string() })).readonly(),
    wouldNarrow: z
      .array(
        z.strictObject({
          reference,
          label: z.string(),
          how: z.string(),
          narrows: z
            .array(
              z.strictObject({
                range: z.enum(['original metal', 'factory finish', 'parts']),
                points: z.number(),
                now: bounds,
                ifYes: bounds,
                ifNo: bounds,
              }),
            )
            .readonly(),
          mostPoints: z.number(),
        }),
      )
      .readonly(),
    weights: z.string(),
    weightsSet: z.array(weightFound).readonly(),
    /** The shares of the whole without the weights set; null where none is. */
    unweighed: z.strictObject({ originalMetal: bounds, factoryPaint: bounds, parts: bounds.nullable() }).nullable(),
  }),
}

const spotSummary = {
  about: 'Mean, median, spread and standard uncertainty of the readings of one spot (JCGM 100:2008).',
  input: z.strictObject({
    values: z.array(readingValue).min(1).max(1000).readonly(),
    /** Declared error ±(errorUm + errorPercent of the reading); null when the gauge declares none. */
    gauge: z.strictObject({ errorUm: thicknessUm, errorPercent: percent }).nullable(),
  }),
  output: z.strictObject({
    /** Readings that gave a value; saturated ones and failures are counted apart. */
    n: z.number().int().min(0),
    saturated: z.number().int().min(0),
    failed: z.number().int().min(0),
    meanUm: z.number().nullable(),
    medianUm: z.number().nullable(),
    minUm: z.number().nullable(),
    maxUm: z.number().nullable(),
    /** Sample standard deviation, n - 1; null below two values. */
    standardDeviationUm: z.number().nullable(),
    /** s / √n (4.2.3); null below two values. */
    typeAUm: z.number().nullable(),
    /** Half-width of the declared error over √3, rectangular (4.3.7); null when none is declared. */
    gaugeUm: z.number().nullable(),
    /** Expanded uncertainty of the mean, k = 2 (6.2); null unless both parts are known. */
    expandedUm: z.number().nullable(),
    /** Half the range; a least value when a reading was saturated; null below two values or when all were saturated. */
    halfRangeUm: z.number().nullable(),
    /** True when a reading was saturated: the mean, the maximum and the half range are then "at least". */
    atLeast: z.boolean(),
    /** True when the median would move if a saturated reading were thicker. */
    medianAtLeast: z.boolean(),
  }),
}
export type SpotSummary = z.infer<typeof spotSummary.output>

const univariate = {
  about: 'Mean, sample standard deviation, median, least and greatest of any list of numbers.',
  input: z.strictObject({ values: z.array(z.number()).min(1).max(1_000_000).readonly() }),
  output: z.strictObject({
    n: z.number().int(),
    mean: z.number(),
    median: z.number(),
    standardDeviation: z.number().nullable(),
    standardUncertainty: z.number().nullable(),
    min: z.number(),
    max: z.number(),
  }),
}
export type Univariate = z.infer<typeof univariate.output>

const rustGrade = {
  about: 'Grade of rust by ISO 4628-3:2016 and ASTM D610-08 from the affected share of the area.',
  input: z.strictObject({ affectedPercent: percent }),
  output: z.strictObject({
    iso4628Part3: z.strictObject({ grade: z.string(), rule: z.string() }),
    astmD610: z.strictObject({ grade: z.number().int().min(0).max(10), rule: z.string() }),
  }),
}

const lengthConversion = {
  about: 'A length between millimetres and inches; one inch is 25.4 mm exactly.',
  input: z.strictObject({ value: z.number(), from: lengthUnit, to: lengthUnit }),
  output: z.strictObject({ value: z.number(), unit: lengthUnit }),
}

const coatingConversion = {
  about: 'A coating thickness between micrometres and mils; one mil is 25.4 µm exactly.',
  input: z.strictObject({ value: z.number(), from: coatingUnit, to: coatingUnit }),
  output: z.strictObject({ value: z.number(), unit: coatingUnit }),
}

const identity = {
  about:
    'What a car can still be, exactly: probabilities, conflicts, worth of each look, from rules, counts and tells.',
  input: identityInput,
  output: identityAnswer,
}

/** Every computation that can be run on plain input, by the name given on the command line. */
export const computations = {
  originality,
  'spot-summary': spotSummary,
  univariate,
  'rust-grade': rustGrade,
  'convert-length': lengthConversion,
  'convert-coating': coatingConversion,
  identity,
  'tell-shares': tellShares,
  coating,
  'coating-change': coatingChange,
  'coating-section': coatingSection,
  'identification-number': identificationNumber,
  'tyre-code': tyreCode,
  'date-code': dateCode,
  'time-line': timeLine,
  odometer,
  fastening,
  'sample-bound': sampleBound,
  'sample-size': sampleSize,
  'random-sample': randomSample,
  'part-support': partSupport,
  'joint-options': jointOptions,
  'combined-uncertainty': combinedUncertainty,
  'drawn-uncertainty': drawnUncertainty,
  'limit-decision': limitDecision,
  grubbs,
  'picture-measure': pictureMeasure,
  'tell-exactness': tellExactness,
  'stud-circle': studCircle,
  'drum-wear': drumWear,
  'gap-series': gapSeries,
  diagonals,
  trilateration,
  'sheet-thickness': sheetThickness,
  'weld-pitch': weldPitch,
} as const
export type ComputationName = keyof typeof computations
export type ComputationInput<N extends ComputationName> = z.infer<(typeof computations)[N]['input']>
export type ComputationOutput<N extends ComputationName> = z.infer<(typeof computations)[N]['output']>
