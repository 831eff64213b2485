import { describe, expect, it } from 'vitest'
import { boundJointOptions } from '../../../electron/analysis/sampling/joint-options.ts'
import { drawSample, seededSample } from '../../../electron/analysis/sampling/random-sample.ts'
import { atMost, boundFromSample, sizeOfSample } from '../../../electron/analysis/sampling/sample-bound.ts'
import { normalDraw, seededDraw, xoshiro128 } from '../../../electron/analysis/sampling/seeded-draws.ts'

const ask = (looked: number, found: number, ofHowMany: number | null) =>
  boundFromSample({ looked, found, ofHowMany, confidence: 0.95, what: 'screws with another recess' })

describe('Clopper and Pearson', () => {
  it.each([
    // scipy 1.17.1, quantiles of the beta distribution; none found: 1 - 0.05^(1/n).
    [10, 0, 0, 0.2588655508930522],
    [20, 1, 0.0012650894979498038, 0.24873276277202777],
    [30, 15, 0.31297028586802744, 0.6870297141319726],
    [40, 40, 0.9278424754944854, 1],
  ])('%i looked at, %i found', (looked, found, low, high) => {
    const { lowShare, highShare } = ask(looked, found, null)
    expect(lowShare).toBeCloseTo(low, 12)
    expect(highShare).toBeCloseTo(high, 12)
  })
})

describe('of a known number', () => {
  it.each([
    // scipy 1.17.1, hypergeom, by trying every number.
    [40, 12, 0, 0, 7],
    [40, 12, 3, 4, 21],
    [200, 59, 0, 0, 8],
    [100, 10, 10, 76, 100],
    [1000, 80, 5, 22, 136],
  ])('%i there, %i looked at, %i found: %i to %i', (all, looked, found, low, high) => {
    expect(ask(looked, found, all)).toMatchObject({ lowCount: low, highCount: high })
  })
  it('adds up to 1, and to the share by counting for four of ten', () => {
    // 4 of 10 marked, 3 drawn, none marked: C(6,3)/C(10,3) = 20/120.
    expect(atMost(0, 3, 4, 10)).toBeCloseTo(1 / 6, 13)
    expect(atMost(3, 3, 4, 10)).toBeCloseTo(1, 13)
  })
  it.each([
    // scipy 1.17.1, hypergeom.
    [40, 4, 18],
    [200, 10, 47],
    [24, 0, 23],
  ])('of %i, so that none found means at most %i: look at %i', (ofHowMany, bound, look) => {
    expect(sizeOfSample({ ofHowMany, atMost: bound, confidence: 0.95 }).look).toBe(look)
  })
  it('never says all', () => {
    for (const found of [0, 12]) expect(ask(12, found, 40).words).not.toMatch(/\ball\b|every one/i)
    expect(ask(40, 0, 40).words).toContain('Each of the 40 was looked at')
    expect(ask(12, 0, 40).words).toContain('28 were not seen')
  })
  it('refuses numbers that contradict each other, with the cure', () => {
    expect(() => ask(3, 4, null)).toThrow(/correct one/)
    expect(() => ask(41, 4, 40)).toThrow(/correct one/)
    expect(() => sizeOfSample({ ofHowMany: 4, atMost: 4, confidence: 0.95 })).toThrow(/smaller/)
  })
})

describe('drawing', () => {
  it('xoshiro128** gives the published sequence', () => {
    // The authors' C program from the state 1, 2, 3, 4, as several public test suites quote it.
    const next = xoshiro128([1, 2, 3, 4])
    expect(Array.from({ length: 10 }, next)).toEqual([
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
    ])
  })
  it('the same seed draws the same sample, another one another', () => {
    const from = Array.from({ length: 40 }, (_, at) => `screw ${at + 1}`)
    const draw = (seed: string) => seededSample({ from, draw: 12, seed }).drawn
    expect(draw('bonnet 1')).toEqual(draw('bonnet 1'))
    expect(draw('bonnet 1')).not.toEqual(draw('bonnet 2'))
    expect(new Set(draw('bonnet 1')).size).toBe(12)
  })
  it('every pair of five is drawn alike often', () => {
    const draw = seededDraw('pairs')
    const counts = new Map<string, number>()
    for (let times = 0; times < 20_000; times += 1) {
      const pair = drawSample(['a', 'b', 'c', 'd', 'e'], 2, draw).join('')
      counts.set(pair, (counts.get(pair) ?? 0) + 1)
    }
    const square = [...counts.values()].reduce((sum, count) => sum + (count - 1000) ** 2 / 1000, 0)
    expect(counts.size).toBe(20)
    // Chi-square with 19 degrees of freedom: 43.8 is passed by one in a thousand.
    expect(square).toBeLessThan(43.8)
  })
  it('normal numbers have mean 0 and variance 1 within four standard errors', () => {
    const draw = normalDraw(seededDraw('normal'))
    const values = Array.from({ length: 40_000 }, draw)
    expect(Math.abs(values.reduce((sum, value) => sum + value, 0) / 40_000)).toBeLessThan(4 / 200)
    const variance = values.reduce((sum, value) => sum + value * value, 0) / 40_000
    expect(Math.abs(variance - 1)).toBeLessThan(4 * Math.sqrt(2 / 40_000))
  })
  it('refuses to draw more than there are', () => {
    expect(() => seededSample({ from: ['a'], draw: 2, seed: '' })).toThrow(/draw fewer/)
  })
})

describe('options together', () => {
  it('Fréchet bounds, one line a source', () => {
    const source = (label: string, built: number, ...counts: number[]) => ({
      label,
      built,
      options: counts.map((count, at) => ({ label: `option ${at}`, count })),
    })
    // 700 + 600 - 1000 = 300 at least; three of 900 in 1000: 2700 - 2000 = 700 at least.
    const { lines, agree } = boundJointOptions({
      sources: [source('one', 1000, 700, 600), source('two', 1000, 900, 900, 900), source('three', 1000, 100, 50)],
    })
    expect(lines.map(({ low, high }) => [low, high])).toEqual([
      [300, 600],
      [700, 900],
      [0, 50],
    ])
    expect(agree).toBe(false)
    expect(() => boundJointOptions({ sources: [source('four', 10, 11)] })).toThrow(/correct one/)
  })
})
