import { describe, expect, it } from 'vitest'
import {
  conformalShift,
  drawnInterval,
  endScores,
  evidenceOf,
  shiftedInterval,
  shiftsFor,
} from '../../../electron/analysis/coating/interval-calibration.ts'
import { intervalTable } from '../../../electron/analysis/coating/interval-table.ts'
import { seededDraw } from '../../../electron/analysis/sampling/seeded-draws.ts'
import { coverageOf, followedPanel, type StudyRow, studyPanel } from './coverage-study.ts'

const PANELS = 120
/** Of 120 panels at 90 %, between these lie all but one in a thousand (binomial distribution). */
const LEAST = 96
const MOST = 118

/** A short run of the study that `node build/coating-coverage.mjs test` does in full; its seeds serve for nothing else. */
describe('intervals of 90 % hold the truth on simulated panels', () => {
  const rows = Array.from({ length: PANELS }, (_, at) => studyPanel('short', 25, at, { nodes: 700, draws: 199 }))
  it.each(['area', 'volume'] as const)('for the %s of filler at 25 readings', (extent) => {
    const { covered } = coverageOf(rows, extent, intervalTable)
    expect(covered).toBeGreaterThanOrEqual(LEAST)
    expect(covered).toBeLessThanOrEqual(MOST)
  })
  it('and do not when they are drawn to a third of their width, so that the run can fail', () => {
    const third = ({ low, middle, high }: StudyRow['area']) => ({
      low: middle - (middle - low) / 3,
      middle,
      high: middle + (high - middle) / 3,
    })
    const narrow = rows.map((row) => ({ ...row, area: third(row.area), volume: third(row.volume) }))
    expect(coverageOf(narrow, 'area', null).covered).toBeLessThan(LEAST)
    expect(coverageOf(narrow, 'volume', null).covered).toBeLessThan(LEAST)
  })
  it('without being of no use: the median width is less than one and a half times the truth', () => {
    expect(coverageOf(rows, 'area', intervalTable).medianWidth).toBeLessThan(1.5)
    expect(coverageOf(rows, 'volume', intervalTable).medianWidth).toBeLessThan(1.5)
  })
})

describe('intervals of 90 % hold the truth where the last readings followed the rule', () => {
  const rows = Array.from({ length: 40 }, (_, at) => followedPanel('short', [25, 10], at, { nodes: 700, draws: 199 }))
  /** Of 40 panels at 90 %, fewer than this lie inside less than once in two thousand times. */
  const least = 29
  it.each(['area', 'volume'] as const)('for the %s of filler', (extent) => {
    expect(coverageOf(rows, extent, intervalTable).covered).toBeGreaterThanOrEqual(least)
  })
})

describe('shifted ends', () => {
  it('cover the share they were set for on scores never seen, whatever the draws got wrong', () => {
    const draw = seededDraw('conformal')
    const truths = Array.from({ length: 4000 }, () => 40 * draw() ** 2)
    const drawn = { low: 8, middle: 10, high: 13 }
    const shifts = (['low', 'high'] as const).map((end) =>
      conformalShift(
        truths.slice(0, 2000).map((truth) => endScores(drawn, truth, 0.5)[end]),
        0.95,
      ),
    )
    const interval = shiftedInterval(drawn, { low: shifts[0] as number, high: shifts[1] as number }, 0.5, 1000)
    const inside = truths.slice(2000).filter((truth) => truth >= interval.low && truth <= interval.high).length / 2000
    expect(inside).toBeGreaterThan(0.88)
    expect(inside).toBeLessThan(0.93)
  })
  it('stay between nought and the most there can be and never pass the middle', () => {
    expect(shiftedInterval({ low: 1, middle: 2, high: 3 }, { low: 9, high: 9 }, 1, 5)).toEqual({
      low: 0,
      middle: 2,
      high: 5,
    })
    expect(shiftedInterval({ low: 1, middle: 2, high: 3 }, { low: -9, high: -9 }, 1, 5)).toEqual({
      low: 2,
      middle: 2,
      high: 2,
    })
  })
  it('never lift a low end from nought: a panel without filler keeps none in its interval', () => {
    expect(shiftedInterval({ low: 0, middle: 2, high: 3 }, { low: -0.5, high: 0 }, 1, 5).low).toBe(0)
  })
  it('lie between those of the numbers of readings that were simulated', () => {
    const of = (high: number) => ({ low: 0, high })
    const same = (high: number) => ({ none: of(high), few: of(high), several: of(high), 'nearly all': of(high) })
    const table = [
      { readings: 20, shifts: { area: same(1), volume: same(1) } },
      { readings: 80, shifts: { area: same(0), volume: same(0) } },
    ]
    expect(shiftsFor(40, 'area', 'few', table).high).toBeCloseTo(0.5, 12)
    expect([5, 20, 80, 500].map((readings) => shiftsFor(readings, 'area', 'few', table).high)).toEqual([1, 1, 0, 0])
  })
  it('depend on what the readings showed', () => {
    expect([evidenceOf(20, 20), evidenceOf(20, 18), evidenceOf(20, 10), evidenceOf(20, 1)]).toEqual([
      'none',
      'few',
      'several',
      'nearly all',
    ])
  })
  it('take quantiles straight between draws', () => {
    expect(drawnInterval(Float64Array.from({ length: 101 }, (_, at) => 100 - at))).toEqual({
      low: 5,
      middle: 50,
      high: 95,
    })
  })
})
