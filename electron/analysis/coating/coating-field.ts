import type { CoatingFieldAnswer, CoatingFieldInput } from '../../../shared-types/coating.ts'
import { type CoatingField, drawCoatingField } from './drawn-panel.ts'
import { answerWithoutNodes, extentAnswer, extentQuestion } from './extent-answer.ts'
import { exceedingChance, thicknessMap } from './field-summary.ts'
import { gaugeUncertainty } from './gauge-error.ts'
import { nextReadingTerms, worthwhileSpots } from './next-reading.ts'
import { nextReadingAnswer, STEPS_AHEAD } from './next-reading-words.ts'
import { thicknessClasses } from './thickness-classes.ts'

/** Area, volume, maps and next readings of one panel: everything the computation `coating` answers. */
export function coatingField(input: CoatingFieldInput, keepOn: () => void = () => undefined): CoatingFieldAnswer {
  if (!input.nodes.some(({ readable }) => readable)) return answerWithoutNodes(input)
  const field = drawCoatingField(input, keepOn)
  const { drawn, film, readings, readable, extents } = field
  const question = extentQuestion(input, field)
  const map = thicknessMap(drawn, film.medianUm)
  const spots = worthwhileSpots(
    drawn,
    extents.volumeMm3,
    new Uint8Array(drawn.nodes).fill(1),
    nextReadingTerms(film, readings, (thicknessUm) => gaugeUncertainty(input.gauge, thicknessUm)),
    STEPS_AHEAD,
  )
  const volume = extentAnswer('volume', extents.volumeMm3, question)
  const chance = exceedingChance(drawn, input.thresholdUm - film.medianUm)
  const overAll = (values: Float64Array): number[] => {
    const spread = new Array<number>(input.nodes.length).fill(-1)
    readable.forEach((at, row) => {
      spread[at] = values[row] as number
    })
    return spread
  }
  return {
    filmUm: film.medianUm,
    usedReadings: readings.length,
    leftOut: field.leftOut,
    saturated: readings.filter(({ kind }) => kind === 'more than').length,
    assessedM2: question.assessedMm2 / 1e6,
    notAssessedM2: input.nodes.reduce((sum, { areaMm2, readable: can }) => sum + (can ? 0 : areaMm2), 0) / 1e6,
    fillerAreaM2: extentAnswer('area', extents.areaMm2, question),
    fillerVolumeCm3: volume,
    classes: classesOf(input, field),
    fillerChance: overAll(chance),
    thicknessUm: { low: overAll(map.lowUm), middle: overAll(map.middleUm), high: overAll(map.highUm) },
    next: nextReadingAnswer(input, field, spots, volume, chance),
    method: METHOD,
  }
}

const METHOD =
  'Paint film plus a Gaussian field of filler censored at nought; range, nugget and variance drawn along; area and volume added up draw by draw; ends of intervals set on simulated panels.'

function classesOf({ classes }: CoatingFieldInput, field: CoatingField): CoatingFieldAnswer['classes'] {
  if (classes === undefined) return []
  return thicknessClasses(field, classes.carFilm, classes.ranges).map(({ range, chance: _, ...share }) => ({
    name: range.name,
    ...share,
  }))
}
