import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { previewDocument } from '../../electron/use-cases/report.ts'
import { metricUnits } from '../../shared-types/units.ts'
import { has, textOf } from '../report/composing.ts'
import { INCHES, METRIC, showIn, textsIn } from './shown-units.ts'
import { type Survey, startSurvey } from './survey-program.ts'

/** Panels of the demonstration car that between them have every kind of answer: filler, lead, film alone, an edge too near. */
const PANELS = ['front-side.L', 'lower-rail-outer.L', 'lower-rail-outer.R', 'rear-side.R', 'roof-skin'] as const
const INCH_BASED = /mil\b|\u202fin(?!\p{L})|ft²|in³/u

let survey: Survey
beforeAll(async () => {
  survey = await startSurvey({ begin: false })
  await survey.ask('records.demonstration', {})
})
afterAll(() => survey.end())

/** Every answer on coating, by what was asked. */
async function answers(): Promise<Readonly<Record<string, unknown>>> {
  const view = survey.program.record().view()
  const told: Record<string, unknown> = { car: await survey.ask('coating.car', {}) }
  for (const panelId of PANELS) {
    const map = await survey.ask('coating.map', { panelId })
    told[`map of ${panelId}`] = map
    const { from, to } = map.cut ?? { from: { u: 0, v: 0 }, to: { u: 300, v: 0 } }
    told[`cut of ${panelId}`] = await survey.ask('coating.cut', { panelId, from, to })
    told[`short cut of ${panelId}`] = await survey.ask('coating.cut', { panelId, from, to: from })
    told[`grid of ${panelId}`] = await survey.ask('coating.grid', { panelId })
    for (const { number, view: drawn, at, mode } of view.spots.filter((spot) => spot.panelId === panelId))
      for (const gauge of [null, view.gauges[0]?.number ?? null])
        told[`place of ${number}, gauge ${gauge}`] = await survey.ask('coating.place', {
          ...{ panelId, view: drawn, at, gauge, mode },
          substrate: 'zinc-coated steel',
        })
  }
  for (const { number, coating } of view.corrections)
    if (coating !== null) told[`change ${number}`] = await survey.ask('coating.change', { number })
  return told
}

/** An answer with its words taken out. */
const numbers = (answer: unknown): unknown =>
  JSON.parse(JSON.stringify(answer), (key, value) =>
    key === 'printed' || key === 'lengthUnit' || key === 'thicknessUnit' || key === 'along' || key === 'up'
      ? null
      : typeof value === 'string'
        ? ''
        : value,
  )
/** Words anybody typed into the record stay as they were typed, whatever they measure in. */
function typedQuantities(): readonly string[] {
  const { gaugeChecks, spots, corrections, gauges } = survey.program.record().view()
  return [...new Set(textsIn([gaugeChecks, spots, corrections, gauges]))].flatMap(
    (text) => text.match(/\d[\d.,]* (?:mm|µm)/g) ?? [],
  )
}

describe('a record in mil and inches', () => {
  let metric: Readonly<Record<string, unknown>>
  let inches: Readonly<Record<string, unknown>>
  beforeAll(async () => {
    metric = await answers()
    await showIn(survey, INCHES)
    inches = await answers()
  })

  it('has no metric unit in any answer on coating', () => {
    const found = Object.entries(inches).flatMap(([asked, answer]) =>
      textsIn(answer)
        .filter((text) => METRIC.test(text))
        .map((text) => `${asked}: ${text}`),
    )
    expect(found).toEqual([])
  })
  it('is told in mil, inches, square feet and cubic inches', () => {
    const all = Object.values(inches).flatMap(textsIn).join('\n')
    // About 145 µm against about 235 µm; the threshold of 300 µm.
    expect(all).toMatch(/Film of about 5\.7\u202fmil \(5\.3 to 6\.1, 95 %; 4 spots\) against about 9\.\d\u202fmil/)
    expect(all).toMatch(/Chance of more than 11\.8\u202fmil/)
    expect(all).toMatch(/the nearest reading is \d+\.\d\u202fin away/)
    expect(all).toMatch(/\d\u202fft² \(/)
    expect(all).toMatch(/from [\d.]+\u202fin³ to about [\d.]+\u202fin³/)
    expect(all).toMatch(/reading = 0\.\d\d\u202fmil \+ 1\.0\d+ · thickness/)
    expect(all).toMatch(/zinc adds some 0\.2 to 1\.0\u202fmil/)
    expect(all).toMatch(/too near an edge for a probe of 0\.31\u202fin: 0\.\d+\u202fin/)
  })
  it('is computed as a metric one is: no number follows the units', () => {
    expect(numbers(inches)).toEqual(numbers(metric))
  })
  it('has no metric unit in the coating sections of its report', { skip: !has('pdftotext') }, async () => {
    const { document } = await survey.ask('report.preview', { paper: 'A4' })
    const typed = typedQuantities()
    const pages = textOf(previewDocument(survey.program, document)).split('\f')
    const coating = pages.filter((page) => /Coating (readings|maps)/.test(page.split('\n')[0] ?? ''))
    expect(coating.length).toBeGreaterThan(5)
    const putRight = pages.filter((page) => /volume above paint/.test(page) && !coating.includes(page))
    expect(putRight).toHaveLength(1)
    const found = [...coating, ...putRight].flatMap((page) =>
      page
        .split('\n')
        .map((line) => typed.reduce((rest, quantity) => rest.replaceAll(quantity, ''), line))
        .filter((line) => METRIC.test(line)),
    )
    expect(found).toEqual([])
  })
  it('is told as before once it is metric again', async () => {
    await showIn(survey, metricUnits)
    expect(await answers()).toEqual(metric)
    const all = Object.values(metric).flatMap(textsIn)
    expect(all.filter((text) => INCH_BASED.test(text))).toEqual([])
    // Sentences of the same record written before a record could be told in other units.
    for (const sentence of [
      '0.229 m² (0.099 to 0.401; 8 readings are too few to call this 90 %: take at least 15).',
      'Another 10 readings at the best places would narrow the interval of the volume from 310 cm³ to about 170 cm³.',
      'G 1 Coating gauge, dual probe, declared error 2 µm + 3 % of the reading',
      'Left front wing against right: 145 µm against 240 µm, a ratio of 0.60 (0.54 to 0.68, 95 %): more than panels of one paint job differ by.',
      'Film of about 145 µm (135 to 156, 95 %; 4 spots) against about 235 µm on most panels: compatible with another paint job than theirs (chance over 99 % by the mixture of films). With the metal noted as replacement panel, it reads as refinished over a replacement: a panel painted once lacks the coats the others carry.',
      'Narrowed by 139 cm³ (75.4 to 240 cm³, at least 90 %).',
      'Paint alone: 146 µm, between 135 and 159 µm at nine places of ten.',
    ])
      expect(all).toContain(sentence)
  })
})
