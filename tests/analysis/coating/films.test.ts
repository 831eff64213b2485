import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { drawCoatingField } from '../../../electron/analysis/coating/drawn-panel.ts'
import { filmContrast } from '../../../electron/analysis/coating/film-contrast.ts'
import { filmMap } from '../../../electron/analysis/coating/film-map.ts'
import { filmPopulations, type PanelFilm } from '../../../electron/analysis/coating/film-populations.ts'
import { filmOfPanel, filmWithoutReference } from '../../../electron/analysis/coating/film-reference.ts'
import { filmWords } from '../../../electron/analysis/coating/film-words.ts'
import { thicknessClasses } from '../../../electron/analysis/coating/thickness-classes.ts'
import { univariate } from '../../../electron/analysis/statistics/univariate.ts'
import { practiceRanges } from '../../../shared-types/coating.ts'
import { askedMeasures } from '../../../shared-types/coating-measures.ts'
import { panelQuestion } from './panel-question.ts'

const thicknesses = [112, 118, 121, 109, 126, 115, 119, 240, 262, 228, 117, 251]
const counts = [20, 15, 30, 12, 25, 18, 22, 20, 10, 16, 24, 14]
const panels = thicknesses.map(
  (um, at): PanelFilm => ({
    panel: `panel ${at + 1}`,
    meanLog: Math.log(um),
    logDeviation: 0.1,
    readings: counts[at] as number,
  }),
)

describe('film populations', () => {
  const mixtures = filmPopulations(panels)
  /** Greatest likelihood found by scipy 1.17.1 optimize.minimize, Nelder-Mead, from the same values. */
  it('reach the greatest likelihood that scipy finds', () => {
    const [one, two] = mixtures
    expect(one?.populations[0]?.medianUm).toBeCloseTo(149.38562973385152, 8)
    expect(one?.logLikelihood).toBeCloseTo(-34.89041203984124, 8)
    expect(two?.populations[0]?.medianUm).toBeCloseTo(117.05705083, 4)
    expect(two?.populations[1]?.medianUm).toBeCloseTo(244.80297267, 4)
    expect(two?.populations[0]?.share).toBeCloseTo(0.6666667, 5)
    expect(two?.logLikelihood).toBeCloseTo(5.713688535694091, 8)
  })
  it('tell two jobs from one, and say what they are compatible with and never what is original', () => {
    expect(mixtures.map(({ weight }) => weight).reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12)
    const words = filmWords(
      mixtures,
      panels.map(({ panel }) => panel),
      askedMeasures({}),
    )
    expect(words[0]).toMatch(/compatible with 2 paint jobs/)
    expect(words.join(' ')).toContain('panel 8 (over 99 %)')
    expect(words.join(' ')).not.toMatch(/is original|are original/)
    const alike = panels.slice(0, 7)
    expect(
      filmWords(
        filmPopulations(alike),
        alike.map(({ panel }) => panel),
        askedMeasures({}),
      )[0],
    ).toMatch(/one paint job/)
  })
  it('need three panels', () => {
    expect(() => filmPopulations(panels.slice(0, 2))).toThrow(/three panels/)
  })
})

describe('the contrast of two films', () => {
  const film = (panel: string, values: number[]): PanelFilm => {
    const logs = values.map(Math.log)
    const { mean, standardDeviation } = univariate(logs)
    return { panel, meanLog: mean, logDeviation: standardDeviation ?? 0, readings: values.length }
  }
  const left = film('left wing', [118, 121, 109, 126, 115])
  const right = film('right wing', [171, 160, 182, 190, 166, 175, 158])
  /** scipy 1.17.1, stats.ttest_ind of the logarithms with unequal variances, 95 % confidence interval. */
  it('has the interval scipy gives', () => {
    const { low, high, ratio } = filmContrast(left, right, 0.12)
    expect(low).toBeCloseTo(0.6346345681475803, 10)
    expect(high).toBeCloseTo(0.7427013883955145, 10)
    expect(ratio).toBeGreaterThan(low)
    expect(filmContrast(right, left, 0.12).low).toBeCloseTo(1 / high, 10)
  })
  it('is weighed against the scatter within one paint job', () => {
    expect(filmContrast(left, right, 0.03).beyondOneJob).toBe(true)
    expect(filmContrast(left, right, 0.12).beyondOneJob).toBe(false)
    expect(() => filmContrast(left, film('door', [120]), 0.1)).toThrow(/two places/)
  })
})

describe('the film of a panel', () => {
  const at = (thicknessUm: number) => ({ xMm: 0, yMm: 0, kind: 'value' as const, thicknessUm, gaugeUm: 2 })
  const paint = [98, 100, 102, 104, 96, 101, 99].map(at)
  it('puts a reference right that is a third off, and leaves it where nothing on the panel may be paint', () => {
    expect(filmOfPanel([...paint, ...[800, 900].map(at)], { medianUm: 133, logDeviation: 0.1 }).medianUm).toBeCloseTo(
      100,
      6,
    )
    expect(filmOfPanel([800, 900, 1000, 1100, 1200].map(at), { medianUm: 120, logDeviation: 0.1 }).medianUm).toBe(120)
  })
  it('is taken from the thinner half where the car has no reference', () => {
    expect(filmWithoutReference([...paint, ...[300, 350, 380, 390, 395, 398].map(at)]).medianUm).toBeCloseTo(100, 6)
    expect(filmWithoutReference([at(900)]).medianUm).toBe(120)
  })
})

