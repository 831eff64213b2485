import { coatingFigure, coatingMeasures } from '../../../shared-types/coating-measures.ts'
import type { Gauge, ReadingValue } from '../../../shared-types/reading.ts'
import type { CoatingUnit, ShownUnits } from '../../../shared-types/units.ts'
import { spotSummary } from '../../analysis/statistics/spot-summary.ts'
import { figure, NARROW } from './numbers.ts'

/** What the values of one spot come to, as they are printed. A dash where nothing can be said. */
export interface SpotFigures {
  readonly values: string
  readonly count: string
  readonly mean: string
  readonly median: string
  readonly halfRange: string
}

const valueText = (value: ReadingValue, unit: CoatingUnit): string =>
  value.kind === 'value'
    ? coatingFigure(value.um, unit)
    : value.kind === 'more than'
      ? `more than ${coatingFigure(value.um, unit)}`
      : 'no reading'

/**
 * Mean, median and half range of a spot in words: "at least" where a value "more than x" leaves them without an upper
 * bound. A reading that failed is printed and counted apart.
 */
export function spotFigures(values: readonly ReadingValue[], unit: CoatingUnit): SpotFigures {
  const summary = spotSummary({ values, gauge: null })
  const { n, saturated, failed, meanUm, medianUm, halfRangeUm, atLeast, medianAtLeast } = summary
  const least = (um: number | null, open: boolean) =>
    um === null ? '—' : `${open ? 'at least ' : ''}${coatingFigure(um, unit)}`
  return {
    values: values.map((value) => valueText(value, unit)).join('; '),
    count: `${n + saturated}${failed > 0 ? ` + ${failed} failed` : ''}`,
    mean: least(meanUm, atLeast),
    median: least(medianUm, medianAtLeast),
    halfRange: least(halfRangeUm, atLeast),
  }
}

/** A gauge's declared error, "declared error 2 µm + 3 % of the reading", or that it is not declared. */
export function declaredError(gauge: Gauge, units: ShownUnits): string {
  if (gauge.errorUm === null && gauge.errorPercent === null) return 'error not declared'
  const { notedThickness } = coatingMeasures(units)
  const parts = [
    gauge.errorUm === null ? '' : `${notedThickness.figure(gauge.errorUm)}${NARROW}${notedThickness.unit}`,
    gauge.errorPercent === null
      ? ''
      : `${figure(gauge.errorPercent, Number.isInteger(gauge.errorPercent) ? 0 : 1)}${NARROW}% of the reading`,
  ].filter((part) => part !== '')
  return `declared error ${parts.join(' + ')}`
}
