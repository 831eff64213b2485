import type { CoatingFieldInput, FilmMapAnswer } from '../../../shared-types/coating.ts'
import { HALF_OF_NINETY } from '../statistics/quantiles.ts'
import type { CovarianceStructure } from './covariance.ts'
import { filmOfPanel, filmWithoutReference } from './film-reference.ts'
import { type FieldReading, isPaint } from './latent-sites.ts'
import { type KrigingData, krige, krigingSystem } from './ordinary-kriging.ts'
import { usableReadings } from './usable-readings.ts'
import { experimentalVariogram } from './variogram.ts'
import { fitVariogram } from './variogram-fit.ts'

/** Fewest paint readings a variogram is fitted to; below, the film is taken as its mean with even scatter. */
const ENOUGH = 12

/**
 * The plain view of the paint film alone: ordinary kriging of the logarithms of the readings that may be paint, each with the
 * variance of its gauge; readings of more than paint and nodes that cannot be read are left out. The interval is that of the
 * film at a place and holds as far as the fitted variogram does; no coverage is claimed for it.
 * @throws ProblemError when there is nothing to map.
 */
export function filmMap(input: CoatingFieldInput, keepOn: () => void = () => undefined): FilmMapAnswer {
  const { readings } = usableReadings(input)
  const film = filmOfPanel(readings, input.reference ?? filmWithoutReference(readings))
  const paint = readings.filter((reading) => isPaint(reading, film) && reading.thicknessUm > 0)
  const readable = input.nodes.flatMap(({ readable: can }, at) => (can ? [at] : []))
  const answer = {
    paintReadings: paint.length,
    leftOutAsMore: readings.length - paint.length,
    lowUm: new Array<number>(input.nodes.length).fill(-1),
    middleUm: new Array<number>(input.nodes.length).fill(-1),
    highUm: new Array<number>(input.nodes.length).fill(-1),
  }
  if (paint.length === 0)
    return {
      ...answer,
      words: 'No reading may be paint alone: there is no film to map. Read where nothing was repaired.',
    }
  const data = logarithmsOf(paint)
  const structures = filmModel(data, film.logDeviation)
  const nodes = {
    x: Float64Array.from(readable, (at) => input.nodes[at]?.xMm ?? 0),
    y: Float64Array.from(readable, (at) => input.nodes[at]?.yMm ?? 0),
  }
  const { values, variances } = krige(krigingSystem(data, structures), nodes, keepOn)
  readable.forEach((at, row) => {
    const half = HALF_OF_NINETY * Math.sqrt(variances[row] as number)
    answer.lowUm[at] = Math.exp((values[row] as number) - half)
    answer.middleUm[at] = Math.exp(values[row] as number)
    answer.highUm[at] = Math.exp((values[row] as number) + half)
  })
  return {
    ...answer,
    words: `Film from ${paint.length} readings; ${readings.length - paint.length} read more than paint and are left out. Nodes that were not assessed are given as -1.`,
  }
}

function logarithmsOf(paint: readonly FieldReading[]): KrigingData {
  return {
    places: {
      x: Float64Array.from(paint, ({ xMm }) => xMm),
      y: Float64Array.from(paint, ({ yMm }) => yMm),
    },
    values: Float64Array.from(paint, ({ thicknessUm }) => Math.log(thicknessUm)),
    readingVariance: Float64Array.from(paint, ({ gaugeUm, thicknessUm }) => (gaugeUm / thicknessUm) ** 2),
  }
}

/** A fitted exponential model, the gauge's own variance taken out of its nugget; else even scatter. */
function filmModel(data: KrigingData, logDeviation: number): CovarianceStructure[] {
  const { places, values, readingVariance } = data
  const gauge = (readingVariance ?? values).reduce((sum, value) => sum + value, 0) / values.length
  const even: CovarianceStructure[] = [{ model: 'nugget', sill: logDeviation ** 2, range: 0 }]
  if (values.length < ENOUGH) return even
  const span = Math.hypot(spanOf(places.x), spanOf(places.y))
  const classes = experimentalVariogram(places, values, { cutoff: span / 2, width: span / 24, kind: 'robust' })
  const fit = fitVariogram(classes, 'exponential')
  if (fit === null || !(fit.sill + fit.nugget > 0)) return even
  return [
    { model: 'nugget', sill: Math.max(1e-5, fit.nugget - gauge), range: 0 },
    { model: 'exponential', sill: fit.sill, range: fit.range },
  ]
}

const spanOf = (values: Float64Array): number =>
  values.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY) -
  values.reduce((smallest, value) => Math.min(smallest, value), Number.POSITIVE_INFINITY)
