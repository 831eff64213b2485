import { coatingFigure } from '../../../shared-types/coating-measures.ts'
import type { ReadingValue } from '../../../shared-types/reading.ts'
import { type CoatingUnit, MOST_COATING_UM, UM_PER_MIL } from '../../../shared-types/units.ts'

/** Micrometres as the chosen unit; mil to two decimals' worth of meaning, µm as they are. */
export const umToUnit = (um: number, unit: CoatingUnit): number => (unit === 'mil' ? um / UM_PER_MIL : um)
export const unitToUm = (value: number, unit: CoatingUnit): number => (unit === 'mil' ? value * UM_PER_MIL : value)

/** Readings of an ordinary film, as an example, µm. */
const EXAMPLE_UM = [212, 198, 226]

export type EnteredReadings = { readonly values: readonly ReadingValue[] } | { readonly refused: string }

/**
 * Reads a line of values as they are called out beside the car: `212 198 >1500 -`.
 * `>` marks a gauge that ran out of range, a dash (or `x`) a reading that failed. Decimal point or comma.
 */
export function readingsFrom(line: string, unit: CoatingUnit): EnteredReadings {
  const words = line
    .trim()
    .split(/[\s;]+/u)
    .filter((word) => word !== '')
  if (words.length === 0) return { refused: `Write at least one value, for example ${plainLine(EXAMPLE_UM, unit)}.` }
  if (words.length > 10) return { refused: `A spot takes ten values at most; here are ${words.length}.` }
  const values: ReadingValue[] = []
  for (const word of words) {
    if (/^[-–—xX]$/u.test(word)) {
      values.push({ kind: 'no reading' })
      continue
    }
    const match = /^(>?)(\d+(?:[.,]\d+)?)$/u.exec(word)
    if (match === null) {
      return { refused: `“${word}” is no thickness. Write a number, > before a number, or a dash for no reading.` }
    }
    const um = unitToUm(Number((match[2] ?? '').replace(',', '.')), unit)
    if (um > MOST_COATING_UM)
      return {
        refused: `“${word}” is more than any coating (${coatingFigure(MOST_COATING_UM, unit)} ${unit}). Check the unit: ${unit}.`,
      }
    values.push({ kind: match[1] === '>' ? 'more than' : 'value', um })
  }
  return { values }
}

/** A number of the chosen unit without trailing zeros: µm to a tenth, mil to two places. */
export function thicknessText(um: number, unit: CoatingUnit): string {
  const value = umToUnit(um, unit)
  const text = value.toFixed(unit === 'mil' ? 2 : 1)
  return text.includes('.') ? text.replace(/\.?0+$/u, '') : text
}

/** The line that `readingsFrom` reads back, for amending a spot. */
export function lineFrom(values: readonly ReadingValue[], unit: CoatingUnit): string {
  return values
    .map((value) =>
      value.kind === 'no reading' ? '-' : `${value.kind === 'more than' ? '>' : ''}${thicknessText(value.um, unit)}`,
    )
    .join(' ')
}

/** How a line of values is written, as a form shows it: `212 198 >1500 -`. */
export const exampleLine = (unit: CoatingUnit): string =>
  `${plainLine(EXAMPLE_UM.slice(0, 2), unit)} >${thicknessText(1500, unit)} -`

/** Plain values with spaces between. */
export const plainLine = (valuesUm: readonly number[], unit: CoatingUnit): string =>
  valuesUm.map((um) => thicknessText(um, unit)).join(' ')
