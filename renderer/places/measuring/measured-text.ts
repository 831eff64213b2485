import type { Measurement } from '../../../shared-types/exhibit.ts'
import { figureText } from '../../parts-of-page/figure-text.ts'
import { measuredForm, unstatedForm } from '../../parts-of-page/number-forms.ts'

/** Decimal places a number was written with, at most six. */
function placesOf(value: number): number {
  const [, part = ''] = String(value).split('.')
  return Math.min(6, /^\d+$/u.test(part) ? part.length : 0)
}

/** A measured value as printed, "101.6 ± 0.2 mm (k = 2)"; a value without uncertainty says that it has none. */
export function measuredText(measurement: Measurement): string {
  const { value, unit, uncertainty, sample } = measurement
  if (sample !== undefined) return `${value} of ${sample.seen.length} looked at, of ${sample.ofHowMany}`
  const places = Math.max(placesOf(value), uncertainty === null ? 0 : placesOf(uncertainty))
  const unitText = unit === 'count' ? '' : `\u202f${unit}`
  return uncertainty === null
    ? unstatedForm(`${figureText(value, places)}${unitText}`)
    : measuredForm(figureText(value, places), `${figureText(uncertainty, places)}${unitText}`)
}
