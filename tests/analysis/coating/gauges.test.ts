import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { correctReading, gaugeCorrection } from '../../../electron/analysis/coating/gauge-correction.ts'
import { coverOfReading, judgeChecks } from '../../../electron/analysis/coating/gauge-drift.ts'
import { gaugeUncertainty } from '../../../electron/analysis/coating/gauge-error.ts'
import { spotWithDiscards } from '../../../electron/analysis/coating/spot-discards.ts'
import {
  acceptSteelwork,
  spotLimitsLevel3,
  steelworkSampling,
} from '../../../electron/analysis/coating/steelwork-rules.ts'
import { probeWarning, substrateReading } from '../../../electron/analysis/coating/substrate-reading.ts'
import { fitStraightLine, readBackwards } from '../../../electron/analysis/statistics/straight-line.ts'
import { coatingPrinciple, coatingSubstrate, shimCheck, substrateReach } from '../../../shared-types/coating.ts'

describe('declared error of a gauge', () => {
  it('as a tolerance of ±(1 µm + 1 %) and ±(2 µm + 3 %) at 120 µm gives 1.27 and 3.23 µm (JCGM 100, 4.3.7)', () => {
    expect(gaugeUncertainty({ constantUm: 1, percent: 1, meaning: 'tolerance' }, 120)).toBeCloseTo(1.27, 2)
    expect(gaugeUncertainty({ constantUm: 2, percent: 3, meaning: 'tolerance' }, 120)).toBeCloseTo(3.233, 3)
  })
  it('as a 95 % limit is halved', () => {
    expect(gaugeUncertainty({ constantUm: 2, percent: 3, meaning: '95 % limit' }, 100)).toBe(2.5)
  })
})

/** NIST StRD linear regression, data set Norris (y, x); certified intercept, slope and their standard deviations. */
const norris =
  `0.1 0.2 338.8 337.4 118.1 118.2 888.0 884.6 9.2 10.1 228.1 226.5 668.5 666.3 998.5 996.3 449.1 448.6 778.9 777.0
559.2 558.2 0.3 0.4 0.1 0.6 778.1 775.5 668.8 666.9 339.3 338.0 448.9 447.5 10.8 11.6 557.7 556.0 228.3 228.1 998.0 995.8
888.8 887.6 119.6 120.2 0.3 0.3 0.6 0.3 557.6 556.8 339.3 339.1 888.0 887.2 998.5 999.0 778.9 779.0 10.2 11.1 117.6 118.3
228.9 229.2 668.4 669.1 449.2 448.9 0.2 0.5`
    .split(/\s+/)
    .map(Number)

describe('straight-line calibration', () => {
  const points = Array.from({ length: norris.length / 2 }, (_, at) => ({
    x: norris[2 * at + 1] as number,
    y: norris[2 * at] as number,
    u: 1,
  }))
  it('agrees with the certified fit of NIST StRD Norris', () => {
    const line = fitStraightLine(points)
    if (line === null) throw new Error('no line')
    const residual = Math.sqrt(line.chiSquare / line.degreesOfFreedom)
    const certified = [
      [line.intercept, -0.262323073774029],
      [line.slope, 1.00211681802045],
      [residual, 0.884796396144373],
      [residual * Math.sqrt(line.interceptVariance), 0.232818234301152],
      [residual * Math.sqrt(line.slopeVariance), 0.429796848199937e-3],
    ] as const
    for (const [found, value] of certified) expect(Math.abs(found / value - 1)).toBeLessThan(1e-11)
  })
  it('weighs by uncertainty: a point with a hundredfold uncertainty hardly pulls', () => {
    const line = fitStraightLine([
      { x: 0, y: 0, u: 1 },
      { x: 100, y: 100, u: 1 },
      { x: 50, y: 90, u: 100 },
    ])
    expect(line?.slope).toBeCloseTo(1, 2)
    expect(line === null ? 0 : readBackwards(line, 50, 1).x).toBeCloseTo(50, 1)
  })
  const check = (at: string, shimUm: number, readUm: number[]) =>
    shimCheck.parse({ at: `2026-05-14T${at}:00.000Z`, shimUm, shimUncertaintyUm: 0.5, readUm })
  const declared = { constantUm: 2, percent: 3, meaning: '95 % limit' } as const
  it('puts a reading right and says so beyond the shims', () => {
    const correction = gaugeCorrection([check('08:00', 0, [4, 5, 6]), check('08:01', 500, [524, 525, 526])])
    expect(correctReading(correction, declared, 265).thicknessUm).toBeCloseTo(250, 6)
    expect(correctReading(correction, declared, 265).beyondShims).toBe(false)
    expect(correctReading(correction, declared, 265).standardUncertaintyUm).toBeGreaterThan(
      gaugeUncertainty(declared, 265) / 1.04,
    )
    expect(correctReading(correction, declared, 900).beyondShims).toBe(true)
    expect(() => gaugeCorrection([check('08:00', 0, [4])])).toThrow(/two thicknesses/)
    expect(() => gaugeCorrection([check('08:00', 0, [300]), check('08:01', 500, [10])])).toThrow(/two thicknesses/)
  })
  it('finds drift between checks and marks readings beside a failed one', () => {
    const judged = judgeChecks(
      [
        check('12:00', 100, [131, 130, 132]),
        check('08:00', 100, [101, 100, 102]),
        check('10:00', 100, [101, 102, 100]),
      ],
      declared,
    )
    expect(judged.map(({ passed }) => passed)).toEqual([true, true, false])
    expect(judged.map(({ drift }) => drift?.real ?? null)).toEqual([null, false, true])
    expect(judged[2]?.drift?.um).toBeCloseTo(30, 9)
    const cover = (time: string) => coverOfReading(`2026-05-14T${time}:00.000Z`, judged)
    expect(['07:00', '09:00', '11:00', '13:00'].map(cover)).toEqual([
      'no check before',
      'checked before and after',
      'a check beside it failed',
      'a check beside it failed',
    ])
    expect(coverOfReading('2026-05-14T11:00:00.000Z', judged.slice(0, 2))).toBe('no check after')
  })
})

