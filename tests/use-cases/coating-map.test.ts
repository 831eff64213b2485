import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { carFilm } from '../../electron/analysis/coating/car-film.ts'
import type { ReadingValue, SpotDraft } from '../../shared-types/reading.ts'
import { type Survey, startSurvey } from './survey-program.ts'

const um = (value: number): ReadingValue => ({ kind: 'value', um: value })
const spotAt = (u: number, v: number, values: ReadingValue[], more: Partial<SpotDraft> = {}): SpotDraft => ({
  panelId: 'front-door.L',
  view: 'left',
  at: { u, v },
  where: '',
  values,
  enteredIn: 'µm',
  gauge: null,
  mode: 'magnetic',
  substrate: 'steel',
  readAt: '2026-05-14T10:00:00.000Z',
  exhibits: [],
  note: '',
  ...more,
})
/** Twenty places of the door below its window, the lower rear quarter thick. */
const doorPlaces = Array.from({ length: 20 }, (_, at) => ({
  u: 1720 + 170 * (at % 5),
  v: -800 + 130 * Math.floor(at / 5),
}))
const isThick = ({ u, v }: { u: number; v: number }) => u > 2000 && v > -560

let survey: Survey
beforeEach(async () => {
  survey = await startSurvey()
})
afterEach(() => survey.end())

async function readDoor(thickUm: number): Promise<void> {
  for (const place of doorPlaces)
    await survey.ask('spot.add', {
      draft: spotAt(place.u, place.v, [um(isThick(place) ? thickUm : 118), um(isThick(place) ? thickUm : 122)]),
    })
}

describe('the map of a panel', () => {
  it('shows filler where it was read, its area within the interval, and says where to read next', async () => {
    await readDoor(1100)
    const map = await survey.ask('coating.map', { panelId: 'front-door.L' })
    expect(map.problem).toBeNull()
    expect(map.view).toBe('left')
    expect(map.spots).toHaveLength(20)
    expect(map.film?.um).toBeGreaterThan(110)
    expect(map.film?.um).toBeLessThan(130)
    const { fillerArea, assessedM2 } = map
    // The thick quarter is 3 of 5 columns wide and 2 of 4 rows high: some 0.1 to 0.3 m² of a door of 0.6 m².
    expect(fillerArea?.low).toBeLessThan(0.25)
    expect(fillerArea?.high).toBeGreaterThan(0.12)
    expect(fillerArea?.high).toBeLessThan(assessedM2)
    expect(fillerArea?.coverage).toBe(0.9)
    expect(map.next.length).toBeGreaterThan(0)
    expect(map.layers.map(({ id }) => id)).toEqual(['thickness', 'uncertainty', 'filler chance'])
    const [thickness] = map.layers
    expect(thickness?.bands.some(({ from }) => from >= 500)).toBe(true)
    expect(map.notAssessedM2).toBeGreaterThanOrEqual(0)
  })

  it('finds no thick band where all is paint, and does not call that certain', async () => {
    await readDoor(120)
    const map = await survey.ask('coating.map', { panelId: 'front-door.L' })
    expect(map.layers[0]?.bands.every(({ from }) => from < 300)).toBe(true)
    expect(map.fillerArea?.middle).toBeLessThan(0.02)
    expect(map.fillerArea?.high).toBeGreaterThan(0)
  })

  it('is the same each time it is asked for', async () => {
    await readDoor(1100)
    const [one, other] = [
      await survey.ask('coating.map', { panelId: 'front-door.L' }),
      await survey.ask('coating.map', { panelId: 'front-door.L' }),
    ]
    expect(other).toEqual(one)
  })

  it('is refused in words without a reading, with failed ones only, and for a panel that is not drawn', async () => {
    const ask = () => survey.ask('coating.map', { panelId: 'front-door.L' })
    expect((await ask()).problem).toMatch(/no reading yet: read the panel/)
    await survey.ask('spot.add', { draft: spotAt(2000, -600, [{ kind: 'no reading' }]) })
    expect((await ask()).problem).toMatch(/1 gave no value/)
    expect((await survey.ask('coating.map', { panelId: 'nowhere' })).problem).toMatch(/no sheet of the plan/)
  })

  it('names spots without a place, and a gauge that declares nothing', async () => {
    await readDoor(1100)
    await survey.ask('spot.add', { draft: spotAt(0, 0, [um(120)], { at: null }) })
    const map = await survey.ask('coating.map', { panelId: 'front-door.L' })
    expect(map.leftOut).toContain('1: no place in this view')
    expect(map.gauge).toMatch(/supposed \(common practice, no source\)/)
  })
})

describe('the film of a car', () => {
  const panels = ['a', 'b', 'c']
  it('is the median of the panels, filler left out, and unknown where too little was read', () => {
    const spots = panels.flatMap((panel, at) => [110, 120, 130].map((value) => ({ panel, um: value + at })))
    expect(carFilm(spots)?.medianUm).toBe(121)
    expect(carFilm([...spots, ...panels.map((panel) => ({ panel, um: 1800 }))])?.medianUm).toBe(121)
    expect(carFilm(spots.slice(0, 7))).toBeNull()
    expect(carFilm(spots.map(({ um: value }) => ({ panel: 'a', um: value })))).toBeNull()
  })
})
