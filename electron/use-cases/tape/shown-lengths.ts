import { coatingMeasures } from '../../../shared-types/coating-measures.ts'
import { decimalsFor, mmPer } from '../../../shared-types/shown-measure.ts'
import type { LengthUnit, ShownUnits } from '../../../shared-types/units.ts'
import { figure, NARROW } from '../../report/wording/numbers.ts'

/** Lengths in words, in the units of the record. */
export interface ShownLengths {
  readonly unit: LengthUnit
  /** `101.6 ± 0.2 mm`, as many decimals as the uncertainty bears (JCGM 100:2008, 7.2.6). */
  measured(mm: number, expandedMm: number): string
  /** A length, to as many decimals as an uncertainty of `byMm` bears. */
  length(mm: number, byMm: number): string
  /** Lengths as they were read, one unit at the end. */
  asRead(lengthsMm: readonly number[]): string
  /** The thickness of a coating as it was noted. */
  coating(um: number): string
}

const MOST_DECIMALS = 4

/** Decimals of a length as read: at most two in millimetres, three in inches. */
function readDecimals(value: number, most: number): number {
  return (String(Number(value.toFixed(most))).split('.')[1] ?? '').length
}

/** Words for lengths in the units of a record. */
export function shownLengths(units: ShownUnits): ShownLengths {
  const unit = units.lengthUnit
  const factor = 1 / mmPer(unit)
  const { notedThickness } = coatingMeasures(units)
  const decimals = (byMm: number) => Math.min(MOST_DECIMALS, decimalsFor(byMm * factor))
  const most = unit === 'mm' ? 2 : 3
  return {
    unit,
    measured: (mm, expandedMm) => {
      const places = decimals(expandedMm)
      return `${figure(mm * factor, places)} ± ${figure(expandedMm * factor, places)}${NARROW}${unit}`
    },
    length: (mm, byMm) => `${figure(mm * factor, decimals(byMm))}${NARROW}${unit}`,
    asRead: (lengthsMm) => {
      const shown = lengthsMm.map((mm) => figure(mm * factor, readDecimals(mm * factor, most)))
      return `${shown.join('; ')}${NARROW}${unit}`
    },
    coating: (um) => `${notedThickness.figure(um)}${NARROW}${notedThickness.unit}`,
  }
}
