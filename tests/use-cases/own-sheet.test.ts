import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { type Survey, startSurvey } from './survey-program.ts'

const fenland = `
form: 1
sheetId: fenland
title: Brackwater Fenland carrier
edition: '1'
sources:
  - { id: notes, who: The writer, where: Notes of three cars, learned: invented }
variables:
  - { id: body, name: Body, values: [{ id: open, name: open }, { id: closed, name: closed }] }
  - { id: engine, name: Engine, values: [{ id: small, name: small }, { id: large, name: large }] }
rules:
  - { id: closed-large, kind: requires, when: { body: [closed] }, needs: { engine: [large] }, source: notes }
tells:
  - id: roof
    name: Roof
    lookAt: From outside.
    where: { panels: [roof-skin] }
    effort: 1
    access: from outside
    source: notes
    follows: { kind: as built, variable: body }
    misread: 0.01
`

let survey: Survey
beforeEach(async () => {
  survey = await startSurvey()
})
afterEach(() => survey.end())

const file = (name: string, text: string) => {
  const path = join(survey.folder, name)
  writeFileSync(path, text)
  return { from: 'file', path } as const
}

describe('a sheet of one’s own', () => {
  it('is taken into the record and reasoned over', async () => {
    await survey.ask('sheet.takeOwn', { source: file('fenland.yaml', fenland) })
    expect(survey.program.record().view().sheets).toMatchObject([{ sheetId: 'fenland', edition: '1' }])
    const view = await survey.ask('identity.view', { whatIf: [], chainsOf: [] })
    expect(view.legalBuilds).toBe('3')
    const roof = { state: 'seen', value: 'closed', surePercent: null, measured: null, exhibits: [], note: '' } as const
    await survey.ask('observation.set', { observation: { tell: 'fenland/roof', ...roof, exhibits: [] } })
    const after = await survey.ask('identity.view', { whatIf: [], chainsOf: [] })
    const large = after.variables[1]?.values.find(({ id }) => id === 'large')
    expect(large?.before).toBeCloseTo(2 / 3, 12)
    // Read closed: 0.99 where closed was built, 0.01 where open was, of which half has the large engine.
    expect(large?.now).toBeCloseTo((0.99 + 0.01) / (0.99 + 0.02), 12)
  })

  it('is refused with place and cure, and the record stays as it is', async () => {
    const refused = await survey.refusal('sheet.takeOwn', {
      source: file('wrong.yaml', fenland.replace('engine: [large]', 'engine: [huge]')),
    })
    expect(refused.code).toBe('input-refused')
    expect(refused.message).toMatch(/“wrong.yaml” was not taken in.*line 12.*huge/s)
    expect((await survey.refusal('sheet.takeOwn', { source: file('none.yaml', 'no: sheet') })).code).toBe(
      'input-refused',
    )
    const missing = { from: 'file', path: join(survey.folder, 'missing.yaml') } as const
    expect((await survey.refusal('sheet.takeOwn', { source: missing })).code).toBe('not-found')
    expect(survey.program.record().view().sheets).toEqual([])
  })
})
