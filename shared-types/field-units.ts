import { keptMeasures, type ShownQuantity } from './coating-measures.ts'
import type { ShownUnits } from './units.ts'

/** Fields of rows that hold a length or a thickness end so; their values are metric. */
const LENGTH = /Mm$/u
const THICKNESS = /Um$/u
/** A reading is named by its unit alone. */
const READING = 'um'

/** A field of a row that holds a length or a thickness, told in the units of the record. */
export interface MeasuredField {
  /** Name of the field without its ending. */
  readonly stem: string
  readonly unit: string
  /** The stored number in that unit. */
  figure(value: number): string
}

/** How a measured field is told, or null where the field holds something else. */
export function measuredField(field: string, shownIn: ShownUnits): MeasuredField | null {
  const { length, thickness } = keptMeasures(shownIn)
  if (field === READING) return told('thickness', 'µm', thickness)
  if (LENGTH.test(field)) return told(field.replace(LENGTH, ''), 'mm', length)
  return THICKNESS.test(field) ? told(field.replace(THICKNESS, ''), 'µm', thickness) : null
}

// What is kept in metric units is told digit for digit, as the record holds it.
const told = (stem: string, stored: string, { unit, figure }: ShownQuantity): MeasuredField => ({
  stem,
  unit,
  figure: unit === stored ? String : figure,
})
