import type { ComputationInput, SpotSummary } from '../../../shared-types/computations.ts'
import { univariate } from './univariate.ts'

/** Coverage factor of an expanded uncertainty (JCGM 100:2008, 6.2). */
const COVERAGE_FACTOR = 2

/**
 * Summary of the readings of one spot, µm. A saturated reading counts with the value it exceeds, and the mean and median
 * are then lower bounds, without an uncertainty; a failed reading is counted and not averaged.
 */
export function spotSummary({ values, gauge }: ComputationInput<'spot-summary'>): SpotSummary {
  const read = values.flatMap((value) => (value.kind === 'no reading' ? [] : [value.um]))
  const saturated = values.filter((value) => value.kind === 'more than').length
  const counted = { n: read.length - saturated, saturated, failed: values.length - read.length, atLeast: saturated > 0 }
  if (read.length === 0) return { ...counted, ...nothingRead }
  const { mean, median, min, max, standardDeviation, standardUncertainty } = univariate(read)
  const central = { meanUm: mean, medianUm: median, minUm: min, maxUm: max }
  if (saturated > 0) return { ...nothingRead, ...counted, ...central }
  const gaugeUm = gauge === null ? null : (gauge.errorUm + (gauge.errorPercent / 100) * mean) / Math.sqrt(3)
  return {
    ...counted,
    ...central,
    standardDeviationUm: standardDeviation,
    typeAUm: standardUncertainty,
    gaugeUm,
    expandedUm:
      gaugeUm === null || standardUncertainty === null
        ? null
        : COVERAGE_FACTOR * Math.hypot(gaugeUm, standardUncertainty),
  }
}

const nothingRead = {
  meanUm: null,
  medianUm: null,
  minUm: null,
  maxUm: null,
  standardDeviationUm: null,
  typeAUm: null,
  gaugeUm: null,
  expandedUm: null,
}
