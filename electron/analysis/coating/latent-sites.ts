import type { Places } from './covariance.ts'
import type { FieldPrior } from './field-prior.ts'

/** One reading as the field sees it. */
export interface FieldReading {
  readonly xMm: number
  readonly yMm: number
  readonly kind: 'value' | 'more than'
  readonly thicknessUm: number
  /** Standard uncertainty of the gauge at that value, um. */
  readonly gaugeUm: number
}

/** The paint film that lies everywhere: its median and the standard deviation of its logarithm from place to place. */
export interface PaintFilm {
  readonly medianUm: number
  readonly logDeviation: number
}

/** How far above the film's median a reading must lie before it counts as more than paint, in standard deviations. */
const PAINT_DEVIATIONS = 3

/** Readings on the latent scale of one shape: between `low` and `high`; or, where `variance` is above nought, near `value`. */
export interface LatentSites {
  readonly places: Places
  readonly low: Float64Array
  readonly high: Float64Array
  readonly value: Float64Array
  readonly variance: Float64Array
}

/** Standard deviation of a reading of paint alone, um. */
const paintDeviation = (film: PaintFilm, gaugeUm: number): number =>
  Math.hypot(film.medianUm * film.logDeviation, gaugeUm)

/** The thickest that paint alone would read, um: the film varies as a lognormal quantity, the gauge as a normal one. */
export const thickestPaint = (film: PaintFilm, gaugeUm: number): number =>
  film.medianUm +
  Math.hypot(film.medianUm * Math.expm1(PAINT_DEVIATIONS * film.logDeviation), PAINT_DEVIATIONS * gaugeUm)

/** Whether a reading is no more than paint would give. */
export const isPaint = ({ kind, thicknessUm, gaugeUm }: FieldReading, film: PaintFilm): boolean =>
  kind === 'value' && thicknessUm <= thickestPaint(film, gaugeUm)

/**
 * Readings of paint are left-censored, saturated ones right-censored, others known but for gauge and film, whose deviation
 * is carried to the latent scale by its slope (Glasbey and Nevison, Lecture Notes in Statistics 122 (1997) 233-242, for the
 * transformed field censored at nought; JCGM 100:2008, 5.1.2, for the slope).
 */
export function latentSites(
  readings: readonly FieldReading[],
  film: PaintFilm,
  shape: number,
  prior: FieldPrior,
): LatentSites {
  const n = readings.length
  const low = new Float64Array(n).fill(Number.NEGATIVE_INFINITY)
  const high = new Float64Array(n).fill(Number.POSITIVE_INFINITY)
  const value = new Float64Array(n)
  const variance = new Float64Array(n)
  const latent = (fillerUm: number): number => (Math.max(0, fillerUm) / 1000) ** (1 / shape)
  readings.forEach((reading, at) => {
    const filler = reading.thicknessUm - film.medianUm
    if (isPaint(reading, film)) high[at] = latent(thickestPaint(film, reading.gaugeUm) - film.medianUm)
    else if (reading.kind === 'more than') {
      low[at] = latent(filler)
      high[at] = latent(Math.max(prior.deepestUm, 2 * filler))
    } else {
      value[at] = latent(filler)
      const deviation = paintDeviation(film, reading.gaugeUm)
      variance[at] = (deviation * ((filler / 1000) ** (1 / shape - 1) / shape / 1000)) ** 2
    }
  })
  return {
    places: {
      x: Float64Array.from(readings, ({ xMm }) => xMm),
      y: Float64Array.from(readings, ({ yMm }) => yMm),
    },
    low,
    high,
    value,
    variance,
  }
}
