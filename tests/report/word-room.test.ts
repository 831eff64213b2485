import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { WordRoom } from '../../electron/report/drawing/word-room.ts'

const WORD = { width: 8, height: 2.6 }
const RADIUS = 0.6

const boxOf = ({ left, foot }: { left: number; foot: number }) => ({
  left,
  right: left + WORD.width,
  top: foot - WORD.height,
  foot,
})

describe('words on a drawing', () => {
  test('stand beside their mark, or on its other side at the edge of the field', () => {
    const room = new WordRoom({ left: 0, right: 100 })
    expect(room.beside(WORD, 50, 50, RADIUS)?.left).toBeGreaterThan(50)
    expect(room.beside(WORD, 97, 20, RADIUS)?.left).toBeLessThan(97 - WORD.width)
  })

  test('of two spots at one place stand apart, and a crowd leaves some out rather than covering any', () => {
    const room = new WordRoom({ left: 0, right: 100 })
    const places = Array.from({ length: 20 }, () => room.beside(WORD, 50, 50, RADIUS))
    expect(places.filter((place) => place !== null).length).toBeGreaterThan(3)
    expect(places).toContain(null)
  })

  test('that may stand at several places take the first free one, and none when all are taken', () => {
    const room = new WordRoom({ left: 0, right: 100 })
    const places = [
      { x: 50, y: 50 },
      { x: 60, y: 50 },
    ]
    room.take(50, 50, RADIUS)
    expect(room.atFirst(WORD, places)).toEqual({ left: 56, foot: 51.3 })
    expect(room.atFirst(WORD, places)).toBeNull()
  })

  test('never cover a mark or one another, wherever the marks are', () => {
    const mark = fc.record({
      x: fc.double({ min: 0, max: 60, noNaN: true }),
      y: fc.double({ min: 0, max: 40, noNaN: true }),
    })
    fc.assert(
      fc.property(fc.array(mark, { maxLength: 30 }), (marks) => {
        const room = new WordRoom({ left: 0, right: 60 })
        for (const { x, y } of marks) room.take(x, y, RADIUS)
        const words = marks.flatMap(({ x, y }) => room.beside(WORD, x, y, RADIUS) ?? []).map(boxOf)
        for (const [index, word] of words.entries()) {
          expect(word.left).toBeGreaterThanOrEqual(0)
          expect(word.right).toBeLessThanOrEqual(60)
          for (const { x, y } of marks) {
            const inside = x > word.left && x < word.right && y > word.top && y < word.foot
            expect(inside).toBe(false)
          }
          for (const other of words.slice(index + 1)) {
            const apart =
              word.right <= other.left || other.right <= word.left || word.foot <= other.top || other.foot <= word.top
            expect(apart).toBe(true)
          }
        }
      }),
    )
  })
})
