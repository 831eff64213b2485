import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fittedLines } from '../../renderer/drawing/fitted-lines.ts'

const letters = (text: string) => text.length

describe('a text in the room it has', () => {
  it('breaks at spaces, and inside a word only where it must', () => {
    expect(fittedLines('print 4 60 on the wrapper', 12, letters)).toEqual(['print 4 60', 'on the', 'wrapper'])
    expect(fittedLines('front-left-hinge', 6, letters)).toEqual(['front-', 'left-h', 'inge'])
    expect(fittedLines('', 6, letters)).toEqual([''])
  })

  it('loses no letter and no line is too wide', () => {
    const text = fc.string({ unit: fc.constantFrom('a', 'b', ' ', '-'), maxLength: 60 })
    fc.assert(
      fc.property(text, fc.integer({ min: 1, max: 20 }), (given, room) => {
        const lines = fittedLines(given, room, letters)
        expect(lines.join('').replaceAll(' ', '')).toBe(given.replaceAll(' ', ''))
        expect(Math.max(...lines.map(letters))).toBeLessThanOrEqual(room)
      }),
    )
  })
})
