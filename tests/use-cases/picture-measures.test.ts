import { resolve } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { ExhibitWords, PickedGeometry } from '../../shared-types/exhibit.ts'
import { type Survey, startSurvey } from './survey-program.ts'

const words: ExhibitWords = {
  caption: 'Spindles of the wipers',
  madeBy: 'Ada Quill',
  place: '',
  panelId: null,
  view: null,
  at: null,
  inReport: true,
}
const bar = (to: number): PickedGeometry['plane'] => ({
  kind: 'scale bar',
  bar: { from: { x: 10, y: 10 }, to: { x: to, y: 10 }, lengthMm: 500, uMm: 0.5 },
})
const picked = (to: number, more: Partial<PickedGeometry> = {}): PickedGeometry => ({
  photograph: 1,
  plane: bar(510),
  wanted: {
    kind: 'distance',
    points: [
      { x: 20, y: 200 },
      { x: to, y: 200 },
    ],
  },
  pickPx: 1,
  distortionPx: null,
  offPlane: null,
  ...more,
})

let survey: Survey
beforeEach(async () => {
  survey = await startSurvey()
  const path = resolve(import.meta.dirname, '../../resources/demonstration/photographs/whole-car.jpg')
  const { taken } = await survey.ask('exhibits.import', {
    taskId: crypto.randomUUID(),
    sources: [{ from: 'file', path }],
    panelId: null,
    view: null,
    madeBy: '',
  })
  expect(taken).toHaveLength(1)
})
afterEach(() => survey.end())

const exhibit = (number: number) =>
  survey.program
    .record()
    .view()
    .exhibits.find((row) => row.number === number)

