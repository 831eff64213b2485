import { describe, expect, it } from 'vitest'
import { intervalTrust } from '../../../electron/analysis/coating/interval-trust.ts'

/** Invented: 15 readings held the truth too seldom, 25 more often than need be for volume. */
const measured = [
  { readings: 15, panels: 400, area: 0.86, volume: 0.85 },
  { readings: 25, panels: 400, area: 0.9, volume: 0.95 },
  { readings: 50, panels: 400, area: 0.91, volume: 0.9 },
]

const refused = (words: RegExp) => ({ coverage: null, reason: expect.stringMatching(words) })

describe('an interval is called one of 90 % only where simulated panels bear that out', () => {
  it('at a number of readings whose share lies in the band, and between two such', () => {
    for (const readings of [25, 40, 50, 400])
      expect(intervalTrust(readings, 'area', measured)).toEqual({ coverage: 0.9, called: '90 %' })
  })
  it('not below the first such, and then says how many readings are needed', () => {
    expect(intervalTrust(15, 'area', measured)).toEqual(refused(/15 readings are too few .*take at least 25/))
    expect(intervalTrust(24, 'volume', measured)).toEqual(refused(/take at least 25/))
  })
  it('one of at least 90 % where the truth was held more often on either side', () => {
    for (const readings of [25, 30])
      expect(intervalTrust(readings, 'volume', measured)).toEqual({ coverage: 0.9, called: 'at least 90 %' })
    expect(intervalTrust(50, 'volume', measured)).toEqual({ coverage: 0.9, called: '90 %' })
  })
  it('not where the share lies below the band above a number that did well', () => {
    const gap = [...measured, { readings: 100, panels: 400, area: 0.85, volume: 0.9 }]
    expect(intervalTrust(100, 'area', gap)).toEqual(refused(/at about 100 readings .* 85 of 100 simulated panels/))
    expect(intervalTrust(70, 'area', gap)).toEqual(refused(/85 of 100/))
    expect(intervalTrust(70, 'volume', gap).coverage).toBe(0.9)
  })
  it('nowhere when nothing was measured', () => {
    expect(intervalTrust(50, 'area', [])).toEqual(refused(/no number of readings/))
  })
})
