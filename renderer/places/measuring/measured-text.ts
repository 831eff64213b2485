import type { Measurement } from '../../../shared-types/exhibit.ts'
import { decimalsEntered, shownMeasure } from '../../../shared-types/shown-measure.ts'
import type { ShownUnits } from '../../../shared-types/units.ts'
import { figureText } from '../../parts-of-page/figure-text.ts'
import { measuredForm, unstatedForm } from '../../parts-of-page/number-forms.ts'

/** A measured value as printed in the units of the record, "101.6 ± 0.2 mm (k = 2)"; one without uncertainty says so. */
export function measuredText({ sample, ...measurement }: Measurement, units: ShownUnits): string {
  if (sample !== undefined) return `${measurement.value} of ${sample.seen.length} looked at, of ${sample.ofHowMany}`
  const { value, uncertainty, unit, decimals } = shownMeasure(measurement, units)
  const places = decimals ?? Math.max(decimalsEntered(value), uncertainty === null ? 0 : decimalsEntered(uncertainty))
  const unitText = unit === 'count' ? '' : `\u202f${unit}`
  return uncertainty === null
    ? unstatedForm(`${figureText(value, places)}${unitText}`)
    : measuredForm(figureText(value, places), `${figureText(uncertainty, places)}${unitText}`)
}
