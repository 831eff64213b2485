import { describe, expect, it } from 'vitest'
import { sampleFastenings } from '../../electron/use-cases/fastening-sample.ts'
import { type FasteningSample, fasteningSample } from '../../shared-types/fastening-sample.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'

const asked = (more: Partial<FasteningSample> = {}): FasteningSample => ({
  what: 'fastenings with a wrong head',
  ofHowMany: 40,
  looked: 12,
  wrong: 0,
  confidencePercent: 95,
  wantedAtMost: 2,
  positions: [],
  seed: 'wing bolts',
  ...more,
})

describe('a sample of alike fastenings', () => {
  /*
   * Outside value: hypergeometric probabilities by their definition. With 8 wrong of 40, no wrong one among 12 has the
   * probability C(32,12)/C(40,12) = (28·27···21)/(40·39···33); the bound is the greatest number of wrong ones for which it
   * is above 5 %.
   */
  it('bounds the whole exactly, and never says “all” of what was not seen', () => {
    const none = (wrong: number) =>
      Array.from({ length: wrong }, (_, at) => (28 - at) / (40 - at)).reduce((product, each) => product * each, 1)
    const most = [...Array(29).keys()].findLast((wrong) => none(wrong) > 0.05)
    const { bound } = sampleFastenings(asked())
    expect(bound).toMatchObject({ lowCount: 0, highCount: most, method: 'hypergeometric, exact' })
    expect(bound?.words).toMatch(/28 were not seen/)
    expect(bound?.words).not.toMatch(/\ball\b/)
  })

  it('says how many to look at, so that one fewer would not do', () => {
    const { size } = sampleFastenings(asked())
    const look = size?.look ?? Number.NaN
    const missed = (looked: number) => [0, 1, 2].reduce((product, at) => (product * (40 - looked - at)) / (40 - at), 1)
    expect(missed(look)).toBeLessThanOrEqual(0.05)
    expect(missed(look - 1)).toBeGreaterThan(0.05)
  })

  it('draws the same positions from the same seed, in their order on the car, and others from another', () => {
    const first = sampleFastenings(asked())
    expect(sampleFastenings(asked()).positions).toEqual(first.positions)
    expect(first.positions.length).toBe(first.size?.look)
    expect(first.positions.map(Number)).toEqual(first.positions.map(Number).toSorted((one, other) => one - other))
    expect(sampleFastenings(asked({ seed: 'another' })).positions).not.toEqual(first.positions)
    expect(first.drawnBy).toContain('wing bolts')
  })

  it('names positions as they were named, and says nothing of those nobody looked at', () => {
    const named = asked({ ofHowMany: 3, looked: 0, wantedAtMost: 0, positions: ['front', 'middle', 'rear'] })
    expect(sampleFastenings(named)).toMatchObject({ bound: null, positions: ['front', 'middle', 'rear'] })
  })

  it('refuses what cannot be: more wrong than looked at, more looked at than there are, names that do not fit', () => {
    for (const more of [
      { wrong: 13 },
      { looked: 41 },
      { looked: 0, wrong: 1 },
      { positions: ['a', 'b'] },
      { ofHowMany: 2, looked: 0, positions: ['a', 'a'] },
    ])
      expect(() => sampleFastenings(asked(more))).toThrow(ProblemError)
    expect(fasteningSample.safeParse(asked({ ofHowMany: 0 })).success).toBe(false)
  })
})
