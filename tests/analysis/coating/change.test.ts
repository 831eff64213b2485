import { describe, expect, it } from 'vitest'
import { changeTrust } from '../../../electron/analysis/coating/change-trust.ts'
import { changeCoverage, studyChange } from './change-study.ts'

const PAIRS = 80
/** Of 80 pairs at 90 %, between these lie all but one in a thousand (binomial distribution). */
const LEAST = 63
const MOST = 80

/** A short run of the study that `node build/change-coverage.mjs` does in full; its seeds serve for nothing else. */
describe('the interval of a difference holds the truth on simulated panels before and after work', () => {
  const rows = Array.from({ length: PAIRS }, (_, at) => studyChange('change short', 25, at, { nodes: 500, draws: 149 }))
  it.each(['area', 'volume'] as const)('for the %s of filler at 25 readings each time', (extent) => {
    const { covered, wronglyTold, lessened, toldLess } = changeCoverage(rows, extent)
    expect(covered).toBeGreaterThanOrEqual(LEAST)
    expect(covered).toBeLessThanOrEqual(MOST)
    expect(wronglyTold).toBeLessThanOrEqual(8)
    expect(toldLess / lessened).toBeGreaterThan(0.4)
  })
  it('and does not when it is drawn to a fifth of its width, so that the run can fail', () => {
    const fifth = rows.map((row) => ({
      ...row,
      area: narrowed(row.area),
      volume: narrowed(row.volume),
    }))
    expect(changeCoverage(fifth, 'area').covered).toBeLessThan(LEAST)
    expect(changeCoverage(fifth, 'volume').covered).toBeLessThan(LEAST)
  })
})

const narrowed = ({ low, middle, high }: { low: number; middle: number; high: number }) => ({
  low: middle - (middle - low) / 5,
  middle,
  high: middle + (high - middle) / 5,
})

describe('what a difference may be called', () => {
  const measured = [
    { readings: 15, panels: 400, area: 0.84, volume: 0.95 },
    { readings: 25, panels: 400, area: 0.94, volume: 0.9 },
    { readings: 50, panels: 400, area: 0.9, volume: 0.9 },
  ]
  it('is 90 % where both numbers of readings were shown to hold it', () => {
    expect(changeTrust([50, 80], 'area', measured)).toEqual({ coverage: 0.9, called: '90 %' })
    expect(changeTrust([25, 50], 'volume', measured)).toEqual({ coverage: 0.9, called: '90 %' })
  })
  it('is at least 90 % where one of them held the truth more often', () => {
    expect(changeTrust([30, 60], 'area', measured)).toEqual({ coverage: 0.9, called: 'at least 90 %' })
    expect(changeTrust([15, 60], 'volume', measured)).toEqual({ coverage: 0.9, called: 'at least 90 %' })
  })
  it('is nothing where the truth was held less often, or with fewer readings than were tried', () => {
    expect(changeTrust([20, 60], 'area', measured)).toEqual({
      coverage: null,
      reason: expect.stringMatching(
        /at about 15 readings .* on 84 of 100 .* not called 90 %; from 25 readings each time/,
      ),
    })
    expect(changeTrust([8, 60], 'area', measured)).toEqual({
      coverage: null,
      reason: expect.stringMatching(/8 readings are too few .* at least 15 before/),
    })
    expect(changeTrust([8, 60], 'area', []).coverage).toBeNull()
  })
})
