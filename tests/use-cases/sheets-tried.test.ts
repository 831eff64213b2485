import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Observation } from '../../shared-types/observation.ts'
import type { SheetDraft } from '../../shared-types/sheet-desk.ts'
import { type Survey, startSurvey } from './survey-program.ts'

let survey: Survey
beforeEach(async () => {
  survey = await startSurvey()
})
afterEach(() => survey.end())

/** Body and engine, every combination alike but for the closed one, which has the large engine. */
const fenland = (edition = '1', needs = 'large') => `form: 1
sheetId: fenland
title: Fenland carrier
edition: "${edition}"
variables:
  - { id: body, name: Body, values: [{ id: open, name: open }, { id: closed, name: closed }] }
  - { id: engine, name: Engine, values: [{ id: small, name: small }, { id: large, name: large }] }
rules:
  - { id: closed-engine, kind: requires, when: { body: [closed] }, needs: { engine: [${needs}] } }
tells:
  - { id: roof, name: Roof, lookAt: From outside., where: { words: roof }, effort: 1, access: from outside, follows: { kind: as built, variable: body } }
`
const asText = (text: string): SheetDraft => ({ written: 'as text', text })
const seen = (tell: string, value: string): Observation => ({
  ...{ tell, state: 'seen', value, surePercent: null, measured: null },
  exhibits: [],
  note: '',
})
const file = (name: string, content: string | Uint8Array) => {
  const path = join(survey.folder, name)
  writeFileSync(path, content)
  return { from: 'file', path } as const
}

describe('a draft tried without a record', () => {
  it('concludes exactly what its rules say, and refuses what cannot be read', async () => {
    await survey.ask('records.close', {})
    const tried = { name: null, draft: asText(fenland()), chainsOf: [] }
    const before = await survey.ask('sheets.try', { ...tried, observations: [] })
    // Three builds the rule allows, by hand: open small, open large, closed large.
    expect(before.legalBuilds).toBe('3')
    const after = await survey.ask('sheets.try', { ...tried, observations: [seen('fenland/roof', 'closed')] })
    const engine = (view: typeof before) => view.variables[1]?.values.find(({ id }) => id === 'large')?.now
    expect(engine(before)).toBeCloseTo(2 / 3, 12)
    expect(engine(after)).toBe(1)
    const refused = await survey.refusal('sheets.try', { ...tried, draft: asText('form: 1'), observations: [] })
    expect(refused.message).toMatch(/It can be tried once it can be read. .*sheetId/)
  })
})

describe('another edition of a sheet', () => {
  it('shows what it changes before it is taken, and takes nothing', async () => {
    await survey.ask('sheet.takeOwn', { source: file('one.yaml', fenland()) })
    await survey.ask('observation.set', { observation: seen('fenland/roof', 'closed') })
    const second = file('two.yaml', fenland('2', 'small'))
    const change = await survey.ask('sheets.compare', { source: second })
    expect(change).toMatchObject({ editionBefore: '1', editionAfter: '2', same: false, lost: [], problemAfter: null })
    expect(change.variables).toEqual([
      {
        key: 'fenland/engine',
        name: 'Engine',
        values: [
          { name: 'small', before: 0, after: 1 },
          { name: 'large', before: 1, after: 0 },
        ],
      },
    ])
    expect(survey.program.record().view().sheets).toMatchObject([{ edition: '1' }])
    await survey.ask('sheet.takeOwn', { source: second })
    expect((await survey.ask('sheets.compare', { source: second })).same).toBe(true)
    const view = await survey.ask('identity.view', { whatIf: [], chainsOf: [] })
    expect(view.variables[1]?.values.map(({ now }) => now)).toEqual([1, 0])
  })

  it('names the verdicts that turn, and the tells that would say nothing any more', async () => {
    await survey.ask('sheet.takeOwn', { source: file('one.yaml', fenland()) })
    await survey.ask('observation.set', { observation: seen('fenland/roof', 'closed') })
    const gone = fenland('2').replace(/tells:[\s\S]*/, '')
    const change = await survey.ask('sheets.compare', { source: file('two.yaml', gone) })
    expect(change.lost).toEqual(['Roof'])
    const engine = change.variables.find(({ key }) => key === 'fenland/engine')
    expect(engine?.values[1]?.after).toBeCloseTo(2 / 3, 12)
  })

  it('of one’s own folder is offered, and taken by its name', async () => {
    const folder = join(survey.folder, 'records', 'reference-sheets')
    mkdirSync(folder, { recursive: true })
    writeFileSync(join(folder, 'my-line.yaml'), fenland())
    const [offered] = await survey.ask('sheets.offered', {})
    expect(offered).toMatchObject({ from: 'own', name: 'my-line', sheetId: 'fenland', inRecord: 'no' })
    await survey.ask('sheet.takeOwn', { source: { from: 'own sheet', name: 'my-line' } })
    expect((await survey.ask('sheets.offered', {}))[0]?.inRecord).toBe('this one')
    writeFileSync(join(folder, 'my-line.yaml'), fenland('2'))
    expect((await survey.ask('sheets.offered', {}))[0]?.inRecord).toBe('another edition')
  })
})

