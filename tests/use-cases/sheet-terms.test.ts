import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { ClaimDraft } from '../../shared-types/claim.ts'
import { type Survey, startSurvey } from './survey-program.ts'

const claim: ClaimDraft = {
  words: '',
  who: '',
  kind: 'seller',
  on: null,
  where: '',
  repeats: null,
  question: '',
  ifTrue: '',
  ifNot: '',
  takenAsGiven: '',
  verdict: 'not settled',
  strength: 'not stated',
  reasons: '',
  setAside: '',
  wouldSettle: '',
  asserts: [],
  reliability: null,
  findings: [],
  exhibits: [],
}

let survey: Survey
beforeEach(async () => {
  survey = await startSurvey()
})
afterEach(() => survey.end())

describe('the terms of the sheets of a record', () => {
  it('are none before a sheet is taken in, and then every variable, its groups, and parts of other cars', async () => {
    expect(await survey.ask('sheets.terms', {})).toEqual([])
    await survey.ask('sheet.take', { sheetId: 'sedge' })
    const [sheet] = await survey.ask('sheets.terms', {})
    expect(sheet?.sheetId).toBe('sedge')
    const variable = (id: string) => sheet?.variables.find((each) => each.variable === id)
    expect(variable('series')?.values.map(({ name }) => name)).toEqual(['Sedge', 'Sedge Marl', 'Sedge Lantern'])
    expect(variable('built')?.groups.find(({ name }) => name === '1960')?.values).toHaveLength(12)
    expect(variable('engine-donor')).toMatchObject({ about: 'other parts' })
    expect(variable('engine-donor')?.values.map(({ id }) => id)).toContain('none')
  })

  it('a claim in any of these terms is put to the test', async () => {
    await survey.ask('sheet.take', { sheetId: 'sedge' })
    const [sheet] = await survey.ask('sheets.terms', {})
    const asserts = (sheet?.variables ?? []).slice(0, 20).map(({ variable, values }) => ({
      sheetId: 'sedge',
      variable,
      values: values.slice(0, 1).map(({ id }) => id),
    }))
    for (const one of asserts)
      await survey.ask('claim.add', { draft: { ...claim, words: one.variable, asserts: [one] } })
    const view = await survey.ask('identity.view', { whatIf: [], chainsOf: [] })
    expect(view.claims).toHaveLength(asserts.length)
  })
})

describe('tells of one panel', () => {
  it('are those the sheet looks for there, each with what was noted of it', async () => {
    expect(await survey.ask('tells.ofPanel', { panelId: 'front-bulkhead' })).toEqual([])
    await survey.ask('sheet.take', { sheetId: 'sedge' })
    const observation = { tell: 'sedge/loom-bracket', state: 'disturbed', value: null, surePercent: null } as const
    await survey.ask('observation.set', { observation: { ...observation, measured: null, exhibits: [], note: '' } })
    const tells = await survey.ask('tells.ofPanel', { panelId: 'front-bulkhead' })
    expect(tells.map(({ key, observation: row }) => [key, row?.state ?? null])).toEqual([
      ['sedge/loom-bracket', 'disturbed'],
      ['sedge/wiper-spacing', null],
      ['sedge/bulkhead-dish', null],
      ['sedge/heater-holes', null],
    ])
    expect(tells[1]?.values[0]?.measure).toEqual({ mean: 312, standardDeviation: 1.5 })
    expect(tells.every(({ bits, source }) => bits === null && source !== '')).toBe(true)
  })
})
