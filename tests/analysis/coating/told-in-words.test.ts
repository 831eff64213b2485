import { describe, expect, it } from 'vitest'
import { checkedGauge, checkedReading } from '../../../electron/analysis/coating/checked-gauge.ts'
import { classWords, rangesWords } from '../../../electron/analysis/coating/class-words.ts'
import { filmPopulations } from '../../../electron/analysis/coating/film-populations.ts'
import { type ModeSpot, pairedModes } from '../../../electron/analysis/coating/paired-modes.ts'
import { panelFilmPlace, panelFilmWords } from '../../../electron/analysis/coating/panel-film-words.ts'
import { panelFilms, panelScatter } from '../../../electron/analysis/coating/panel-films.ts'
import { normalDraw, seededDraw } from '../../../electron/analysis/sampling/seeded-draws.ts'
import { askedMeasures } from '../../../shared-types/coating-measures.ts'

const metric = askedMeasures({})
const magnetic = (more: Partial<ModeSpot> = {}): ModeSpot => ({
  spot: 1,
  mode: 'magnetic',
  uMm: 0,
  vMm: 0,
  kind: 'more than',
  um: 2000,
  standardUncertaintyUm: 36,
  ...more,
})
const eddy = (more: Partial<ModeSpot> = {}): ModeSpot =>
  magnetic({ spot: 2, mode: 'eddy current', uMm: 12, kind: 'value', um: 209, standardUncertaintyUm: 5, ...more })

describe('both modes of a gauge at one place', () => {
  it('tell body solder by the conductor above the steel, how thick it is at least, and how sure that is', () => {
    const [pair] = pairedModes([magnetic(), eddy()], metric)
    expect(pair?.compatibleWith).toBe('body solder')
    // 2,000 - 209 less 1.645 times the root of 36² + 5².
    expect(pair?.words).toContain('at least 1\u202f730 µm')
    expect(pair?.conductorChance).toBeGreaterThan(0.999)
  })
  it('tell filler where nothing conducts', () => {
    const [pair] = pairedModes([magnetic(), eddy({ kind: 'no reading', um: 0 })], metric)
    expect(pair?.compatibleWith).toBe('filler')
    expect(pair?.words).toMatch(/Compatible with filler, not with body solder/)
  })
  it('tell nothing where the two agree, where there is only film, or where they stand apart', () => {
    const near = magnetic({ kind: 'value', um: 420 })
    expect(pairedModes([near, eddy({ um: 400 })], metric)[0]?.compatibleWith).toBe('nothing told')
    expect(pairedModes([magnetic({ kind: 'value', um: 230 }), eddy()], metric)[0]?.compatibleWith).toBe('nothing told')
    expect(pairedModes([magnetic(), eddy({ uMm: 41 })], metric)).toEqual([])
  })
})

describe('a gauge with its checks', () => {
  const declared = { constantUm: 2, percent: 3, meaning: 'tolerance' } as const
  const check = (time: string, shimUm: number, readUm: number[]) => ({
    at: `2026-05-14T${time}:00.000Z`,
    shimUm,
    shimUncertaintyUm: 0,
    readUm,
  })
  const five = [check('08:00', 0, [2, 2, 2]), check('08:01', 500, [515, 515, 515])]
  it('puts a reading right, keeps the declared error beside the line and says so beyond the shims', () => {
    const gauge = checkedGauge(five, declared, metric)
    const reading = checkedReading(gauge, 258.5, '2026-05-14T09:00:00.000Z', true)
    expect(reading.um).toBeCloseTo(250, 6)
    expect(reading.standardUncertaintyUm).toBeGreaterThan((2 + 0.03 * 258.5) / Math.sqrt(3) / 1.03)
    expect(reading.beyondShims).toBe(false)
    expect(checkedReading(gauge, 900, '2026-05-14T09:00:00.000Z', true).beyondShims).toBe(true)
    expect(reading.cover).toBe('no check after')
    expect(gauge.lines.join(' ')).toMatch(/reading = 2\.0 µm \+ 1\.0260/)
  })
  it('takes readings as read in another mode, at one thickness, or without a check, and says why', () => {
    const at = '2026-05-14T09:00:00.000Z'
    expect(checkedReading(checkedGauge(five, declared, metric), 258.5, at, false).um).toBe(258.5)
    const one = checkedGauge(five.slice(0, 1), declared, metric)
    expect(checkedReading(one, 258.5, at, true).um).toBe(258.5)
    expect(one.lines[0]).toMatch(/one thickness only/)
    expect(checkedGauge([], declared, metric).lines[0]).toMatch(/never checked/)
  })
  it('names failed checks with what was declared, and the largest drift', () => {
    const { lines } = checkedGauge([check('08:00', 100, [100, 101]), check('12:00', 100, [130, 131])], declared, metric)
    expect(lines.join(' ')).toMatch(/1 check failed: \+30\.5 µm on the shim of 100 µm, declared 5\.0 µm/)
    expect(lines.join(' ')).toMatch(/largest is \+30\.0 µm/)
  })
})

