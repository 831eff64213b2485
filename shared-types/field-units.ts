import { keptMeasures, type ShownQuantity } from './coating-measures.ts'
import { shownUnit } from './shown-measure.ts'
import type { ShownUnits } from './units.ts'

/** Fields of rows that hold a length or a thickness end so; their values are metric. */
const LENGTH = /Mm$/u
const THICKNESS = /Um$/u
/** A reading is named by its unit alone. */
const READING = { um: 'um', mm: 'mm' } as const

/** A field of a row that holds a length or a thickness, told in the units of the record. */
export interface MeasuredField {
  /** Name of the field without its ending; empty where the unit alone names it. */
  readonly stem: string
  readonly unit: string
  /** The stored number in that unit. */
  figure(value: number): string
}

/** How a measured field is told, or null where the field holds something else. */
export function measuredField(field: string, shownIn: ShownUnits): MeasuredField | null {
  const { length, thickness } = keptMeasures(shownIn)
  if (field === READING.um) return told('thickness', 'µm', thickness)
  if (field === READING.mm) return told('', 'mm', length)
  if (LENGTH.test(field)) return told(field.replace(LENGTH, ''), 'mm', length)
  return THICKNESS.test(field) ? told(field.replace(THICKNESS, ''), 'µm', thickness) : null
}

// What is kept in metric units is told digit for digit, as the record holds it.
const told = (stem: string, stored: string, { unit, figure }: ShownQuantity): MeasuredField => ({
  stem,
  unit,
  figure: unit === stored ? String : figure,
})

/** Decimals that keep any two noted values apart, as `keptMeasures` has them. */
const KEPT_DECIMALS = 4

/**
 * The fields of a row, or of a part of one, that names the unit of its value: value, uncertainty and unit as the record
 * shows them. What names no unit, or one that stays, comes back as it is.
 */
export function withShownUnit(
  fields: Readonly<Record<string, unknown>>,
  shownIn: ShownUnits,
): Readonly<Record<string, unknown>> {
  if (typeof fields.unit !== 'string' || typeof fields.value !== 'number') return fields
  const { unit, per } = shownUnit(fields.unit, shownIn)
  if (per === 1) return fields
  const shown = (value: unknown) => (typeof value === 'number' ? Number((value / per).toFixed(KEPT_DECIMALS)) : value)
  return { ...fields, unit, value: shown(fields.value), uncertainty: shown(fields.uncertainty) }
}
