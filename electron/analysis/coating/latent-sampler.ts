import type { Draw } from '../sampling/seeded-draws.ts'
import { dotProduct } from '../statistics/dot-product.ts'
import { boundedNormal, gammaVariate } from '../statistics/random-variates.ts'
import type { FieldPrior } from './field-prior.ts'
import { type GridPoint, type LatentGrid, quadraticForm } from './latent-grid.ts'
import type { LatentSites } from './latent-sites.ts'

/** One draw of everything the field at other places depends on. */
export interface SiteDraw {
  /** Number of the range in the grid, and the nugget's share. */
  readonly range: number
  readonly nugget: number
  readonly deviation: number
  /** Mean of Y. */
  readonly mean: number
  /** The field at the readings, less its mean, in units of its deviation, without nugget. */
  readonly surface: Float64Array
}

/** Sweeps before the first draw is kept, and from one kept draw to the next. */
const WARM_UP = 80
const BETWEEN = 4

/**
 * Draws from the posterior of a Gaussian field of which readings give values, bounds or both: Gibbs sampling with the
 * censored values drawn along (De Oliveira, J. Comput. Graph. Stat. 14 (2005) 95-115, recalled; truncated normal steps as
 * Robert, Statistics and Computing 5 (1995) 121-125, recalled), range and nugget from a grid with the variance integrated
 * out (Ribeiro and Diggle, Technical Report ST-99-08, Lancaster 1999).
 */
export class LatentSampler {
  readonly #w: Float64Array
  #point: GridPoint
  #variance = 1

  constructor(
    readonly grid: LatentGrid,
    readonly sites: LatentSites,
    readonly prior: FieldPrior,
    readonly draw: Draw,
    readonly normal: Draw,
  ) {
    this.#point = grid.points[Math.floor(grid.points.length / 2)] as GridPoint
    this.#w = sites.value.map((value, at) => {
      const start =
        (sites.variance[at] as number) > 0
          ? value
          : sites.low[at] === Number.NEGATIVE_INFINITY
            ? Math.min(sites.high[at] as number, 0) - 0.5
            : (sites.low[at] as number) + 0.1
      return start - prior.mean
    })
  }

  /** `count` draws; `keepOn` is asked before each. */
  take(count: number, keepOn: () => void): SiteDraw[] {
    for (let sweep = 0; sweep < WARM_UP; sweep += 1) this.#step()
    return Array.from({ length: count }, () => {
      keepOn()
      for (let sweep = 0; sweep < BETWEEN; sweep += 1) this.#step()
      return this.#surface()
    })
  }

  #step(): void {
    this.#sweep()
    this.#drawVariance(this.#tryOtherPoint(quadraticForm(this.#point, this.grid.n, this.#w)))
  }

  /** Every site once, given all others: normal, bounded where censored, drawn to the reading where there is one. */
  #sweep(): void {
    const { n } = this.grid
    const { low, high, value, variance } = this.sites
    const { precision } = this.#point
    const w = this.#w
    const { mean } = this.prior
    for (let site = 0; site < n; site += 1) {
      const row = site * n
      const pull = dotProduct(precision, row, w, 0, n)
      const own = precision[row + site] as number
      const centre = (w[site] as number) - pull / own
      const spread = this.#variance / own
      const known = variance[site] as number
      if (known > 0) {
        const share = spread / (spread + known)
        const middle = centre + share * ((value[site] as number) - mean - centre)
        w[site] = middle + Math.sqrt(share * known) * this.normal()
      } else {
        const deviation = Math.sqrt(spread)
        const from = ((low[site] as number) - mean - centre) / deviation
        const to = ((high[site] as number) - mean - centre) / deviation
        w[site] = centre + deviation * boundedNormal(this.draw, from, to)
      }
    }
  }

  /**
   * Moves to another point of the grid, any as likely as the next, when its posterior is not too much less (Metropolis et
   * al., J. Chem. Phys. 21 (1953) 1087-1092). Takes and answers w' K^-1 w of the point stood on.
   */
  #tryOtherPoint(form: number): number {
    const { points, n } = this.grid
    if (points.length < 2) return form
    const other = points[Math.floor(this.draw() * points.length)] as GridPoint
    const otherForm = quadraticForm(other, n, this.#w)
    const gain = this.#logPosterior(other, otherForm) - this.#logPosterior(this.#point, form)
    if (Math.log(1 - this.draw()) > gain) return form
    this.#point = other
    return otherForm
  }

  #logPosterior({ logDeterminant }: GridPoint, form: number): number {
    const shape = this.prior.varianceShape + this.grid.n / 2
    return -0.5 * logDeterminant - shape * Math.log(this.prior.varianceScale + 0.5 * form)
  }

  #drawVariance(form: number): void {
    const shape = this.prior.varianceShape + this.grid.n / 2
    this.#variance = (this.prior.varianceScale + 0.5 * form) / gammaVariate(this.draw, this.normal, shape)
  }

  /** Mean and smooth part at the sites given the values there, by correcting a free draw (Matheron's rule). */
  #surface(): SiteDraw {
    const { n, correlationFactors } = this.grid
    const { precision, nugget, range } = this.#point
    const { meanSpread } = this.prior
    const deviation = Math.sqrt(this.#variance)
    const freeMean = Math.sqrt(meanSpread) * this.normal()
    const free = lowerTimes(correlationFactors[range] as Float64Array, n, Float64Array.from({ length: n }, this.normal))
    const gap = this.#w.map(
      (w, at) => w / deviation - freeMean - (free[at] as number) - Math.sqrt(nugget) * this.normal(),
    )
    const pull = new Float64Array(n)
    let total = 0
    for (let row = 0; row < n; row += 1) {
      pull[row] = dotProduct(precision, row * n, gap, 0, n)
      total += pull[row] as number
    }
    const surface = free.map(
      (value, at) => value + (gap[at] as number) - nugget * (pull[at] as number) - meanSpread * total,
    )
    return { range, nugget, deviation, mean: this.prior.mean + deviation * (freeMean + meanSpread * total), surface }
  }
}

function lowerTimes(factor: Float64Array, n: number, z: Float64Array): Float64Array {
  return z.map((_, row) => dotProduct(factor, row * n, z, 0, row + 1))
}