describe('classes in words', () => {
  const share = (
    name: 'film like the rest of the car' | 'skim of filler' | 'deep filler',
    largest: number,
    present: number,
  ) => ({
    name,
    share: largest,
    lowShare: 0,
    highShare: 1,
    largestChance: largest,
    presentChance: present,
  })
  it('name the most of it, what else is likelier than not, and what is not ruled out', () => {
    const { conclusion, lines } = classWords([
      share('film like the rest of the car', 0.9, 1),
      share('skim of filler', 0.1, 0.7),
      share('deep filler', 0, 0.2),
    ])
    expect(conclusion).toBe(
      'Compatible with film like the rest of the car on most of the surface (chance 90 %), and on some of it with skim of filler (chance 70 %). Not ruled out: deep filler (chance 20 %).',
    )
    expect(lines).toHaveLength(3)
    expect(classWords([]).conclusion).toBe('')
  })
  it('print the ranges with author and date', () => {
    const range = { basis: 'common practice, no source', author: 'A surveyor', date: '2026-05-01' }
    const words = rangesWords(
      [
        { ...range, name: 'thinner film than the rest of the car', fromAboveFilmUm: null },
        { ...range, name: 'film like the rest of the car', fromAboveFilmUm: -50 },
      ],
      240,
      metric,
    )
    expect(words).toMatch(/under 190 µm; film like the rest of the car from 190 µm/)
    expect(words).toMatch(/A surveyor, 2026-05-01/)
  })
})

describe('the film of a panel among those of the car', () => {
  const spots = ['a', 'b', 'c', 'd', 'e', 'f', 'g'].flatMap((panel, at) =>
    [230, 238, 244, 241].map((um) => ({ panel, um: (um + at) * (panel === 'g' ? 0.61 : 1) })),
  )
  const films = panelFilms([...spots, { panel: 'a', um: 1800 }, { panel: 'h', um: 240 }])
  it('leaves filler and panels of one spot out', () => {
    expect(films.map(({ panel }) => panel)).toEqual(['a', 'b', 'c', 'd', 'e', 'f', 'g'])
    expect(Math.exp(films[0]?.meanLog ?? 0)).toBeCloseTo(238, 0)
  })
  it('reads as refinished over a replacement where the metal is noted as one, with the chance', () => {
    const place = panelFilmPlace(filmPopulations(films), 6)
    expect(place.otherChance).toBeGreaterThan(0.8)
    const film = films[6]
    if (film === undefined) throw new Error('no film')
    expect(panelFilmWords(film, place, 'replacement panel', metric)).toMatch(/refinished over a replacement/)
    expect(panelFilmWords(film, place, 'not determined', metric)).toMatch(
      /stripped or replaced and painted once; joints/,
    )
  })
  it('is seldom called another job on cars of one job, and mostly on cars with a panel a third thinner', () => {
    const normal = normalDraw(seededDraw('cars of one job'))
    const car = (lastShare: number) =>
      panelFilms(
        Array.from({ length: 12 }, (_, panel) => {
          const own = 200 * Math.exp(0.08 * normal()) * (panel === 11 ? lastShare : 1)
          return Array.from({ length: 5 }, () => ({ panel: `p${panel}`, um: own * Math.exp(0.07 * normal()) }))
        }).flat(),
      )
    const called = (lastShare: number, from: number) =>
      Array.from({ length: 40 }, () => {
        const own = car(lastShare)
        const mixtures = filmPopulations(own, panelScatter(own))
        return own.filter((_, at) => at >= from && panelFilmPlace(mixtures, at).otherChance >= 0.5).length
      }).reduce((sum, count) => sum + count, 0)
    const [falsely, rightly] = [called(1, 0) / (40 * 12), called(0.63, 11) / 40]
    expect(falsely).toBeLessThan(0.03)
    expect(rightly).toBeGreaterThan(0.7)
  })
  it('is compatible with the others where it is like them', () => {
    const place = panelFilmPlace(filmPopulations(films), 0)
    const film = films[0]
    if (film === undefined) throw new Error('no film')
    expect(panelFilmWords(film, place, 'not determined', metric)).toMatch(
      /compatible with the paint job of most panels/,
    )
  })
})
