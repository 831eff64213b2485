import { describe, expect, it } from 'vitest'
import { keptValue, typedUnits, typedValue } from '../../renderer/places/measuring/typed-measurement.ts'
import { measurement } from '../../shared-types/exhibit.ts'
import { metricUnits, type ShownUnits } from '../../shared-types/units.ts'

const inches: ShownUnits = { lengthUnit: 'in', coatingUnit: 'mil' }

describe('a value typed by hand', () => {
  it.each([
    // 25.4 mm in an inch, 25.4 µm in a mil, exact by the agreement of 1959.
    [
      { value: 3.5, uncertainty: 0.01, unit: 'in' },
      { value: 88.9, uncertainty: 0.254, unit: 'mm' },
    ],
    [
      { value: 5.2, uncertainty: null, unit: 'mil' },
      { value: 132.08, uncertainty: null, unit: 'µm' },
    ],
    [
      { value: 2, uncertainty: 0.5, unit: 'in²' },
      { value: 1290.32, uncertainty: 322.58, unit: 'mm²' },
    ],
    [
      { value: 0.1234567, uncertainty: 0, unit: 'kg' },
      { value: 0.1234567, uncertainty: 0, unit: 'kg' },
    ],
  ])('$unit is kept as its metric value, and comes back as typed', (typed, kept) => {
    expect(keptValue(typed)).toEqual(kept)
    expect(keptValue(typedValue(kept, inches))).toEqual(kept)
  })
  it('that was kept in millimetres is kept just so again, opened in inches or not', () => {
    for (const value of [348, 0.1, 101.62, 4252, 71.9]) {
      const kept = { value, uncertainty: value / 100, unit: 'mm' } as const
      for (const units of [metricUnits, inches]) {
        const again = keptValue(typedValue(kept, units))
        expect(again.value).toBe(value)
        expect(again.uncertainty).toBeCloseTo(kept.uncertainty, 6)
      }
    }
  })
  it('is typed in the units of the record, and stays in the one it has where those were changed meanwhile', () => {
    expect(typedUnits(metricUnits, 'mm')).toEqual(measurement.shape.unit.options)
    expect(typedUnits(inches, 'in').slice(0, 3)).toEqual(['in', 'in²', 'mil'])
    expect(typedUnits(inches, 'in')).not.toContain('mm')
    expect(typedUnits(metricUnits, 'in')).toContain('in')
  })
})
