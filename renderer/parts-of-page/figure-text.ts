import { thousands } from '../../shared-types/thousands.ts'
import { type LengthUnit, MM_PER_INCH } from '../../shared-types/units.ts'

/** Thin and unbreakable: between a figure and its unit. */
const THIN = '\u202f'
const MINUS = '\u2212'

/** A number as printed: thin space between thousands from four figures on, a true minus, a point for the decimals. */
export function figureText(value: number, decimals = 0): string {
  const size = Math.abs(value).toFixed(decimals)
  return `${value < 0 && Number(size) !== 0 ? MINUS : ''}${thousands(size)}`
}

/** A length in the chosen unit, from millimetres: whole millimetres, or inches to a hundredth unless told otherwise. */
export function lengthText(mm: number, unit: LengthUnit, decimals = unit === 'mm' ? 0 : 2): string {
  return `${figureText(unit === 'mm' ? mm : mm / MM_PER_INCH, decimals)}${THIN}${unit}`
}

/** An area in the chosen unit, from square millimetres: m² or square feet. */
export function areaText(mm2: number, unit: LengthUnit): string {
  if (unit === 'mm')
    return mm2 < 10_000 ? `${figureText(mm2 / 100, 1)}${THIN}cm²` : `${figureText(mm2 / 1e6, 2)}${THIN}m²`
  const inches = mm2 / MM_PER_INCH ** 2
  return inches < 144 ? `${figureText(inches, 1)}${THIN}in²` : `${figureText(inches / 144, 2)}${THIN}ft²`
}

/** What was typed as a number, or null: `1640`, `1,5`, `3 1/2`, `1 640`, `-4`. */
export function typedNumber(text: string): number | null {
  const plain = text.trim().replace(/\u2212/g, '-')
  const fraction = /^(-?)(?:(\d+)[ -])?(\d+)\/(\d+)$/.exec(plain)
  if (fraction !== null) {
    const [, sign = '', whole = '0', over = '0', under = '0'] = fraction
    if (Number(under) === 0) return null
    return (sign === '-' ? -1 : 1) * (Number(whole) + Number(over) / Number(under))
  }
  const joined = plain.replace(/(\d)[\s\u202f\u2009](?=\d{3}(?!\d))/g, '$1').replace(',', '.')
  return /^-?(\d+\.?\d*|\.\d+)$/.test(joined) ? Number(joined) : null
}
