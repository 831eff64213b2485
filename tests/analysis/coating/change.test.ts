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
    expect(changeTrust([50, 80], 'area', measured)).toEqual({ coverage: 0.9, reason: null, tellsSides: true })
    expect(changeTrust([25, 50], 'volume', measured).coverage).toBe(0.9)
  })
  it('is not where the truth was held more often, but a side of nought may be told; from how many on it would be is said', () => {
    const { coverage, reason, tellsSides } = changeTrust([30, 60], 'area', measured)
    expect(coverage).toBeNull()
    expect(tellsSides).toBe(true)
    expect(reason).toMatch(/at about 25 readings .* on 94 of 100 .* not called 90 %; from 50 readings each time/)
  })
  it('is nothing where the truth was held less often, or with fewer readings than were tried', () => {
    expect(changeTrust([20, 60], 'area', measured)).toMatchObject({ coverage: null, tellsSides: false })
    expect(changeTrust([8, 60], 'area', measured).reason).toMatch(/8 readings are too few .* at least 15 before/)
    expect(changeTrust([8, 60], 'area', []).tellsSides).toBe(false)
  })
})
