import { afterEach, beforeEach, expect, it } from 'vitest'
import type { ReadingValue } from '../../shared-types/reading.ts'
import { type Survey, startSurvey } from './survey-program.ts'

let survey: Survey
beforeEach(async () => {
  survey = await startSurvey()
})
afterEach(() => survey.end())

const read = (u: number, v: number, value: ReadingValue) =>
  survey.ask('spot.add', {
    draft: {
      panelId: 'front-door.L',
      view: 'left',
      at: { u, v },
      where: '',
      values: [value],
      enteredIn: 'µm',
      gauge: null,
      mode: 'magnetic',
      substrate: 'steel',
      readAt: '2026-05-14T10:00:00.000Z',
      exhibits: [],
      note: '',
    },
  })

it('cuts a door through its thickest place, and along any line that is asked for', async () => {
  for (let at = 0; at < 20; at += 1) {
    const [u, v] = [1720 + 170 * (at % 5), -800 + 130 * Math.floor(at / 5)]
    const thick = u > 2000 && v > -560
    await read(
      u,
      v,
      thick && at % 5 === 3 ? { kind: 'more than', um: 2000 } : { kind: 'value', um: thick ? 1100 : 120 },
    )
  }
  const map = await survey.ask('coating.map', { panelId: 'front-door.L' })
  expect(map.cut?.rule).toMatch(/thickest/)
  const line = map.cut ?? { from: { u: 0, v: 0 }, to: { u: 0, v: 0 } }
  expect(line.from.v).toBe(line.to.v)
  expect(line.from.v).toBeGreaterThan(-600)
  const cut = await survey.ask('coating.cut', { panelId: 'front-door.L', from: line.from, to: line.to })
  expect(cut.problem).toBeNull()
  expect(cut.figure?.lengthUnit).toBe('mm')
  const highest = cut.figure?.stretches.flatMap(({ middle }) => middle.map(({ y }) => y)) ?? []
  expect(Math.max(...highest)).toBeGreaterThan(cut.figure?.threshold ?? 1)
  expect(cut.words.join(' ')).toMatch(/Paint alone: 1[12]\d µm.*eading/)
  const row = await survey.ask('coating.cut', {
    panelId: 'front-door.L',
    from: { u: 1700, v: -540 },
    to: { u: 2420, v: -540 },
  })
  expect(row.figure?.readings.map(({ orMore }) => orMore)).toEqual([false, false, false, true, false])
  expect(row.words.join(' ')).toMatch(/Readings within 50 mm of the line: R/)
  const away = await survey.ask('coating.cut', { panelId: 'front-door.L', from: { u: 0, v: 0 }, to: { u: 50, v: 0 } })
  expect(away.words[0]).toMatch(/Nothing along this line was assessed/)
  const short = await survey.ask('coating.cut', { panelId: 'front-door.L', from: line.from, to: line.from })
  expect(short.problem).toMatch(/move one of them further away/)
})

it('cuts nothing where no reading was taken, and says what to do', async () => {
  const map = await survey.ask('coating.map', { panelId: 'front-door.L' })
  expect(map.cut).toBeNull()
  const cut = await survey.ask('coating.cut', {
    panelId: 'front-door.L',
    from: { u: 1700, v: -600 },
    to: { u: 2300, v: -600 },
  })
  expect(cut.figure).toBeNull()
  expect(cut.problem).toMatch(/no reading yet/)
})