describe('tables of a spreadsheet', () => {
  const draft = asText(fenland())
  const bring = (...tables: readonly { table: string; source: { from: 'file'; path: string } }[]) =>
    survey.ask('sheets.bringTables', { draft, tables: [...tables] })

  it('go out into a folder of their own and come back the same', async () => {
    const first = await survey.ask('sheets.carryTables', { name: 'fenland', draft, as: 'tables as CSV' })
    const second = await survey.ask('sheets.carryTables', { name: 'fenland', draft, as: 'tables as CSV' })
    expect(second.folder).not.toBe(first.folder)
    expect(existsSync(join(first.folder, 'values.csv'))).toBe(true)
    const files = first.files.map((name) => ({
      table: '',
      source: { from: 'file', path: join(first.folder, name) } as const,
    }))
    const back = await bring(...files)
    expect(back.faults).toEqual([])
    expect(back.tables.every(({ added, gone }) => added + gone === 0)).toBe(true)
    expect(back.draft).toEqual(await survey.ask('sheets.turn', { draft }))
  })

  it('go out as one workbook and come back the same; one too long or damaged is refused in words', async () => {
    const { folder, files } = await survey.ask('sheets.carryTables', { name: 'fenland', draft, as: 'one workbook' })
    expect(files).toEqual(['fenland.xlsx'])
    const back = await bring({ table: '', source: { from: 'file', path: join(folder, 'fenland.xlsx') } })
    expect(back.faults).toEqual([])
    expect(back.tables.length).toBeGreaterThan(5)
    expect(back.tables.every(({ added, gone }) => added + gone === 0)).toBe(true)
    expect(back.draft).toEqual(await survey.ask('sheets.turn', { draft }))
    const begins = (length: number) => {
      const bytes = new Uint8Array(length)
      bytes.set([0x50, 0x4b, 3, 4])
      return bytes
    }
    const large = await bring({ table: '', source: file('large.xlsx', begins(50_000_000)) })
    expect(large).toMatchObject({ draft: null, faults: [{ what: expect.stringContaining('50 MB long') }] })
    const damaged = await bring({ table: '', source: file('damaged.xlsx', begins(5000)) })
    expect(damaged).toMatchObject({ draft: null, faults: [{ what: expect.stringMatching(/damaged/) }] })
  })

  it('are looked at before they are taken: what changes, row by row', async () => {
    const { folder } = await survey.ask('sheets.carryTables', { name: 'fenland', draft, as: 'tables as CSV' })
    const values = readFileSync(join(folder, 'values.csv'), 'utf8')
    const found = await bring({
      table: 'values',
      source: file('anything.csv', `${values}engine;;`.replace('engine;;', '"engine","huge","huge"')),
    })
    expect(found.tables).toEqual([{ name: 'values', rowsBefore: 4, rowsAfter: 5, added: 1, gone: 0 }])
    const sheets = join(survey.folder, 'records', 'reference-sheets')
    expect(existsSync(join(sheets, 'fenland.yaml'))).toBe(false)
  })

  it('with what keeps them from being read are refused with table, row, cure; nothing is brought in', async () => {
    const unknown = await bring({ table: '', source: file('valeus.csv', 'a,b\n1,2\n') })
    expect(unknown).toMatchObject({
      draft: null,
      faults: [{ what: expect.stringContaining('There is no table of this name.') }],
    })
    const heading = await bring({ table: '', source: file('values.csv', 'variable,id,nmae\nbody,open,open\n') })
    expect(heading).toMatchObject({
      draft: null,
      faults: [{ table: 'values', row: 0, what: 'It has no use for the column “nmae”.' }],
    })
    const large = await bring({ table: '', source: file('rules.csv', new Uint8Array(50_000_000)) })
    expect(large).toMatchObject({
      draft: null,
      faults: [{ table: 'rules', what: expect.stringContaining('50 MB long') }],
    })
    const missing = await bring({ table: 'rules', source: { from: 'file', path: join(survey.folder, 'none.csv') } })
    expect(missing).toMatchObject({ draft: null, faults: [{ what: 'It cannot be read.' }] })
  })

  it('keep a formula as the text it is, and go out so that no spreadsheet runs it', async () => {
    const found = await bring({
      table: 'values',
      source: file('v.csv', 'variable,id,name\nbody,open,"=1+1"\nbody,closed,closed\n'),
    })
    if (found.draft === null) throw new Error('Nothing was brought in.')
    expect(found.draft.tables.values?.[0]?.[2]).toBe('=1+1')
    const { folder } = await survey.ask('sheets.carryTables', {
      name: 'formula',
      draft: found.draft,
      as: 'tables as CSV',
    })
    expect(readFileSync(join(folder, 'values.csv'), 'utf8')).toContain(`"'=1+1"`)
  })
})

