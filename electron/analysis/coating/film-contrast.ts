import { ProblemError } from '../../../shared-types/problem-error.ts'
import { studentQuantile } from '../statistics/quantiles.ts'
import type { PanelFilm } from './film-populations.ts'

/** How one film compares with another: their ratio with its 95 % interval, and how that stands to scatter within one paint job. */
export interface FilmContrast {
  readonly ratio: number
  readonly low: number
  readonly high: number
  /** True when the whole interval lies beyond what panels of one paint job differ by (two deviations of a difference). */
  readonly beyondOneJob: boolean
}

/**
 * Ratio of two films, as left wing to right wing, either side of a seam, or a panel to the car: difference of mean
 * logarithms with unequal variances (B. L. Welch, Biometrika 34 (1947) 28-35). `panelScatter` is the deviation of panels'
 * mean logarithms within one paint job.
 * @throws ProblemError when a film was read fewer than twice.
 */
export function filmContrast(one: PanelFilm, other: PanelFilm, panelScatter: number): FilmContrast {
  const thin = [one, other].find(({ readings }) => readings < 2)
  if (thin !== undefined)
    throw new ProblemError('rule-of-the-trade', `Read ${thin.panel} at two places at least to compare its film.`)
  const variance = ({ logDeviation, readings }: PanelFilm): number => logDeviation ** 2 / readings
  const [first, second] = [variance(one), variance(other)]
  const degreesOfFreedom =
    (first + second) ** 2 / (first ** 2 / (one.readings - 1) + second ** 2 / (other.readings - 1))
  const difference = one.meanLog - other.meanLog
  const half = studentQuantile(0.975, degreesOfFreedom) * Math.sqrt(first + second)
  return {
    ratio: Math.exp(difference),
    low: Math.exp(difference - half),
    high: Math.exp(difference + half),
    beyondOneJob: Math.abs(difference) - half > 2 * Math.SQRT2 * panelScatter,
  }
}