describe('the map of the film alone', () => {
  it('follows a film that grows across the panel, leaves filler out and says nothing where nothing can be read', () => {
    const question = panelQuestion({ fillerUm: (x, y) => (x > 850 && y < 150 ? 1200 : 0), filmUm: 120, readings: 80 })
    const sloped = {
      ...question,
      readings: question.readings.map(({ value, ...at }) => ({
        ...at,
        value:
          value.kind === 'value' ? { kind: 'value' as const, um: value.um * (0.85 + (0.3 * at.xMm) / 1000) } : value,
      })),
      nodes: question.nodes.map((node) => ({ ...node, readable: node.yMm < 600 })),
    }
    const map = filmMap(sloped)
    const at = (x: number, y: number) =>
      sloped.nodes.findIndex(({ xMm, yMm }) => Math.abs(xMm - x) <= 20 && Math.abs(yMm - y) <= 20)
    expect(map.leftOutAsMore).toBeGreaterThan(0)
    expect(map.middleUm[at(60, 300)]).toBeLessThan(113)
    expect(map.middleUm[at(940, 300)]).toBeGreaterThan(127)
    expect(map.middleUm[at(940, 300)]).toBeLessThan(160)
    expect(map.middleUm[at(500, 660)]).toBe(-1)
    const inside = [at(60, 300), at(500, 300), at(940, 300)].map(
      (node) => (map.lowUm[node] ?? 0) < (map.middleUm[node] ?? 0),
    )
    expect(inside).toEqual([true, true, true])
  })
  it('takes few or equal readings as their mean, and has nothing to show where all is filler', () => {
    const few = panelQuestion({ fillerUm: () => 0, filmUm: 120, readings: 6 })
    expect(Math.abs((filmMap(few).middleUm[0] ?? 0) - 120)).toBeLessThan(12)
    const same = {
      ...few,
      readings: panelQuestion({ fillerUm: () => 0, filmUm: 120, readings: 20 }).readings.map((reading) => ({
        ...reading,
        value: { kind: 'value' as const, um: 120 },
      })),
    }
    expect(filmMap(same).middleUm[0]).toBeCloseTo(120, 6)
    expect(filmMap(panelQuestion({ fillerUm: () => 900, filmUm: 120, readings: 20 })).words).toMatch(/no film to map/)
  })
})

describe('classes of the trade', () => {
  const ranges = practiceRanges.parse(
    JSON.parse(readFileSync(resolve('resources', 'coating', 'practice-ranges.json'), 'utf8')),
  )
  const shares = (fillerUm: (x: number, y: number) => number, filmUm: number) =>
    thicknessClasses(
      drawCoatingField(panelQuestion({ fillerUm, filmUm, readings: 48 }), () => undefined),
      { medianUm: 110, standardUncertaintyUm: 5 },
      ranges,
    )
  it('name a panel like the rest, a refinished one, a skim and deep filler by what they are', () => {
    expect(shares(() => 0, 30)[0]?.largestChance).toBeGreaterThan(0.9)
    expect(shares(() => 0, 112)[1]?.share).toBeGreaterThan(0.9)
    expect(shares(() => 0, 220)[2]?.share).toBeGreaterThan(0.85)
    expect(shares(() => 450, 110)[3]?.share).toBeGreaterThan(0.85)
    const half = shares((x) => (x < 500 ? 1500 : 0), 110)
    expect(half[4]?.share).toBeGreaterThan(0.4)
    expect(half[4]?.share).toBeLessThan(0.6)
    expect(half[4]?.lowShare).toBeLessThan(half[4]?.share ?? 0)
    expect(half[4]?.highShare).toBeGreaterThan(half[4]?.share ?? 1)
  })
  it('say how likely each is there at all, and the largest; the largest is one of them in every draw', () => {
    const half = shares((x) => (x < 500 ? 1500 : 0), 110)
    expect(half[4]?.presentChance).toBeGreaterThan(0.98)
    const largest = half.map(({ largestChance }) => largestChance)
    expect(largest.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 9)
    expect(shares(() => 0, 112)[4]?.presentChance).toBeLessThan(0.2)
  })
  it('add up to one at every node and hand back author and date', () => {
    const all = shares((x) => (x < 300 ? 700 : 0), 110)
    const sums = all.reduce(
      (total, { chance }) => total.map((value, at) => value + (chance[at] as number)),
      new Float64Array(all[0]?.chance.length ?? 0),
    )
    for (const sum of sums) expect(sum).toBeCloseTo(1, 9)
    expect(all[0]?.range.author).not.toBe('')
    expect(all[0]?.range.basis).toMatch(/common practice, no source/)
  })
  it('refuse ranges out of order', () => {
    const field = drawCoatingField(panelQuestion({ fillerUm: () => 0, filmUm: 110, readings: 20 }), () => undefined)
    expect(() => thicknessClasses(field, { medianUm: 110, standardUncertaintyUm: 5 }, ranges.toReversed())).toThrow(
      /in order/,
    )
  })
})
