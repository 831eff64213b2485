import type { Gauge, ReadingValue } from '../../../shared-types/reading.ts'
import type { CoatingUnit } from '../../../shared-types/units.ts'
import { coatingFigure, figure, NARROW } from './numbers.ts'

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
 * Mean, median and half range of a spot. A value "more than x" has no upper bound, so that the mean is then a least
 * value, and the median as well once it rests on such a value. A reading that failed is printed and counted apart.
 */
export function spotFigures(values: readonly ReadingValue[], unit: CoatingUnit): SpotFigures {
  const thicknesses = values.flatMap((value) =>
    value.kind === 'no reading' ? [] : [{ um: value.um, open: value.kind === 'more than' }],
  )
  const failed = values.length - thicknesses.length
  const count = `${thicknesses.length}${failed > 0 ? ` + ${failed} failed` : ''}`
  const texts = values.map((value) => valueText(value, unit)).join('; ')
  if (thicknesses.length === 0) return { values: texts, count, mean: '—', median: '—', halfRange: '—' }
  const anyOpen = thicknesses.some(({ open }) => open)
  // Open values sort above every closed one: they may be anything from their bound on.
  const ordered = [...thicknesses].sort((a, b) => Number(a.open) - Number(b.open) || a.um - b.um)
  const middle = [ordered[Math.floor((ordered.length - 1) / 2)], ordered[Math.ceil((ordered.length - 1) / 2)]]
  const medianUm = middle.reduce((sum, entry) => sum + (entry?.um ?? 0), 0) / 2
  const medianOpen = middle.some((entry) => entry?.open === true)
  const meanUm = thicknesses.reduce((sum, { um }) => sum + um, 0) / thicknesses.length
  const highest = Math.max(...thicknesses.map(({ um }) => um))
  const lowest = Math.min(...thicknesses.map(({ um }) => um))
  const least = (um: number, open: boolean) => `${open ? 'at least ' : ''}${coatingFigure(um, unit)}`
  return {
    values: texts,
    count,
    mean: least(meanUm, anyOpen),
    median: least(medianUm, medianOpen),
    halfRange: thicknesses.length < 2 || ordered[0]?.open === true ? '—' : least((highest - lowest) / 2, anyOpen),
  }
}

/** A gauge's declared error, ± (a + b % of the value), or that it is not declared. */
export function declaredError(gauge: Gauge, unit: CoatingUnit): string {
  if (gauge.errorUm === null && gauge.errorPercent === null) return 'error not declared'
  const parts = [
    gauge.errorUm === null ? '' : `${coatingFigure(gauge.errorUm, unit)}${NARROW}${unit}`,
    gauge.errorPercent === null
      ? ''
      : `${figure(gauge.errorPercent, Number.isInteger(gauge.errorPercent) ? 0 : 1)}${NARROW}%`,
  ].filter((part) => part !== '')
  return `± (${parts.join(' + ')}) as declared`
}
