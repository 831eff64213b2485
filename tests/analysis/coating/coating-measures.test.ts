import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type CoatingMeasures, coatingFigure, coatingMeasures } from '../../../shared-types/coating-measures.ts'
import { MM_PER_FOOT, MM_PER_INCH, UM_PER_MIL } from '../../../shared-types/units.ts'

const metric = coatingMeasures({ coatingUnit: 'µm', lengthUnit: 'mm' })
const imperial = coatingMeasures({ coatingUnit: 'mil', lengthUnit: 'in' })

/** A printed figure read back. */
const back = (figure: string): number => Number(figure.replaceAll('\u202f', '').replace('\u2212', '-'))

/** Size of one inch-based unit in the metric one, from the definition of the inch, 25.4 mm, alone. */
const inch = 25.4
const kinds: readonly {
  readonly of: keyof CoatingMeasures
  readonly unit: string
  readonly holds: number
  readonly most: number
  /** Half of the last place printed, in the inch-based unit; or null where significant figures count. */
  readonly half: number | null
  readonly digits?: number
}[] = [
  { of: 'thickness', unit: 'mil', holds: inch, most: 100_000, half: 0.05 },
  { of: 'roughThickness', unit: 'mil', holds: inch, most: 100_000, half: 0.05 },
  { of: 'fineThickness', unit: 'mil', holds: inch, most: 100_000, half: 0.005 },
  { of: 'notedThickness', unit: 'mil', holds: inch, most: 100_000, half: 0.005 },
  { of: 'length', unit: 'in', holds: inch, most: 30_000, half: 0.05 },
  { of: 'smallLength', unit: 'in', holds: inch, most: 30_000, half: 0.005 },
  { of: 'surface', unit: 'ft²', holds: ((12 * inch) / 1000) ** 2, most: 10, half: 0.005 },
  { of: 'area', unit: 'ft²', holds: ((12 * inch) / 1000) ** 2, most: 10, half: null, digits: 3 },
  { of: 'volume', unit: 'in³', holds: (inch / 10) ** 3, most: 100_000, half: null, digits: 3 },
  { of: 'roughVolume', unit: 'in³', holds: (inch / 10) ** 3, most: 100_000, half: null, digits: 2 },
]

describe('measures of coating in mil and inches', () => {
  it('rest on the inch of 25.4 mm exactly, of the international yard and pound agreement of 1959', () => {
    expect(MM_PER_INCH).toBe(25.4)
    expect(UM_PER_MIL).toBe(25.4)
    expect(MM_PER_FOOT).toBe(304.8)
    // NIST Special Publication 811 (2008), appendix B.9: exact factors 0.09290304 m² and 16.387064 cm³.
    expect(imperial.area.text(0.09290304)).toBe('1\u202fft²')
    expect(imperial.volume.text(16.387064)).toBe('1\u202fin³')
    expect(imperial.thickness.text(300)).toBe('11.8\u202fmil')
    expect(imperial.length.text(304.8)).toBe('12.0\u202fin')
    expect(imperial.smallLength.text(12.7)).toBe('0.5\u202fin')
  })
  it.each(kinds)('print $of in $unit no further from the value than half of the last place', (kind) => {
    const shown = imperial[kind.of]
    expect(shown.unit).toBe(kind.unit)
    fc.assert(
      fc.property(fc.double({ min: 0, max: kind.most, noNaN: true }), (value) => {
        const exact = value / kind.holds
        const half =
          kind.half ?? (exact === 0 ? 0 : 0.5 * 10 ** (Math.floor(Math.log10(exact)) - (kind.digits ?? 1) + 1))
        const printed = back(shown.figure(value))
        expect(Math.abs(printed - exact)).toBeLessThanOrEqual(half * (1 + 1e-9) + 1e-12)
        expect(shown.text(value)).toBe(`${shown.figure(value)}\u202f${kind.unit}`)
      }),
    )
  })
  it.each(kinds)('lead back: $of printed, read and printed again is the same', ({ of, holds, most }) => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: most, noNaN: true }), (value) => {
        const printed = imperial[of].figure(value)
        expect(imperial[of].figure(back(printed) * holds)).toBe(printed)
      }),
    )
  })
  it('follow each unit by itself', () => {
    const mixed = coatingMeasures({ coatingUnit: 'mil', lengthUnit: 'mm' })
    expect([mixed.thickness.unit, mixed.length.unit, mixed.area.unit, mixed.volume.unit]).toEqual([
      'mil',
      'mm',
      'm²',
      'cm³',
    ])
  })
})

describe('metric measures of coating', () => {
  it('are whole, with the space they were always typed with and thousands apart', () => {
    expect(metric.thickness.text(217.6)).toBe('218 µm')
    expect(metric.thickness.span(1455.2, 6456, 'and')).toBe('1\u202f455 and 6\u202f456 µm')
    expect(metric.roughThickness.text(1994)).toBe('1\u202f990 µm')
    expect(metric.fineThickness.signed(-2.74)).toBe('\u22122.7 µm')
    expect(metric.fineThickness.text(-0.32)).toBe('\u22120.3 µm')
    expect(metric.fineThickness.text(-0.04)).toBe('0.0 µm')
    expect(metric.notedThickness.text(101.6)).toBe('101.6 µm')
    expect(metric.length.text(262.7)).toBe('263 mm')
    expect(metric.surface.text(0.7389)).toBe('0.74 m²')
    expect(metric.area.text(0.0345)).toBe('0.0345 m²')
    expect(metric.volume.text(1274)).toBe('1\u202f270 cm³')
    expect(metric.roughVolume.text(7.86)).toBe('7.9 cm³')
  })
  it('print the same figure as tables do', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 100_000, noNaN: true }), (um) => {
        expect(metric.thickness.figure(um)).toBe(coatingFigure(um, 'µm'))
        expect(imperial.thickness.figure(um)).toBe(coatingFigure(um, 'mil'))
        expect(back(metric.thickness.figure(um))).toBe(Math.round(um))
      }),
    )
  })
})
