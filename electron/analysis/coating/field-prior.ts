/**
 * What is assumed of filler before a reading is taken, on the latent scale, whose unit is one millimetre to the power
 * 1/shape. Y has mean m ~ N(m0, kappa s2), variance s2 ~ inverse gamma(a0, b0), Matern 3/2 correlation over one of the
 * ranges and a nugget of one of the shares of s2, each pair as likely as the next.
 */
export interface FieldPrior {
  readonly mean: number
  readonly meanSpread: number
  readonly varianceShape: number
  readonly varianceScale: number
  readonly rangesMm: readonly number[]
  readonly nuggets: readonly number[]
  /** Powers beta in filler = 1000 um * max(0, Y)^beta; each gets the same share of the draws. */
  readonly shapes: readonly number[]
  /** Filler deeper than this is not believed, um. */
  readonly deepestUm: number
}

/**
 * Chosen on simulated panels whose seeds are apart from those of the published coverage. A power below one gives patches
 * that rise steeply and then stay level, above one such as taper off.
 */
export const fieldPrior: FieldPrior = {
  mean: -0.8,
  meanSpread: 1,
  varianceShape: 2,
  varianceScale: 1.5,
  rangesMm: [30, 55, 100, 180, 320],
  nuggets: [0.005, 0.03, 0.12],
  shapes: [0.5, 1, 2],
  deepestUm: 8000,
}