describe('a measurement on a photograph', () => {
  it('gives value and expanded uncertainty with k = 2, rounded to two digits as it will be kept', async () => {
    const { measured, kept } = await survey.ask('measuring.picture', { picked: picked(332) })
    // 500 mm over 500 pixels: one millimetre a pixel, so 312 mm; two ends, one pixel each, and the bar's share.
    expect(measured.value).toBeCloseTo(312, 9)
    const standard = Math.hypot(Math.SQRT2 * Math.hypot(1, 312 / 500), (312 / 500) * 0.5)
    expect(measured.expanded).toBeCloseTo(2 * standard, 4)
    expect(kept).toMatchObject({ value: 312, unit: 'mm', uncertainty: 3.4 })
    expect(kept.method).toMatch(/picking 1\.7 mm, reference 0\.31 mm, distortion not known/)
    expect(kept.instrument).toMatch(/^photograph E 1/)
  })

  it('is kept with its picks, picked again, and undone to what it was', async () => {
    const added = await survey.ask('exhibit.addPicked', { words, what: 'Wiper spindles', picked: picked(332) })
    expect(exhibit(2)).toMatchObject({ kind: 'measurement', picked: picked(332), measurement: { value: 312 } })
    expect(added.number).toBe(2)
    await survey.ask('exhibit.repick', { number: 2, words, what: 'Wiper spindles', picked: picked(368) })
    expect(exhibit(2)).toMatchObject({ picked: picked(368), measurement: { value: 348, what: 'Wiper spindles' } })
    await survey.ask('journal.undo', {})
    expect(exhibit(2)).toMatchObject({ picked: picked(332), measurement: { value: 312 } })
    expect((await survey.ask('record.verify', {})).sound).toBe(true)
  })

  it('picked again gives its new value to the tell that takes it from there; one undo gives both back', async () => {
    await survey.ask('sheet.take', { sheetId: 'sedge' })
    await survey.ask('exhibit.addPicked', { words, what: 'Wiper spindles', picked: picked(332) })
    const measured = { value: 312, standardUncertainty: 1.7, from: 2 }
    await survey.ask('observation.set', {
      observation: {
        tell: 'sedge/wiper-spacing',
        state: 'measured',
        value: null,
        surePercent: null,
        measured,
        exhibits: [2],
        note: '',
      },
    })
    const noted = () => survey.program.record().view().observations[0]?.measured
    await survey.ask('exhibit.repick', { number: 2, words, what: 'Wiper spindles', picked: picked(368) })
    expect(noted()).toEqual({
      value: 348,
      standardUncertainty: (exhibit(2)?.measurement?.uncertainty ?? 0) / 2,
      from: 2,
    })
    await survey.ask('journal.undo', {})
    expect(noted()).toEqual(measured)
    expect(exhibit(2)?.measurement?.value).toBe(312)
  })

  it('keeps its photograph from being withdrawn', async () => {
    await survey.ask('exhibit.addPicked', { words, what: 'Wiper spindles', picked: picked(332) })
    expect((await survey.refusal('exhibit.withdraw', { number: 1 })).message).toMatch(/cited by E 2/)
  })

  it.each([
    ['a point outside the picture', picked(1e5), /outside the picture/],
    ['no length at all', picked(20), /are the same/],
    ['an exhibit that is not there', picked(332, { photograph: 9 }), /no E 9/],
  ])('refuses %s and changes nothing', async (_, given, message) => {
    const before = survey.program.record().view().journalNumber
    const refused = await survey.refusal('exhibit.addPicked', { words, what: 'Wiper spindles', picked: given })
    expect(refused.message).toMatch(message)
    expect(survey.program.record().view().journalNumber).toBe(before)
  })

  it('does not pick again what was measured by hand', async () => {
    const measurement = { what: 'Length', value: 1, unit: 'mm', uncertainty: null, method: '', instrument: '' } as const
    await survey.ask('exhibit.add', { draft: { ...words, kind: 'measurement', measurement } })
    const refused = await survey.refusal('exhibit.repick', { number: 2, words, what: 'Length', picked: picked(332) })
    expect(refused.message).toMatch(/not measured on a photograph/)
  })

  it('says of each tell in its unit whether it decides, and how exact it would have to be', async () => {
    await survey.ask('sheet.take', { sheetId: 'sedge' })
    const asked = { value: 316, unit: 'mm', standardUncertainty: 20 } as const
    const tells = await survey.ask('measuring.tells', asked)
    const spindles = tells.find(({ key }) => key === 'sedge/wiper-spacing')
    expect(spindles?.exactness).toMatchObject({ decision: 'does not decide', likeliest: 'near' })
    // (32² - 4²) / (2 ln 100) less the spread of the thing, 1.5 mm.
    expect(spindles?.exactness.wouldDecide).toBeCloseTo(Math.sqrt((32 ** 2 - 4 ** 2) / (2 * Math.log(100)) - 2.25), 6)
    expect(tells[0]?.key).toBe('sedge/wiper-spacing')
    expect(tells.every(({ unit }) => unit === 'mm')).toBe(true)
    expect(await survey.ask('measuring.tells', { ...asked, unit: 'mm²' })).toEqual([])
  })
})

describe('the demonstration car', () => {
  it('has its wiper spindles measured on a photograph, which decides one tell', async () => {
    await survey.end()
    survey = await startSurvey({ begin: false })
    await survey.ask('records.demonstration', {})
    const view = survey.program.record().view()
    const kept = view.exhibits.find((row) => row.picked !== null)
    const { value = 0, uncertainty } = kept?.measurement ?? {}
    // The picture is drawn with its spindles 347.4 mm apart: build/demonstration-photographs.measured.mjs.
    expect(Math.abs(value - 347.4)).toBeLessThan(uncertainty ?? 0)
    const again = kept?.picked == null ? null : await survey.ask('measuring.picture', { picked: kept.picked })
    expect(kept?.measurement).toMatchObject(again?.kept ?? { value: null })
    const tells = await survey.ask('measuring.tells', {
      value,
      unit: 'mm',
      standardUncertainty: (uncertainty ?? 0) / 2,
    })
    expect(tells.filter(({ exactness }) => exactness.decision === 'decides').map(({ key }) => key)).toEqual([
      'sedge/wiper-spacing',
    ])
    const noted = view.observations.find(({ tell }) => tell === 'sedge/wiper-spacing')
    expect(noted).toMatchObject({
      state: 'measured',
      measured: { value, standardUncertainty: (uncertainty ?? 0) / 2 },
      exhibits: [kept?.number],
    })
  })
})
