import { exactMetric, mmPer } from '../../../../shared-types/shown-measure.ts'
import type { LengthUnit } from '../../../../shared-types/units.ts'
import { typedNumber } from '../../../parts-of-page/figure-text.ts'

const UNITS = /(?<=[\d\s.])(mm|inch(?:es)?|in|["″])(?![\p{L}\d])/giu

/** What was typed, without its units, and the unit it is in; null where it names two that contradict each other. */
function withoutUnits(text: string, shown: LengthUnit): { readonly text: string; readonly unit: LengthUnit } | null {
  const named = new Set(
    [...text.matchAll(UNITS)].map(([word]) => (word.toLowerCase() === 'mm' ? 'mm' : 'in') as LengthUnit),
  )
  if (named.size > 1) return null
  const [unit = shown] = named
  return { text: text.replace(UNITS, ' '), unit }
}

/**
 * Lengths typed in a row, in millimetres: `71.8 71.9 72`, `2-3/4 2-7/8 in`, `2 3/4; 2 7/8`. A unit named anywhere in the
 * row is that of all; without one they are in the unit shown. `refused` says what to type instead.
 */
export function typedLengths(
  typed: string,
  shown: LengthUnit,
): { readonly mm: readonly number[] } | { readonly refused: string } {
  const plain = withoutUnits(typed, shown)
  if (plain === null) return { refused: 'This row names mm and inches at once: write all of it in one unit.' }
  const rows = /[;\n]/.test(plain.text)
  const pieces = (rows ? plain.text.split(/[;\n]/) : plain.text.replace(/,(?=\s|$)/g, ' ').split(/\s+/))
    .map((piece) => piece.trim())
    .filter((piece) => piece !== '')
  const mm: number[] = []
  for (const piece of pieces) {
    const value = typedNumber(piece)
    if (value === null)
      return { refused: `“${piece}” is no number: write such as 71.8 71.9, or 2-3/4 2-7/8 in, with spaces between.` }
    mm.push(exactMetric(value * mmPer(plain.unit)))
  }
  return { mm }
}
