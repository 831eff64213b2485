import { ProblemError } from '../../../shared-types/problem-error.ts'

/** The film of one panel: mean logarithm of the thickness of its paint readings, and how many they were. */
export interface PanelFilm {
  readonly panel: string
  readonly meanLog: number
  /** Standard deviation of one reading's logarithm on this panel. */
  readonly logDeviation: number
  readonly readings: number
}

/** A mixture of film populations, each with the median thickness its panels scatter about. */
export interface FilmMixture {
  readonly populations: readonly { readonly medianUm: number; readonly share: number }[]
  readonly logLikelihood: number
  /** Chance of the number of populations among those tried, from the Bayesian information criterion. */
  readonly weight: number
  /** Per panel the chance of each population. */
  readonly membership: readonly (readonly number[])[]
}

/** Scatter of panels' mean logarithms within one paint job. Common practice, no source; editable. */
const USUAL_PANEL_SCATTER = 0.12
const MOST_POPULATIONS = 3

/**
 * One, two and three populations of film over the panels of a car: normal mixtures of mean logarithms, each panel with the
 * scatter within one job and its own standard error, fitted by expectation and maximisation (Dempster, Laird and Rubin, J. R.
 * Statist. Soc. B 39 (1977) 1-38) from several starts, weighed by the criterion of G. Schwarz (Annals of Statistics 6 (1978)
 * 461-464). A population is compatible with one paint job; it never says which, nor that any is original.
 * @throws ProblemError with fewer than three panels.
 */
export function filmPopulations(panels: readonly PanelFilm[], panelScatter = USUAL_PANEL_SCATTER): FilmMixture[] {
  if (panels.length < 3)
    throw new ProblemError('rule-of-the-trade', 'Films can be compared from three panels on: read another panel.')
  const variances = panels.map(({ logDeviation, readings }) => panelScatter ** 2 + logDeviation ** 2 / readings)
  const values = panels.map(({ meanLog }) => meanLog)
  const fits = Array.from({ length: Math.min(MOST_POPULATIONS, panels.length - 1) }, (_, at) =>
    fitMixture(values, variances, at + 1),
  )
  const criteria = fits.map((fit, at) => fit.logLikelihood - 0.5 * (2 * at + 1) * Math.log(values.length))
  const top = Math.max(...criteria)
  const total = criteria.reduce((sum, value) => sum + Math.exp(value - top), 0)
  return fits.map((fit, at) => ({ ...fit, weight: Math.exp((criteria[at] as number) - top) / total }))
}

type Fit = Omit<FilmMixture, 'weight'>

function fitMixture(values: readonly number[], variances: readonly number[], count: number): Fit {
  const sorted = values.toSorted((one, other) => one - other)
  const starts = Array.from({ length: count === 1 ? 1 : 6 }, (_, turn) =>
    Array.from({ length: count }, (_, k) => {
      const place = ((k + 0.5) / count) ** (0.4 + 0.3 * turn)
      return sorted[Math.min(sorted.length - 1, Math.floor(place * sorted.length))] as number
    }),
  )
  return starts
    .map((means) => climb(values, variances, means))
    .reduce((best, fit) => (fit.logLikelihood > best.logLikelihood ? fit : best))
}

function climb(values: readonly number[], variances: readonly number[], start: readonly number[]): Fit {
  let means = [...start]
  let shares = means.map(() => 1 / means.length)
  let logLikelihood = Number.NEGATIVE_INFINITY
  let membership: number[][] = []
  for (let round = 0; round < 5000; round += 1) {
    const densities = values.map((value, at) =>
      means.map((mean, k) => (shares[k] as number) * density(value - mean, variances[at] as number)),
    )
    const sums = densities.map((own) =>
      Math.max(
        Number.MIN_VALUE,
        own.reduce((sum, value) => sum + value, 0),
      ),
    )
    const reached = sums.reduce((sum, value) => sum + Math.log(value), 0)
    membership = densities.map((own, at) => own.map((value) => value / (sums[at] as number)))
    if (reached - logLikelihood < 1e-12) break
    logLikelihood = reached
    const weight = (at: number, k: number): number => (membership[at]?.[k] ?? 0) / (variances[at] as number)
    means = means.map((mean, k) => {
      const total = values.reduce((sum, _, at) => sum + weight(at, k), 0)
      return total > 0 ? values.reduce((sum, value, at) => sum + weight(at, k) * value, 0) / total : mean
    })
    shares = shares.map((_, k) => membership.reduce((sum, own) => sum + (own[k] ?? 0), 0) / values.length)
  }
  return inRisingOrder(means, shares, membership, logLikelihood)
}

function inRisingOrder(means: number[], shares: number[], membership: number[][], logLikelihood: number): Fit {
  const order = means.map((_, k) => k).sort((one, other) => (means[one] as number) - (means[other] as number))
  return {
    populations: order.map((k) => ({ medianUm: Math.exp(means[k] as number), share: shares[k] as number })),
    membership: membership.map((own) => order.map((k) => own[k] as number)),
    logLikelihood,
  }
}

const density = (distance: number, variance: number): number =>
  Math.exp((-0.5 * distance ** 2) / variance) / Math.sqrt(2 * Math.PI * variance)
