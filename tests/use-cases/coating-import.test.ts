import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { edgeDistanceMm } from '../../electron/figures/edge-distance.ts'
import { placedPanel } from '../../electron/use-cases/coating-question.ts'
import type { ColumnMapping } from '../../shared-types/coating-import.ts'
import { type Survey, startSurvey } from './survey-program.ts'

let survey: Survey
beforeEach(async () => {
  survey = await startSurvey()
})
afterEach(() => survey.end())

const panelId = 'front-door.L'
const look = (text: string, mapping: ColumnMapping | null = null) =>
  survey.ask('coating.columns', { panelId, text, mapping })
const take = async (text: string) => {
  const { mapping } = await look(text)
  return survey.ask('spots.import', {
    panelId,
    text,
    mapping,
    gauge: null,
    mode: 'magnetic',
    substrate: 'steel',
    readAt: '2026-05-14T10:00:00.000Z',
  })
}
const spots = async () => (await survey.ask('record.view', {})).spots
const door = Array.from(
  { length: 24 },
  (_, at) => `${160 + 130 * (at % 6)};${530 + 110 * Math.floor(at / 6)};${at < 20 ? 118 + (at % 5) : 900}`,
)

describe('readings from columns', () => {
  it('go in by one command in the order they stand in, and one undo takes all of them back', async () => {
    const preview = await look(`x;y;µm\n${door.join('\n')}`)
    expect(preview).toMatchObject({ lines: 24, problem: null, notes: [] })
    expect(preview.refused).toEqual([])
    const before = (await survey.ask('record.view', {})).journalNumber
    await take(`x;y;µm\n${door.join('\n')}`)
    const all = await spots()
    expect(all).toHaveLength(24)
    expect(all.map(({ values }) => values[0])).toEqual(
      door.map((line) => ({ kind: 'value', um: Number(line.split(';')[2]) })),
    )
    expect((await survey.ask('record.view', {})).journalNumber).toBe(before + 1)
    expect((await survey.ask('coating.map', { panelId })).problem).toBeNull()
    await survey.ask('journal.undo', {})
    expect(await spots()).toEqual([])
  })

  it('name every refused line, keep the others, and say what is odd', async () => {
    const {
      refused,
      spots: count,
      notes,
    } = await look(`x;y;µm\n300;600;120\n300;600;121\n9000;600;120\n300;700;NaN\n300;700;-3`)
    expect(count).toBe(2)
    expect(refused.map(({ line }) => line)).toEqual([4, 5, 6])
    expect(refused[0]?.why).toMatch(/outside the outline/)
    expect(notes.join(' ')).toMatch(/1 line stands at the place of another/)
  })

  it('say that all are equal, that nothing has a place, and that nothing can be read', async () => {
    expect((await look('120\n120\n120')).notes.join(' ')).toMatch(/All readings are equal.*No line has a place/)
    expect((await look('abc\ndef')).problem).toMatch(/Say which column holds the readings/)
    expect((await look(' \n ')).problem).toMatch(/no line of readings/)
  })

  it('refuse a hundred thousand lines at once and put nothing in', async () => {
    const text = Array.from({ length: 100_000 }, (_, at) => `${at % 500};100;120`).join('\n')
    const begun = performance.now()
    const preview = await look(text)
    expect(performance.now() - begun).toBeLessThan(5000)
    expect(preview.problem).toMatch(/100\u202f000 lines, and 5\u202f000 go in at a time/)
    const { message } = await survey.refusal('spots.import', {
      panelId,
      text,
      mapping: preview.mapping,
      gauge: null,
      mode: 'magnetic',
      substrate: 'steel',
      readAt: '2026-05-14T10:00:00.000Z',
    })
    expect(message).toMatch(/go in at a time/)
    expect(await spots()).toEqual([])
  })

  it('answer with a map or a reason when all are saturated, when there is one, and when two stand at one point', async () => {
    await take('x;y;r\n300;600;120')
    expect((await survey.ask('coating.map', { panelId })).problem).toBeNull()
    await take('x;y;r\n300;600;250')
    expect((await survey.ask('coating.map', { panelId })).problem).toBeNull()
    await survey.ask('journal.undo', {})
    await survey.ask('journal.undo', {})
    await take(`x;y;r\n${door.map((line) => line.replace(/[^;]*$/, '>2000')).join('\n')}`)
    const map = await survey.ask('coating.map', { panelId })
    expect(map.problem ?? map.fillerVolume?.words).toMatch(/24 readings went beyond the gauge/)
  })
})

describe('the grid of a panel', () => {
  it('has some 25 places row by row on the panel, and counts those that were read', async () => {
    const grid = await survey.ask('coating.grid', { panelId })
    expect(grid.places.length).toBeGreaterThanOrEqual(15)
    expect(grid.places.length).toBeLessThanOrEqual(36)
    expect(grid.places[0]?.words).toMatch(/^row 1 of \d+, place 1 of \d+: \d+ mm from the left/)
    const first = grid.places[0]
    if (first === undefined) throw new Error('no place')
    await survey.ask('spot.add', {
      draft: {
        panelId,
        view: grid.view,
        at: first.at,
        where: '',
        values: [{ kind: 'value', um: 120 }],
        enteredIn: 'µm',
        gauge: null,
        mode: 'magnetic',
        substrate: 'steel',
        readAt: '2026-05-14T10:00:00.000Z',
        exhibits: [],
        note: '',
      },
    })
    const after = await survey.ask('coating.grid', { panelId })
    expect(after.places.map(({ spot }) => spot !== null)).toEqual([true, ...Array(grid.places.length - 1).fill(false)])
  })
  it('calls out no place that would be struck through once read, and as many as without a probe', async () => {
    const before = await survey.ask('coating.grid', { panelId })
    const probeMm = 24
    await survey.ask('gauge.add', {
      draft: {
        name: 'a gauge',
        serial: '',
        principle: 'magnetic induction',
        rangeUm: null,
        errorUm: null,
        errorPercent: null,
        probeDiameterMm: probeMm,
        certifiedOn: null,
        certificate: '',
      },
    })
    const after = await survey.ask('coating.grid', { panelId })
    const { outline } =
      placedPanel(await survey.ask('record.view', {}), panelId, [])?.panel ?? expect.fail('the door is drawn')
    const edgeOf = (grid: typeof before) => Math.min(...grid.places.map(({ at }) => edgeDistanceMm(outline, at)))
    expect(edgeOf(before)).toBeLessThan(probeMm)
    expect(edgeOf(after)).toBeGreaterThanOrEqual(probeMm)
    expect(after.places).toHaveLength(before.places.length)
  })
  it('is refused in words for a panel that is not drawn', async () => {
    expect((await survey.refusal('coating.grid', { panelId: 'nowhere' })).message).toMatch(/single spots with R/)
  })
})
