import { describe, expect, it } from 'vitest'
import { FEW_SPOTS, namedSpots, spotLetter } from '../../renderer/places/walk-round/panel-spots.ts'
import type { ReadingValue, Spot } from '../../shared-types/reading.ts'

const spot = (number: number, ...values: readonly ReadingValue[]): Spot => ({ number, values }) as unknown as Spot
const read = (um: number): ReadingValue => ({ kind: 'value', um })

describe('spots of a panel', () => {
  it('are named by letters of which no two are alike, however many there are', () => {
    expect([0, 25, 26, 27, 51, 52, 701, 702].map(spotLetter)).toEqual(['a', 'z', 'aa', 'ab', 'az', 'ba', 'zz', 'aaa'])
    expect(new Set(Array.from({ length: 2000 }, (_, index) => spotLetter(index))).size).toBe(2000)
  })

  it('are all named on the drawing where they are few, also those that gave no reading', () => {
    const few = Array.from({ length: FEW_SPOTS }, (_, index) => spot(index + 1, { kind: 'no reading' }))
    expect([...namedSpots(few)]).toEqual(few.map(({ number }) => number))
  })

  it('are named by thickness where they are many: what the gauge could not reach the end of comes first', () => {
    const thin = Array.from({ length: 40 }, (_, index) => spot(index + 1, read(100 + index)))
    const many = [...thin, spot(41, { kind: 'more than', um: 2000 }), spot(42, { kind: 'no reading' })]
    const named = [...namedSpots(many)]
    expect(named).toHaveLength(FEW_SPOTS)
    expect(named.slice(0, 2)).toEqual([41, 40])
    expect(named).not.toContain(42)
  })
})
