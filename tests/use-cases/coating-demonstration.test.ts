import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { CoatingMap } from '../../shared-types/coating-map.ts'
import { type Survey, startSurvey } from './survey-program.ts'

let survey: Survey
beforeAll(async () => {
  survey = await startSurvey({ begin: false })
  await survey.ask('records.demonstration', {})
})
afterAll(() => survey.end())

const mapOf = (panelId: string): Promise<CoatingMap> => survey.ask('coating.map', { panelId })
const all = (map: CoatingMap): string => JSON.stringify({ ...map, layers: [] })

describe('the coating of the demonstration car', () => {
  it('tells the lead-loaded sill from the filled one in words, with figures and the reason', async () => {
    const left = await mapOf('lower-rail-outer.L')
    const right = await mapOf('lower-rail-outer.R')
    expect(left.modes.join(' ')).toMatch(/Compatible with body solder/)
    expect(left.modes.join(' ')).toMatch(/Filler does not conduct/)
    expect(left.modes.join(' ')).toMatch(/at least 1\u202f\d{3} µm thick/)
    expect(right.modes.join(' ')).toMatch(/Compatible with filler, not with body solder/)
    expect(right.modes.join(' ')).toMatch(/Lead would have given/)
  })
  it('reads the left wing as refinished over a replacement, with the chance', async () => {
    const map = await mapOf('front-side.L')
    expect(map.film?.words).toMatch(/another paint job than theirs \(chance (over )?\d+ %/)
    expect(map.film?.words).toMatch(/refinished over a replacement/)
  })
  it('never calls anything original', async () => {
    for (const panelId of ['front-side.L', 'front-side.R', 'lower-rail-outer.L', 'roof-skin']) {
      const words = all(await mapOf(panelId))
      expect(words).not.toMatch(/\bis original|are original/)
      expect(words).toMatch(/cannot tell factory paint/)
    }
  })
  it('shows every panel read on one scale, the left wing as another paint job, and the wings apart', async () => {
    const car = await survey.ask('coating.car', {})
    expect(car.rows.length).toBeGreaterThan(12)
    for (const { at } of car.rows) {
      expect(at.least).toBeGreaterThanOrEqual(0)
      expect(at.least).toBeLessThanOrEqual(at.middle)
      expect(at.middle).toBeLessThanOrEqual(at.most)
      expect(at.most).toBeLessThanOrEqual(1)
    }
    const row = (panelId: string) => car.rows.find((own) => own.panelId === panelId)
    expect(row('front-side.L')?.otherChance).toBeGreaterThan(0.9)
    expect(row('front-side.R')?.otherChance).toBeLessThan(0.1)
    expect(row('lower-rail-outer.R')?.mostOrMore).toBe(true)
    expect(row('lower-rail-outer.L')?.mostOrMore).toBe(false)
    expect(car.sides.join(' ')).toMatch(/Left front wing against right: 14\d µm against 24\d µm, a ratio of 0\.6/)
    expect(car.seams.join(' ')).toMatch(/Left front wing against Left door/)
    expect(car.films.join(' ')).toMatch(/compatible with 2 paint jobs/)
  })
})
