import { describe, expect, it } from 'vitest'
import { whyNotNinety } from '../../../electron/analysis/coating/interval-trust.ts'

/** Invented: 25 readings held the truth too seldom for volume, 15 too seldom for either. */
const measured = [
  { readings: 15, panels: 400, area: 0.86, volume: 0.85 },
  { readings: 25, panels: 400, area: 0.9, volume: 0.95 },
  { readings: 50, panels: 400, area: 0.91, volume: 0.9 },
]

describe('an interval is called one of 90 % only where simulated panels bear that out', () => {
  it('at a number of readings whose share lies in the band, and between two such', () => {
    expect([25, 40, 50, 400].map((readings) => whyNotNinety(readings, 'area', measured))).toEqual([
      null,
      null,
      null,
      null,
    ])
  })
  it('not below the first such, and then says how many readings are needed', () => {
    expect(whyNotNinety(15, 'area', measured)).toMatch(/take at least 25/)
    expect(whyNotNinety(24, 'area', measured)).toMatch(/take at least 25/)
    expect(whyNotNinety(30, 'volume', measured)).toMatch(/take at least 50/)
  })
  it('not where the share lies outside the band above a number that did well', () => {
    const gap = [...measured, { readings: 100, panels: 400, area: 0.95, volume: 0.9 }]
    expect(whyNotNinety(100, 'area', gap)).toMatch(/95 of 100 simulated panels/)
    expect(whyNotNinety(70, 'area', gap)).toMatch(/95 of 100/)
    expect(whyNotNinety(70, 'volume', gap)).toBeNull()
  })
  it('nowhere when nothing was measured', () => {
    expect(whyNotNinety(50, 'area', [])).toMatch(/no number of readings/)
  })
})
