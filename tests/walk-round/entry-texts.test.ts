import { describe, expect, it } from 'vitest'
import { areaText, figureText, lengthText, typedNumber } from '../../renderer/parts-of-page/figure-text.ts'
import { heldTogether } from '../../renderer/parts-of-page/held-together.ts'
import { extentStands, gradeText, rustGrade } from '../../renderer/places/walk-round/finding-draft.ts'
import { findingKeys, metalKeys, paintKeys } from '../../renderer/places/walk-round/keyed-words.ts'
import { coatingFigure } from '../../shared-types/coating-measures.ts'
import { findingKind, metalState, paintState } from '../../shared-types/words.ts'

describe('figures as printed', () => {
  it('has a thin space between thousands, a true minus, and no minus before nought', () => {
    expect(figureText(1640)).toBe('1\u202f640')
    expect(figureText(1234567)).toBe('1\u202f234\u202f567')
    expect(figureText(-4.25, 1)).toBe('\u22124.3')
    expect(figureText(-0.01, 1)).toBe('0.0')
  })

  it('shows inches and mils by the exact factors (international yard and pound agreement of 1959)', () => {
    expect(lengthText(88.9, 'in')).toBe('3.50\u202fin')
    expect(lengthText(88.9, 'mm')).toBe('89\u202fmm')
    expect(coatingFigure(127, 'mil')).toBe('5.0')
    expect(areaText(929_030.4, 'in')).toBe('10.00\u202fft²')
    expect(areaText(51_000, 'mm')).toBe('0.05\u202fm²')
  })
})

describe('numbers as typed', () => {
  it.each([
    ['12.5', 12.5],
    ['12,5', 12.5],
    ['3 1/2', 3.5],
    ['-3 1/2', -3.5],
    ['1 640', 1640],
    ['1\u202f640', 1640],
    ['.5', 0.5],
  ])('reads %s', (text, value) => {
    expect(typedNumber(text)).toBe(value)
  })

  it.each(['', 'about 3', '1/0', '1 2', '3..4', '1e5'])('takes “%s” for no number', (text) => {
    expect(typedNumber(text)).toBeNull()
  })
})

describe('words chosen by letter', () => {
  it.each([
    ['finding kinds', findingKeys, findingKind.options],
    ['metal states', metalKeys, metalState.options],
    ['paint states', paintKeys, paintState.options],
  ] as const)('every one of the %s has a letter of its own', (_name, keyed, options) => {
    expect(keyed.map(({ choice }) => choice)).toEqual(options)
    expect(new Set(keyed.map(({ keys }) => keys)).size).toBe(options.length)
  })
})

describe('grades', () => {
  it('grades rust by the percentages of ISO 4628-3:2016, table 1, and takes the worse between two', () => {
    const table = [
      [0, 'Ri 0'],
      [0.05, 'Ri 1'],
      [0.5, 'Ri 2'],
      [1, 'Ri 3'],
      [8, 'Ri 4'],
      [45, 'Ri 5'],
    ] as const
    for (const [percent, grade] of table) expect(rustGrade(percent)).toBe(grade)
    expect(rustGrade(0.06)).toBe('Ri 2')
    expect(rustGrade(8.1)).toBe('Ri 5')
  })

  it('writes blistering with quantity and size as ISO 4628-2:2016 does', () => {
    expect(gradeText({ standard: 'ISO 4628-2', quantity: 2, size: 3 })).toBe('2(S3) (ISO 4628-2)')
  })

  it('an area needs three points and a line two', () => {
    const point = { u: 0, v: 0 }
    expect(extentStands({ view: 'left', shape: 'area', points: [point, point] })).toBe(false)
    expect(extentStands({ view: 'left', shape: 'line', points: [point, point] })).toBe(true)
  })
})

describe('typed words with quantities in them', () => {
  const held = (typed: string) => heldTogether(typed).replaceAll('\u00a0', '_')

  it('are broken at no space within a quantity', () => {
    expect(held('Wheelbase left 2 498 ± 4 mm; the sheet gives 2 500.')).toBe(
      'Wheelbase left 2_498_±_4_mm; the sheet gives 2_500.',
    )
    expect(held('1 030 to 1 910 µm (readings R 6 and R 7), chance 18 %, 22 ± 1 mm (k = 2)')).toBe(
      '1_030 to 1_910_µm (readings R_6 and R_7), chance 18_%, 22_±_1_mm (k_=_2)',
    )
  })

  it('and at every other one', () => {
    for (const typed of ['two 1960 wings, 12 in all of 40 made', 'stamped 17 20934', 'in 1960 4000 were made'])
      expect(heldTogether(typed)).toBe(typed)
  })
})