describe('spots', () => {
  const values = [110, 114, 310].map((um) => ({ kind: 'value' as const, um }))
  it('keep both means and the reason of what was set aside', () => {
    const { kept, all, words } = spotWithDiscards(values, [{ at: 2, reason: 'probe on a screw head' }], null)
    expect([kept.meanUm, all.meanUm]).toEqual([112, 178])
    expect(words).toContain('reading 3 (probe on a screw head)')
  })
  it('refuse a discard without a reason, without a reading, or of everything', () => {
    expect(() => spotWithDiscards(values, [{ at: 2, reason: ' ' }], null)).toThrow(/Say why/)
    expect(() => spotWithDiscards(values, [{ at: 9, reason: 'tilted' }], null)).toThrow(/no reading of that number/)
    expect(() => spotWithDiscards(values.slice(0, 1), [{ at: 0, reason: 'tilted' }], null)).toThrow(/at least one/)
  })
})

describe('what a gauge can read', () => {
  const table = z
    .array(substrateReach)
    .parse(JSON.parse(readFileSync(resolve('resources', 'coating', 'substrates.json'), 'utf8')))
  it('is told for every principle over every substrate, with a source', () => {
    for (const principle of coatingPrinciple.options)
      for (const substrate of coatingSubstrate.options)
        expect(table.filter((row) => row.principle === principle && row.substrate === substrate)).toHaveLength(1)
  })
  it('tells body solder on a magnetic gauge from the same on an eddy current gauge', () => {
    expect(substrateReading(table, 'magnetic induction', 'lead-loaded seam').shows).toMatch(/looks like filler/)
    expect(substrateReading(table, 'eddy current', 'lead-loaded seam').shows).toMatch(/does not show/)
    expect(substrateReading([], 'eddy current', 'steel').reads).toBe('with care')
  })
  it('warns at edges and tight curves', () => {
    expect(probeWarning(12, 8, 5000)).toBe('too near an edge')
    expect(probeWarning(12, 50, 100)).toBe('too tightly curved')
    expect(probeWarning(12, 50, 5000)).toBeNull()
  })
})

describe('rules for structural steel, named as what they are', () => {
  it('count areas, spots and readings as SSPC-PA 2 (2012) does; 12,500 square feet are its published example', () => {
    const squareFoot = 0.1
    expect(steelworkSampling(12_500 * squareFoot)).toEqual({ areas: 15, spots: 75, readings: 225 })
    expect([80, 250, 301, 1001].map((feet) => steelworkSampling(feet * squareFoot).areas)).toEqual([1, 3, 3, 4])
  })
  it('bound spots of an 8 to 12 mil film by 6.4 and 14.4 mil (SSPC-PA 2, level 3)', () => {
    expect(spotLimitsLevel3(8, 12).low).toBeCloseTo(6.4, 12)
    expect(spotLimitsLevel3(8, 12).high).toBeCloseTo(14.4, 12)
  })
  it('accept by ISO 19840:2012', () => {
    const rest = (count: number, value: number) => Array.from({ length: count }, () => value)
    expect(acceptSteelwork(rest(10, 100), 100, 300).accepted).toBe(true)
    expect(acceptSteelwork([79, ...rest(9, 110)], 100, 300).failed).toEqual([
      'a reading is under 80 % of the nominal film',
    ])
    expect(acceptSteelwork([85, 85, ...rest(8, 110)], 100, 300).failed[0]).toMatch(/20 %/)
    expect(acceptSteelwork([85, ...rest(9, 110)], 100, 300).accepted).toBe(true)
    expect(acceptSteelwork([...rest(9, 110), 301], 100, 300).accepted).toBe(false)
  })
})
