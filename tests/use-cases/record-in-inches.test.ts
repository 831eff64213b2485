import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { previewDocument } from '../../electron/use-cases/report.ts'
import { metricUnits } from '../../shared-types/units.ts'
import { has, textOf } from '../report/composing.ts'
import { INCHES, METRIC, showIn, textsIn, withoutTyped } from './shown-units.ts'
import { type Survey, startSurvey } from './survey-program.ts'

let survey: Survey
let ownWords: (text: string) => string
beforeAll(async () => {
  survey = await startSurvey({ begin: false })
  await survey.ask('records.demonstration', {})
  ownWords = withoutTyped(survey.program.record().view())
})
afterAll(() => survey.end())

/** What the places beside Coating are told, by what was asked. */
async function answers(): Promise<Readonly<Record<string, unknown>>> {
  const { particulars, commission, exhibits } = survey.program.record().view()
  const { body, dimensions, conditions } = particulars
  const picked = exhibits.flatMap((exhibit) => exhibit.picked ?? [])
  return {
    judgement: await survey.ask('judgement.view', {}),
    looks: await survey.ask('looks.next', {}),
    dates: await survey.ask('dates.timeLine', {}),
    parts: await survey.ask('parts.expectation', {}),
    identity: await survey.ask('identity.view', { whatIf: [], chainsOf: [] }),
    more: await survey.ask('identity.more', { whatIf: [] }),
    tapes: await survey.ask('measuring.kept', {}),
    pictures: await Promise.all(picked.map((each) => survey.ask('measuring.picture', { picked: each }))),
    readiness: await survey.ask('report.readiness', {}),
    plan: await survey.ask('figures.plan', {
      ...{ body, dimensions, conditions },
      names: commission.names,
      lengthUnit: commission.lengthUnit,
    }),
  }
}

/** Fields of answers that name the unit something is kept in; what is shown of them stands on the page. */
const KEPT_IN = new Set(['unit'])
const withoutKeptUnits = (answer: unknown): unknown =>
  JSON.parse(JSON.stringify(answer), (key, value) => (KEPT_IN.has(key) ? null : value))
const numbers = (answer: unknown): unknown =>
  JSON.parse(JSON.stringify(answer), (_, value) => (typeof value === 'string' ? '' : value))

describe('a record in mil and inches', () => {
  let metric: Readonly<Record<string, unknown>>
  let inches: Readonly<Record<string, unknown>>
  beforeAll(async () => {
    metric = await answers()
    await showIn(survey, INCHES)
    inches = await answers()
  })

  it('has no metric unit in any answer but in what a person or a source wrote', () => {
    const found = Object.entries(inches).flatMap(([asked, answer]) =>
      textsIn(withoutKeptUnits(answer))
        .filter((text) => METRIC.test(ownWords(text)))
        .map((text) => `${asked}: ${text}`),
    )
    expect(found).toEqual([])
  })
  it('is judged in square feet, drawn in inches, and measured in them', () => {
    const all = Object.values(inches).flatMap(textsIn)
    const missing = [
      // 31.41 m² / 0.09290304 m² in a square foot; 4 250 / 25.4; 348.0 and 101.6 mm / 25.4.
      /by area, 338\.\d\d\u202fft²/,
      /^Bonnet, 13\.9\d\u202fft²: original metal/,
      /^Of 338\.\d\d\u202fft², \d+\.\d\d\u202fft² count as original/,
      /167\.3\u202fin long/,
      /standard uncertainty of picking 0\.0\d+ in, reference/,
      /^Stud circle of the hubs: 4\.00\d+ ± 0\.00\d+\u202fin \(k = 2\)/,
    ].filter((said) => !all.some((text) => said.test(text)))
    expect(missing).toEqual([])
  })
  it('is computed as a metric one is: no number follows the units', () => {
    expect(numbers(inches)).toEqual(numbers(metric))
  })
  it('has no metric unit in its report but in what a person or a source wrote', {
    skip: !has('pdftotext'),
  }, async () => {
    const { document } = await survey.ask('report.preview', { paper: 'A4' })
    const text = textOf(previewDocument(survey.program, document))
    const lines = text.split('\n')
    expect(lines.filter((line) => METRIC.test(ownWords(line))).map(ownWords)).toEqual([])
    expect(lines.filter((line) => /292\.\d+ of 338\.\d+\sft² seen/.test(line))).toHaveLength(2)
  })
  it('is told as before once it is metric again', async () => {
    await showIn(survey, metricUnits)
    expect(await answers()).toEqual(metric)
  })
})
