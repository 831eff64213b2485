/** What a measured quantity is expected to be for one as-built value: a middle and a standard deviation, in one unit. */
export interface ExpectedMeasure {
  readonly mean: number
  /** Spread of the built thing itself. */
  readonly standardDeviation: number
}

/**
 * Likelihood of a measured value for each as-built value: normal density with the variance of the thing and of the
 * measurement added (JCGM 100:2008, 5.1). Scaled to a greatest likelihood of 1.
 * @param standardUncertainty of the measurement, in the unit of the value; more than 0 in sum with each spread.
 */
export function measuredLikelihood(
  measured: number,
  standardUncertainty: number,
  expected: { readonly [value: string]: ExpectedMeasure },
): { readonly [value: string]: number } {
  const logs = Object.entries(expected).map(([value, { mean, standardDeviation }]) => {
    const spread = Math.hypot(standardDeviation, standardUncertainty)
    if (!(spread > 0)) throw new RangeError(`${value}: neither the thing nor the measurement has any spread.`)
    return [value, -0.5 * ((measured - mean) / spread) ** 2 - Math.log(spread)] as const
  })
  const greatest = logs.reduce((most, [, log]) => Math.max(most, log), Number.NEGATIVE_INFINITY)
  return Object.fromEntries(logs.map(([value, log]) => [value, Math.exp(log - greatest)]))
}
