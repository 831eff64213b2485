import { describe, expect, it } from 'vitest'
import { readSheetNumber } from '../../../electron/analysis/identity/read-sheet-number.ts'
import { sheetNumber } from '../../../shared-types/reference-fact.ts'

const engine = sheetNumber.parse({
  id: 'engine-number',
  name: 'Engine number',
  places: [
    {
      kind: 'marks',
      name: 'type',
      rows: [
        { text: 'H12', means: { engine: ['h'] } },
        { text: 'L17', means: { engine: ['l'] } },
      ],
    },
    {
      kind: 'sequence',
      name: 'number',
      minDigits: 4,
      maxDigits: 5,
      stretches: [
        { first: 1001, last: 5999 },
        { first: 6000, last: 20999 },
      ],
    },
    { kind: 'fixed', texts: ['E'], optional: true },
  ],
})

describe('a number read by the grammar of a sheet', () => {
  it('is divided into its marks and figures, with and without separators', () => {
    for (const asRead of ['L17 6500', 'l17-6500', 'L17.6500 E'])
      expect(readSheetNumber(asRead, engine)).toMatchObject({
        ways: [{ marks: [{ place: 0, row: 1 }], sequences: [{ place: 1, text: '6500', stretch: 1 }] }],
        why: null,
      })
  })

  it('keeps every way an unreadable character leaves', () => {
    const { ways } = readSheetNumber('?1? ?500', engine)
    expect(ways.map(({ marks, sequences }) => [marks[0]?.row, sequences[0]?.stretch])).toEqual([
      [0, 0],
      [0, 1],
      [1, 0],
      [1, 1],
    ])
  })

  it('says from which place on it does not fit', () => {
    expect(readSheetNumber('V3 0412', engine).why).toBe('V stands in place 1 where the type: H12, L17 is wanted.')
    expect(readSheetNumber('L17 0999', engine).why).toMatch(/a number that was issued/)
    expect(readSheetNumber('L17', engine).why).toMatch(/^It ends at place 4/)
    expect(readSheetNumber('', engine).ways).toEqual([])
  })
})
