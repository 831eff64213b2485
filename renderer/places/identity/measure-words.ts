import { shownMeasure } from '../../../shared-types/shown-measure.ts'
import type { ShownUnits } from '../../../shared-types/units.ts'
import { figureText } from '../../parts-of-page/figure-text.ts'
import { measuredForm } from '../../parts-of-page/number-forms.ts'

/**
 * A value a tell is measured by with its expanded uncertainty, or twice its spread, null where there is none; `kept` is
 * the unit of the sheet. What is shown in that unit stands digit for digit as it was noted.
 */
export function measureWords(value: number, twice: number | null, kept: string, units: ShownUnits): string {
  const shown = shownMeasure({ value, uncertainty: twice, unit: kept }, units)
  const { decimals, uncertainty } = shown
  const figure = (size: number) => (decimals === null ? String(size) : figureText(size, decimals))
  const withUnit = (size: number) => `${figure(size)}${decimals === null ? ' ' : '\u202f'}${shown.unit}`.trim()
  return uncertainty === null ? withUnit(shown.value) : measuredForm(figure(shown.value), withUnit(uncertainty))
}
