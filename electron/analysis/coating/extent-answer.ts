import type { CoatingFieldAnswer, CoatingFieldInput } from '../../../shared-types/coating.ts'
import { askedMeasures, type CoatingMeasures, type ShownQuantity } from '../../../shared-types/coating-measures.ts'
import type { CoatingField } from './drawn-panel.ts'
import { fieldPrior } from './field-prior.ts'
import {
  drawnInterval,
  evidenceOf,
  grainOf,
  type Interval,
  shiftedInterval,
  shiftsFor,
  simulatedAreaM2,
} from './interval-calibration.ts'
import type { Extent } from './interval-shifts.ts'
import { type IntervalTrust, intervalTrust } from './interval-trust.ts'
import { isPaint } from './latent-sites.ts'

/** What an extent's interval rests on. */
export interface ExtentQuestion {
  readonly readings: number
  readonly paint: number
  readonly saturated: number
  readonly assessedMm2: number
  readonly deepestUm: number
  readonly thresholdUm: number
}

/** The same with what its words are told in. */
export interface ToldExtentQuestion extends ExtentQuestion {
  readonly measures: CoatingMeasures
}

/** What the extents of a drawn field rest on. */
export function extentQuestion(
  input: CoatingFieldInput,
  { readings, film, weights }: CoatingField,
): ToldExtentQuestion {
  return {
    readings: readings.length,
    paint: readings.filter((reading) => isPaint(reading, film)).length,
    saturated: readings.filter(({ kind }) => kind === 'more than').length,
    assessedMm2: weights.reduce((sum, weight) => sum + weight, 0),
    deepestUm: fieldPrior.deepestUm,
    thresholdUm: input.thresholdUm,
    measures: askedMeasures(input),
  }
}

type IntervalAnswer = CoatingFieldAnswer['fillerAreaM2']

/** Interval of an extent with shifted ends, in the extent's own unit, mm2 or mm3. */
export function extentInterval(extent: Extent, draws: Float64Array, question: ExtentQuestion): Interval {
  const { readings, paint, assessedMm2, deepestUm } = question
  const most = extent === 'area' ? assessedMm2 : (assessedMm2 * deepestUm) / 1000
  const shifts = shiftsFor(readings, extent, evidenceOf(readings, paint))
  return shiftedInterval(drawnInterval(draws), shifts, grainOf(extent, assessedMm2), most)
}

/**
 * Interval in m2 or cm3 with its words. It is called one of 90 % only where simulated panels of such a size and number of
 * readings bear that out; else the words say what is missing.
 */
export function extentAnswer(extent: Extent, draws: Float64Array, question: ToldExtentQuestion): IntervalAnswer {
  const per = extent === 'area' ? 1e6 : 1000
  const { low, middle, high } = extentInterval(extent, draws, question)
  const trust = trustOfExtent(question, extent)
  const { text, figure } = shownExtent(extent, question.measures)
  const span = `${text(middle / per)} (${figure(low / per)} to ${figure(high / per)}`
  const limit =
    extent === 'volume' && question.saturated > 0
      ? ` ${question.saturated === 1 ? '1 reading' : `${question.saturated} readings`} went beyond the gauge: the upper end supposes that filler is no deeper than ${question.measures.smallLength.text(question.deepestUm / 1000)}.`
      : ''
  return {
    low: low / per,
    middle: middle / per,
    high: high / per,
    coverage: trust.coverage,
    words: `${span}${trust.coverage === null ? `; ${trust.reason}` : `, ${trust.called}`}).${limit}`,
  }
}

/** What the interval of an extent may be called, by the readings it rests on and the size of what was read. */
export function trustOfExtent({ readings, assessedMm2, measures }: ToldExtentQuestion, extent: Extent): IntervalTrust {
  const trust = intervalTrust(readings, extent)
  const squareMetres = assessedMm2 / 1e6
  if (trust.coverage === null || (squareMetres >= simulatedAreaM2[0] && squareMetres <= simulatedAreaM2[1]))
    return trust
  return {
    coverage: null,
    reason: `the panel is not of a size that was tried out, ${measures.area.span(...simulatedAreaM2)}, so this is not called 90 %`,
  }
}

/** An extent in the units of the words, from m2 or cm3. */
export const shownExtent = (extent: Extent, { area, volume }: CoatingMeasures): ShownQuantity =>
  extent === 'area' ? area : volume

/** The answer when nothing of the panel can be read: not assessed, and nothing said of filler. */
export function answerWithoutNodes({ nodes, readings }: CoatingFieldInput): CoatingFieldAnswer {
  const nothing = {
    low: 0,
    middle: 0,
    high: 0,
    coverage: null,
    words:
      'Nothing of this panel could be assessed: the gauge cannot read what lies below. This says nothing about filler.',
  }
  const none = nodes.map(() => -1)
  return {
    filmUm: 0,
    usedReadings: 0,
    leftOut: readings.length === 0 ? [] : [{ count: readings.length, why: 'no part of the panel can be read' }],
    saturated: 0,
    assessedM2: 0,
    notAssessedM2: nodes.reduce((sum, { areaMm2 }) => sum + areaMm2, 0) / 1e6,
    fillerAreaM2: nothing,
    fillerVolumeCm3: nothing,
    classes: [],
    fillerChance: none,
    thicknessUm: { low: none, middle: none, high: none },
    next: { spots: [], words: 'No reading would help: use a gauge whose method suits what lies below.' },
    method: 'None: no node could be read.',
  }
}
