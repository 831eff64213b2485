import { type Measurement, measurement } from '../../../shared-types/exhibit.ts'
import { exactMetric, keptUnit, shownUnit } from '../../../shared-types/shown-measure.ts'
import type { ShownUnits } from '../../../shared-types/units.ts'

/** A value as it is typed: in a unit values are kept in, or in one that is kept as another. */
export interface TypedValue {
  readonly value: number
  readonly uncertainty: number | null
  readonly unit: string
}

/** Units offered for a value typed by hand: those of the record, and the one it has already where that is another. */
export function typedUnits(units: ShownUnits, already: string): readonly string[] {
  const own = measurement.shape.unit.options.map((kept) => shownUnit(kept, units).unit)
  return own.includes(already) ? own : [...own, already]
}

/** A kept value as it would be typed in the units of the record. */
export function typedValue({ value, uncertainty, unit: kept }: TypedValue, units: ShownUnits): TypedValue {
  const { unit, per } = shownUnit(kept, units)
  return { value: value / per, uncertainty: uncertainty === null ? null : uncertainty / per, unit }
}

/** What is kept of a typed value: inches as millimetres, mils as micrometres, everything else as it is. */
export function keptValue({
  value,
  uncertainty,
  unit,
}: TypedValue): Pick<Measurement, 'value' | 'uncertainty' | 'unit'> {
  const { kept, per } = keptUnit(unit)
  const metric = (typed: number) => (per === 1 ? typed : exactMetric(typed * per))
  return {
    value: metric(value),
    uncertainty: uncertainty === null ? null : metric(uncertainty),
    unit: measurement.shape.unit.parse(kept),
  }
}