describe('bad input, told with place and cure', () => {
  const told = async (text: string) => (await survey.ask('sheets.check', { name: null, draft: asText(text) })).messages
  const line = (text: string, words: string) => text.split('\n').findIndex((each) => each.includes(words)) + 1

  it('a variable of a million values', async () => {
    const values = Array.from({ length: 6000 }, (_, at) => `{ id: v${at}, name: v }`).join(', ')
    const text = fenland().replace('{ id: small, name: small }', values)
    expect(await told(text)).toMatchObject([
      { line: line(text, 'id: engine'), cure: expect.stringContaining('At most 5000 values') },
    ])
    const million = fenland().replace(
      '{ id: small, name: small }',
      Array.from({ length: 1_000_000 }, () => '{id: v}').join(','),
    )
    const refused = await survey.ask('sheets.check', { name: null, draft: asText(million.slice(0, 7_400_000)) })
    expect(refused).toMatchObject({ usable: false, messages: [{ severity: 'error' }] })
  })

  it('counts below nothing, and counts of nothing at all', async () => {
    const counted = (open: number, closed: number) =>
      `${fenland()}counts:\n  - { id: by-body, name: By body, cells: [{ when: { body: [open] }, built: ${open} }, { when: { body: [closed] }, built: ${closed} }] }\n`
    const negative = await told(counted(-5, 10))
    expect(negative.filter(({ severity }) => severity === 'error')).toHaveLength(1)
    expect(negative[0]?.line).toBe(line(counted(-5, 10), 'by-body'))
    const zero = await told(counted(0, 0))
    expect(zero.filter(({ severity }) => severity === 'error')).toHaveLength(1)
    expect(zero[0]?.line).toBe(line(counted(0, 0), 'by-body'))
  })

  it('a rule that forbids everything, two facts of one name, names that are not there, a newer form', async () => {
    const all = fenland().replace('rules:', 'rules:\n  - { id: none, kind: not built together, when: {} }')
    expect((await told(all))[0]).toMatchObject({ severity: 'error', line: line(all, 'id: none') })
    const twice = fenland().replace('id: roof,', 'id: closed-engine,')
    expect((await told(twice))[0]).toMatchObject({
      what: expect.stringContaining('Two facts are called “closed-engine”'),
    })
    const unknown = fenland('1', 'huge')
    expect((await told(unknown))[0]).toMatchObject({
      line: line(unknown, 'huge'),
      what: '“huge” is no value of engine.',
    })
    expect((await told(fenland().replace('form: 1', 'form: 9')))[0]).toMatchObject({
      line: 1,
      cure: expect.stringContaining('newer version'),
    })
  })
})
