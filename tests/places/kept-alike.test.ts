import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { keptWhereAlike } from '../../renderer/store/kept-alike.ts'

const answer = {
  tells: [
    { key: 'roof', bits: 0.4, values: [{ id: 'open' }, { id: 'closed' }] },
    { key: 'axle', bits: 0.2, values: [{ id: 'long' }] },
  ],
  scale: 'words',
}
const again = () => structuredClone(answer)

describe('an answer that follows another', () => {
  it('is the very one before where nothing changed', () => {
    expect(keptWhereAlike(answer, again())).toBe(answer)
  })

  it('keeps what did not change, found by its name wherever it stands now', () => {
    const now = again()
    now.tells.reverse()
    ;(now.tells[1] as { bits: number }).bits = 0.7
    const kept = keptWhereAlike(answer, now)
    expect(kept).toEqual(now)
    expect(kept.tells[0]).toBe(answer.tells[1])
    expect(kept.tells[1]).not.toBe(answer.tells[0])
    expect(kept.tells[1]?.values).toBe(answer.tells[0]?.values)
  })

  it('says what was said now, whatever was said before', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.jsonValue(), (before, now) => {
        expect(keptWhereAlike(before, now)).toEqual(now)
      }),
    )
  })
})
