import type { Draw } from '../sampling/seeded-draws.ts'
import { boundedNormal, gammaVariate } from '../statistics/random-variates.ts'
import type { FieldPrior } from './field-prior.ts'
import type { GridPoint, LatentGrid } from './latent-grid.ts'
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
  /** The latent values less the prior's mean, and room for one more vector, both in the grid's memory. */
  readonly #w: Float64Array
  readonly #room: Float64Array
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
    this.#w = grid.memory.numbers(grid.n)
    this.#room = grid.memory.numbers(grid.n)
    sites.value.forEach((value, at) => {
      const start =
        (sites.variance[at] as number) > 0
          ? value
          : sites.low[at] === Number.NEGATIVE_INFINITY
            ? Math.min(sites.high[at] as number, 0) - 0.5
            : (sites.low[at] as number) + 0.1
      this.#w[at] = start - prior.mean
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
    this.#drawVariance(this.#tryOtherPoint(this.#formAt(this.#point)))
  }

  /** w' K^-1 w at one point of the grid. */
  #formAt({ precision }: GridPoint): number {
    const { memory, n } = this.grid
    return memory.kernel.quadraticForm(precision.byteOffset, this.#w.byteOffset, n)
  }

  /** Every site once, given all others: normal, bounded where censored, drawn to the reading where there is one. */
  #sweep(): void {
    const { n, memory } = this.grid
    const { kernel } = memory
    const { low, high, value, variance } = this.sites
    const { precision } = this.#point
    const w = this.#w
    const { mean } = this.prior
    for (let site = 0; site < n; site += 1) {
      const pull = kernel.dot(precision.byteOffset + 8 * site * n, w.byteOffset, n)
      const own = precision[site * n + site] as number
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
    const { points } = this.grid
    if (points.length < 2) return form
    const other = points[Math.floor(this.draw() * points.length)] as GridPoint
    const otherForm = this.#formAt(other)
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
    for (let at = 0; at < n; at += 1) this.#room[at] = this.normal()
    const free = this.#room.map((_, row) => this.#dotWithRoom(correlationFactors[range] as Float64Array, row))
    const rough = Math.sqrt(nugget)
    for (let at = 0; at < n; at += 1)
      this.#room[at] = (this.#w[at] as number) / deviation - freeMean - (free[at] as number) - rough * this.normal()
    const pull = this.#room.map((_, row) => this.#dotWithRoom(precision, row))
    const total = pull.reduce((sum, value) => sum + value, 0)
    const surface = free.map(
      (value, at) => value + (this.#room[at] as number) - nugget * (pull[at] as number) - meanSpread * total,
    )
    return { range, nugget, deviation, mean: this.prior.mean + deviation * (freeMean + meanSpread * total), surface }
  }

  #dotWithRoom(matrix: Float64Array, row: number): number {
    const { memory, n } = this.grid
    return memory.kernel.dot(matrix.byteOffset + 8 * row * n, this.#room.byteOffset, n)
  }
}
