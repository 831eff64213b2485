import type { ComputationInput, SpotSummary } from '../../../shared-types/computations.ts'
import { medianOf, univariate } from './univariate.ts'

/** Coverage factor of an expanded uncertainty (JCGM 100:2008, 6.2). */
const COVERAGE_FACTOR = 2

/**
 * Summary of the readings of one spot, µm. A saturated reading counts with the value it exceeds: the mean is then a
 * lower bound without an uncertainty, and so is the median unless it stays where it is however thick that reading was.
 * A failed reading is counted and not averaged.
 */
export function spotSummary({ values, gauge }: ComputationInput<'spot-summary'>): SpotSummary {
  const read = values.flatMap((value) => (value.kind === 'no reading' ? [] : [value.um]))
  const saturated = values.filter((value) => value.kind === 'more than').length
  const exact = values.flatMap((value) => (value.kind === 'value' ? [value.um] : []))
  const counted = {
    n: exact.length,
    saturated,
    failed: values.length - read.length,
    atLeast: saturated > 0,
    medianAtLeast: false,
  }
  if (read.length === 0) return { ...counted, ...nothingRead }
  const { mean, median, min, max, standardDeviation, standardUncertainty } = univariate(read)
  const thickest = values.flatMap((value) =>
    value.kind === 'no reading' ? [] : [value.kind === 'more than' ? Number.POSITIVE_INFINITY : value.um],
  )
  const central = {
    meanUm: mean,
    medianUm: median,
    minUm: min,
    maxUm: max,
    medianAtLeast: medianOf(thickest.toSorted((one, other) => one - other)) !== median,
    halfRangeUm: read.length < 2 || exact.length === 0 ? null : Math.max(0, max - Math.min(...exact)) / 2,
  }
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
  halfRangeUm: null,
  standardDeviationUm: null,
  typeAUm: null,
  gaugeUm: null,
  expandedUm: null,
}
