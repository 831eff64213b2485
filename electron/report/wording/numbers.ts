import { decimalsEntered, decimalsFor, type ShownMeasure, shownMeasure } from '../../../shared-types/shown-measure.ts'
import { thousands } from '../../../shared-types/thousands.ts'
import { type LengthUnit, MM_PER_INCH, type ShownUnits } from '../../../shared-types/units.ts'

/** Narrow no-break space: before units, inside references. */
export const NARROW = '\u202F'
const MINUS = '\u2212'

/** A number with narrow spaces between thousands, a true minus, and a fixed count of decimals. */
export function figure(value: number, decimals = 0): string {
  const negative = value < 0 && Number(value.toFixed(decimals)) !== 0
  return `${negative ? MINUS : ''}${thousands(Math.abs(value).toFixed(decimals))}`
}

const MOST_PRINTED = 3
const decimalsPrinted = (value: number): number => Math.min(MOST_PRINTED, decimalsEntered(value))

/** A plain value without a stated uncertainty keeps the digits it was entered with, three decimals at most. */
const asEntered = (value: number): string => figure(value, decimalsPrinted(value))

/** `412 ± 38 µm`, or `412 µm, uncertainty not stated`, in the units of the record. The uncertainty is expanded, k = 2. */
export function measuredValue(measured: Omit<ShownMeasure, 'decimals'>, units: ShownUnits): string {
  const { value, uncertainty, unit, decimals: shown } = shownMeasure(measured, units)
  if (uncertainty === null) {
    const said = shown === null ? asEntered(value) : figure(value, shown)
    return `${said}${NARROW}${unit}, uncertainty not stated`
  }
  const decimals = shown ?? Math.min(decimalsFor(uncertainty), decimalsPrinted(uncertainty))
  return `${figure(value, decimals)} ± ${figure(uncertainty, decimals)}${NARROW}${unit}`
}

/** Bounds, least and most possible: `58 – 71 %`. */
export function bounds(low: number, high: number, unit: string, decimals = 0): string {
  const [from, to] = [figure(low, decimals), figure(high, decimals)]
  return `${from === to ? from : `${from} – ${to}`}${unit === '' ? '' : `${NARROW}${unit}`}`
}

/** Shares as bounds, the low one rounded down and the high one up, so that rounding never narrows them. */
export const shareBounds = (lowPercent: number, highPercent: number): string =>
  bounds(Math.floor(lowPercent + 1e-9), Math.ceil(highPercent - 1e-9), '%')

/** A length in the commission's unit, number only. */
export function lengthFigure(lengthMm: number, unit: LengthUnit): string {
  return unit === 'mm' ? asEntered(Math.round(lengthMm * 10) / 10) : figure(lengthMm / MM_PER_INCH, 2)
}

/** Sizes joined by ×, one unit, one uncertainty: `310 × 25 ± 2 mm`. */
export function sizes(lengthsMm: readonly number[], uncertaintyMm: number | null, unit: LengthUnit): string {
  if (lengthsMm.length === 0) return ''
  const factor = unit === 'mm' ? 1 : 1 / MM_PER_INCH
  if (uncertaintyMm === null) {
    return `${lengthsMm.map((length) => lengthFigure(length, unit)).join(' × ')}${NARROW}${unit}, uncertainty not stated`
  }
  const most = decimalsFor(uncertaintyMm * factor)
  // An uncertainty entered as 2 mm claims no tenths.
  const decimals = unit === 'mm' ? Math.min(most, decimalsPrinted(uncertaintyMm)) : most
  const values = lengthsMm.map((length) => figure(length * factor, decimals)).join(' × ')
  return `${values} ± ${figure(uncertaintyMm * factor, decimals)}${NARROW}${unit}`
}
