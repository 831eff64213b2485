import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { rustGrade } from '../../electron/analysis/grades/rust-grade.ts'
import { convertCoating, convertLength } from '../../electron/analysis/units/conversion.ts'

describe('rust', () => {
  // ISO 4628-3:2016, Table 1.
  it.each([
    [0, 'Ri 0'],
    [0.05, 'Ri 1'],
    [0.5, 'Ri 2'],
    [1, 'Ri 3'],
    [8, 'Ri 4'],
    [40, 'Ri 5'],
    [50, 'Ri 5'],
  ])('%d %% is %s by ISO 4628-3', (affectedPercent, grade) => {
    expect(rustGrade({ affectedPercent }).iso4628Part3.grade).toBe(grade)
  })

  it('between two degrees takes the upper one', () => {
    expect(rustGrade({ affectedPercent: 0.051 }).iso4628Part3.grade).toBe('Ri 2')
    expect(rustGrade({ affectedPercent: 8.01 }).iso4628Part3.grade).toBe('Ri 5')
  })

  // ASTM D610-08, Table 1: grade, more than, up to and with.
  it.each([
    [10, 0, 0.01],
    [9, 0.01, 0.03],
    [8, 0.03, 0.1],
    [7, 0.1, 0.3],
    [6, 0.3, 1],
    [5, 1, 3],
    [4, 3, 10],
    [3, 10, 16],
    [2, 16, 33],
    [1, 33, 50],
    [0, 50, 100],
  ])('ASTM D610 grade %d is more than %d up to %d %%', (grade, above, upTo) => {
    expect(rustGrade({ affectedPercent: upTo }).astmD610.grade).toBe(grade)
    expect(rustGrade({ affectedPercent: above + 1e-6 }).astmD610.grade).toBe(grade)
  })

  it('more rust is never a better grade', () => {
    const share = fc.double({ min: 0, max: 100, noNaN: true })
    fc.assert(
      fc.property(share, share, (one, other) => {
        const [less, more] = [Math.min(one, other), Math.max(one, other)].map((affectedPercent) =>
          rustGrade({ affectedPercent }),
        )
        expect((more?.astmD610.grade ?? 0) <= (less?.astmD610.grade ?? 0)).toBe(true)
        expect((more?.iso4628Part3.grade ?? '') >= (less?.iso4628Part3.grade ?? '')).toBe(true)
      }),
    )
  })
})

describe('units', () => {
  // International yard and pound agreement, 1959: one inch is 25.4 mm.
  it.each([
    [1, 25.4],
    [12, 304.8],
    [36, 914.4],
  ])('%d in is %d mm', (inches, mm) => {
    expect(convertLength({ value: inches, from: 'in', to: 'mm' })).toEqual({ value: mm, unit: 'mm' })
    expect(convertLength({ value: mm, from: 'mm', to: 'in' }).value).toBeCloseTo(inches, 12)
  })

  // One mil is a thousandth of an inch, 25.4 µm.
  it.each([
    [4, 101.6],
    [5, 127],
    [1000, 25_400],
  ])('%d mil is %d µm', (mil, um) => {
    expect(convertCoating({ value: mil, from: 'mil', to: 'µm' }).value).toBe(um)
  })

  it('there and back is the same to a few units in the last place', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e5, noNaN: true }), (value) => {
        const back = convertCoating({
          value: convertCoating({ value, from: 'µm', to: 'mil' }).value,
          from: 'mil',
          to: 'µm',
        })
        expect(Math.abs(back.value - value)).toBeLessThanOrEqual(4 * Number.EPSILON * value)
      }),
    )
  })
})
