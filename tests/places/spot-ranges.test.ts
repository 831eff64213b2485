import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { rangesFrom, rangesOf } from '../../renderer/places/putting-right/spot-ranges.ts'

describe('numbers of spots in a form', () => {
  it('draw runs together', () => {
    expect(rangesOf([4, 1, 2, 3, 9, 10, 12])).toBe('1-4 9 10 12')
    expect(rangesOf([])).toBe('')
  })
  it('are read back as they were written, whatever they are', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: 1, max: 300 })), (numbers) => {
        const known = Array.from({ length: 300 }, (_, at) => at + 1)
        const sorted = numbers.toSorted((one, other) => one - other)
        expect(rangesFrom(rangesOf(numbers), known)).toEqual({ numbers: sorted, unknown: [] })
      }),
    )
  })
  it('are taken with the letter, with commas and with any dash, and what names no spot is told', () => {
    expect(rangesFrom('R1–R3, r 5; 8', [1, 2, 3, 5, 6])).toEqual({ numbers: [1, 2, 3, 5], unknown: ['8'] })
    expect(rangesFrom('all', [1])).toEqual({ numbers: [], unknown: ['all'] })
  })
})
