import { type LengthUnit, MM_PER_INCH, type ShownUnits, UM_PER_MIL } from './units.ts'

/** The unit a record shows a kept unit in. */
export interface ShownUnit {
  readonly unit: string
  /** How much of the kept unit one of it is; 1 where both are the same. */
  readonly per: number
}

/** A measured value in the unit of a record. */
export interface ShownMeasure {
  readonly value: number
  readonly uncertainty: number | null
  readonly unit: string
  /** Decimals of both; null where both are printed as they were kept. */
  readonly decimals: number | null
}

/** Inches and mils with what they are kept as. */
const inchBased: readonly { readonly unit: string; readonly kept: string; readonly per: number }[] = [
  { unit: 'in', kept: 'mm', per: MM_PER_INCH },
  { unit: 'in²', kept: 'mm²', per: MM_PER_INCH ** 2 },
  { unit: 'mil', kept: 'µm', per: UM_PER_MIL },
]

/** How a unit values are kept in is shown: mm, mm² and µm follow the record, every other unit stays. */
export function shownUnit(kept: string, { lengthUnit, coatingUnit }: ShownUnits): ShownUnit {
  const found = inchBased.find((each) => each.kept === kept)
  const follows = found?.unit === 'mil' ? coatingUnit === 'mil' : lengthUnit === 'in'
  return found !== undefined && follows ? found : { unit: kept, per: 1 }
}

/** What a value typed in a unit is kept in, and how much of it one is. */
export function keptUnit(typed: string): { readonly kept: string; readonly per: number } {
  return inchBased.find(({ unit }) => unit === typed) ?? { kept: typed, per: 1 }
}

/** How much of a length as kept, mm, one of the unit shown is. */
export const mmPer = (unit: LengthUnit): number => keptUnit(unit).per

/** Figures that survive the way to the metric unit and back: 3.5 in is 88.9 mm, not 88.89999999999999. */
export const exactMetric = (value: number): number => Number(value.toFixed(6))

/** Decimals that leave an uncertainty two significant digits at most, one from 3 on (JCGM 100:2008, 7.2.6). */
export function decimalsFor(uncertainty: number): number {
  if (!(uncertainty > 0)) return 0
  const exponent = Math.floor(Math.log10(uncertainty))
  const digits = uncertainty / 10 ** exponent < 3 ? 2 : 1
  return Math.max(0, digits - 1 - exponent)
}

/** Decimals a number was entered with, at most six. */
export function decimalsEntered(value: number): number {
  const [, part = ''] = String(value).split('.')
  return Math.min(6, /^\d+$/u.test(part) ? part.length : 0)
}

/**
 * A value with its expanded uncertainty in the unit of the record. In a larger unit it has as many decimals as its
 * uncertainty bears; where none is stated, so many that the last figure it was entered with can still be told.
 */
export function shownMeasure(
  { value, uncertainty, unit: kept }: Omit<ShownMeasure, 'decimals'>,
  units: ShownUnits,
): ShownMeasure {
  const { unit, per } = shownUnit(kept, units)
  if (per === 1) return { value, uncertainty, unit, decimals: null }
  const stated = uncertainty === null ? null : uncertainty / per
  const decimals =
    stated === null || stated === 0 ? decimalsEntered(value) + Math.ceil(Math.log10(per)) : decimalsFor(stated)
  return { value: value / per, uncertainty: stated, unit, decimals }
}
