import { ranksOf } from '../statistics/ranks.ts'
import type { FillerDraws } from './field-draws.ts'
import { type FieldReading, type PaintFilm, thickestPaint } from './latent-sites.ts'

/** A gauge and a film as the next reading will meet them. */
export interface NextReadingTerms {
  /** Filler that alone brings the gauge to its limit, um; infinite where it has none. */
  readonly saturationUm: number
  /** Filler up to which a reading cannot be told from paint, um. */
  readonly paintUm: number
  /** Standard deviation of a reading of film and gauge, at a depth of filler, um. */
  readonly readingDeviationUm: (fillerUm: number) => number
}

/**
 * What the readings so far say of the next: the gauge's limit is where it has gone beyond it, and unknown until then.
 * `gaugeUm` is its standard uncertainty at a thickness, both um.
 */
export function nextReadingTerms(
  film: PaintFilm,
  readings: readonly FieldReading[],
  gaugeUm: (thicknessUm: number) => number,
): NextReadingTerms {
  const limits = readings.filter(({ kind }) => kind === 'more than').map(({ thicknessUm }) => thicknessUm)
  return {
    saturationUm: limits.length === 0 ? Number.POSITIVE_INFINITY : Math.min(...limits) - film.medianUm,
    paintUm: thickestPaint(film, gaugeUm(film.medianUm)) - film.medianUm,
    readingDeviationUm: (fillerUm) => Math.hypot(film.medianUm * film.logDeviation, gaugeUm(film.medianUm + fillerUm)),
  }
}

/**
 * A place worth reading: share of the doubt about the volume it is expected to take away, given those before it. Doubt is the
 * variance of the volume's rank among the draws.
 */
export interface WorthwhileSpot {
  readonly node: number
  readonly reduction: number
}

/** Latent value below which the slope from latent to filler is not followed further. */
const LEAST_LATENT = 0.2

/**
 * The readings that would narrow the volume most, one after the other. What a reading would say is the filler at its node
 * cut to what the gauge can tell. Of the volume its rank among the draws is taken (W. J. Conover and R. L. Iman, The American
 * Statistician 35 (1981) 124-129, recalled), because a few draws with deep tails make up most of its variance and little of
 * its interval. The expected variance after the reading is that of the regression on it over the draws (M. Strong, J. E.
 * Oakley and A. Brennan, Medical Decision Making 34 (2014) 311-326, recalled). Later spots are chosen after taking out the
 * earlier ones, by the columns of a pivoted Cholesky factor.
 */
export function worthwhileSpots(
  drawn: FillerDraws,
  volume: Float64Array,
  candidates: Uint8Array,
  terms: NextReadingTerms,
  count: number,
): WorthwhileSpot[] {
  const { nodes, draws } = drawn
  const middle = (draws + 1) / 2
  const centred = ranksOf(volume).map((rank) => rank - middle)
  const total = centred.reduce((sum, value) => sum + value * value, 0) / draws
  if (!(total > 0)) return []
  const { readings, own, withVolume, noise } = simulatedReadings(drawn, centred, candidates, terms)
  const columns: Float64Array[] = []
  const chosen: WorthwhileSpot[] = []
  for (let step = 0; step < count; step += 1) {
    let best = -1
    let most = 0
    for (let node = 0; node < nodes; node += 1) {
      const worth = (withVolume[node] as number) ** 2 / ((own[node] as number) + (noise[node] as number))
      if (candidates[node] === 1 && worth > most) {
        most = worth
        best = node
      }
    }
    if (best === -1) break
    chosen.push({ node: best, reduction: most / total })
    if (step + 1 === count) break
    takeOut(best, readings, own, withVolume, noise, columns, draws)
  }
  return chosen
}

/** Readings at every candidate less their mean, their variance, their covariance with the volume's rank, and what a reading adds. */
function simulatedReadings(
  { fillerUm, nodes, draws, shapes, nuggetVariance }: FillerDraws,
  centred: Float64Array,
  candidates: Uint8Array,
  { saturationUm, paintUm, readingDeviationUm }: NextReadingTerms,
) {
  const readings = new Float32Array(nodes * draws)
  const own = new Float64Array(nodes)
  const withVolume = new Float64Array(nodes)
  const noise = new Float64Array(nodes)
  const nugget = shapes.map((shape, d) => 1e6 * shape ** 2 * (nuggetVariance[d] as number))
  const power = shapes.map((shape) => (2 * (shape - 1)) / shape)
  for (let node = 0; node < nodes; node += 1) {
    if (candidates[node] === 0) continue
    const row = node * draws
    let sum = 0
    let rough = 0
    let thick = 0
    for (let d = 0; d < draws; d += 1) {
      const filler = fillerUm[row + d] as number
      const shown = Math.min(saturationUm, Math.max(paintUm, filler))
      readings[row + d] = shown
      sum += shown
      if (filler <= paintUm || filler >= saturationUm) continue
      thick += 1
      const depth = Math.max(LEAST_LATENT, filler / 1000)
      rough += (nugget[d] as number) * powerOf(depth, power[d] as number)
    }
    if (thick === 0) continue
    const mean = sum / draws
    let square = 0
    let product = 0
    for (let d = 0; d < draws; d += 1) {
      const value = (readings[row + d] as number) - mean
      readings[row + d] = value
      square += value * value
      product += value * (centred[d] as number)
    }
    own[node] = square / draws
    withVolume[node] = product / draws
    noise[node] = rough / draws + readingDeviationUm(mean) ** 2
  }
  return { readings, own, withVolume, noise }
}

/** A depth to a power; those of the usual shapes, 0.5, 1 and 2, without a logarithm. */
function powerOf(depth: number, power: number): number {
  if (power === 0) return 1
  if (power === 1) return depth
  return power === -2 ? 1 / (depth * depth) : depth ** power
}

/** Takes what the chosen reading explains out of all variances and covariances. */
function takeOut(
  chosen: number,
  readings: Float32Array,
  own: Float64Array,
  withVolume: Float64Array,
  noise: Float64Array,
  columns: Float64Array[],
  draws: number,
): void {
  const root = Math.sqrt((own[chosen] as number) + (noise[chosen] as number))
  const share = (withVolume[chosen] as number) / root
  const base = chosen * draws
  const column = new Float64Array(own.length)
  for (let node = 0; node < own.length; node += 1) {
    if (own[node] === 0) continue
    const row = node * draws
    let product = 0
    for (let d = 0; d < draws; d += 1) product += (readings[row + d] as number) * (readings[base + d] as number)
    product /= draws
    for (const earlier of columns) product -= (earlier[node] as number) * (earlier[chosen] as number)
    column[node] = product / root
  }
  for (let node = 0; node < own.length; node += 1) {
    const value = column[node] as number
    withVolume[node] = (withVolume[node] as number) - share * value
    own[node] = Math.max(0, (own[node] as number) - value * value)
  }
  columns.push(column)
}
