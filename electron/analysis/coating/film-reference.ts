import { medianOf } from '../statistics/univariate.ts'
import type { FieldReading, PaintFilm } from './latent-sites.ts'

/** Readings within these shares of the reference may be paint; fewer than this many say nothing against the reference. */
const LEAST_SHARE = 0.5
const MOST_SHARE = 1.6
const ENOUGH = 5
/** Scale from a median absolute deviation to a standard deviation of a normal distribution. */
const NORMAL_SCALE = 1.4826
/** Bounds of what a sprayed film's thickness may vary by, as a deviation of the logarithm. Common practice, no source. */
const DEVIATION_BOUNDS = [0.05, 0.2] as const

/**
 * The film of this panel: median and robust deviation of the readings that may be paint, starting from the car's
 * reference and looking twice, so that a reference somewhat off is put right by the panel itself. Where too few readings
 * may be paint, the reference stands as it is.
 */
export function filmOfPanel(readings: readonly FieldReading[], reference: PaintFilm): PaintFilm {
  let film = reference
  for (let round = 0; round < 3; round += 1) {
    const paint = readings
      .filter(
        ({ kind, thicknessUm }) =>
          kind === 'value' && thicknessUm > LEAST_SHARE * film.medianUm && thicknessUm < MOST_SHARE * film.medianUm,
      )
      .map(({ thicknessUm }) => Math.log(thicknessUm))
      .sort((one, other) => one - other)
    if (paint.length < ENOUGH) return film
    const middle = medianOf(paint)
    const apart = paint.map((value) => Math.abs(value - middle)).sort((one, other) => one - other)
    const deviation = NORMAL_SCALE * medianOf(apart)
    film = {
      medianUm: Math.exp(middle),
      logDeviation: Math.min(DEVIATION_BOUNDS[1], Math.max(DEVIATION_BOUNDS[0], deviation)),
    }
  }
  return film
}

/** What a sprayed film is taken for when neither the car nor the panel says: modern 90 to 180 um. Common practice, no source. */
const USUAL_FILM: PaintFilm = { medianUm: 120, logDeviation: 0.15 }
const USUAL_BOUNDS = [40, 400] as const

/** Where the car has no reference: the middle of the thinner half of the readings, if paint may be that thick. */
export function filmWithoutReference(readings: readonly FieldReading[]): PaintFilm {
  const values = readings
    .filter(
      ({ kind, thicknessUm }) => kind === 'value' && thicknessUm >= USUAL_BOUNDS[0] && thicknessUm <= USUAL_BOUNDS[1],
    )
    .map(({ thicknessUm }) => thicknessUm)
    .sort((one, other) => one - other)
  if (values.length < ENOUGH) return USUAL_FILM
  return { medianUm: medianOf(values.slice(0, Math.ceil(values.length / 2))), logDeviation: USUAL_FILM.logDeviation }
}
