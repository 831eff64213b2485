import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { headingsOf, sheetTables } from '../../electron/sheets/reference/sheet-tables.ts'
import type { TablesDraft } from '../../shared-types/sheet-desk.ts'
import { type Survey, startSurvey } from './survey-program.ts'

let survey: Survey
let folder = ''
beforeEach(async () => {
  survey = await startSurvey({ begin: false })
  folder = join(survey.folder, 'records', 'reference-sheets')
})
afterEach(() => survey.end())

/** Rows of a table by heading. */
const rows = (table: string, ...entries: readonly Readonly<Record<string, string>>[]) => ({
  [table]: entries.map((entry) => headingsOf(table).map((heading) => entry[heading] ?? '')),
})

const withTables = (draft: TablesDraft, ...tables: readonly TablesDraft['tables'][]): TablesDraft => ({
  ...draft,
  tables: Object.assign({}, draft.tables, ...tables) as TablesDraft['tables'],
})

async function begun(): Promise<{ name: string; draft: TablesDraft; basis: string }> {
  const { name } = await survey.ask('sheets.begin', { title: 'Fenland Cärrier, 1951', copyOf: null })
  const { draft, basis } = await survey.ask('sheets.read', { name })
  if (draft.written !== 'as tables') throw new Error('A new sheet is written as tables.')
  return { name, draft, basis }
}

const body = [
  rows('sources', { id: 'notes', who: 'The writer', where: 'Three cars', learned: 'invented' }),
  rows('variables', { id: 'body', name: 'Body' }),
  rows('values', { variable: 'body', id: 'open', name: 'open' }, { variable: 'body', id: 'closed', name: 'closed' }),
]

describe('a sheet of one’s own', () => {
  it('begins empty under its title, says what it lacks, and becomes one that can be used', async () => {
    const { name, draft, basis } = await begun()
    expect(name).toBe('fenland-carrier-1951')
    const lacking = await survey.ask('sheets.check', { name, draft })
    expect(lacking.usable).toBe(false)
    expect(lacking.messages[0]?.cure).toBe('Add a variable with its values.')
    const written = withTables(draft, ...body)
    expect(await survey.ask('sheets.check', { name, draft: written })).toMatchObject({
      usable: true,
      summary: { title: 'Fenland Cärrier, 1951', variables: 1 },
    })
    const kept = await survey.ask('sheets.keep', { name, draft: written, basis })
    expect(kept.readable).toBe(true)
    expect(readFileSync(join(folder, `${name}.yaml`), 'utf8')).toContain('{ id: open, name: open }')
    expect(await survey.ask('sheets.read', { name })).toMatchObject({ basis: kept.basis, byHand: false })
    expect(await survey.ask('sheets.own', {})).toMatchObject([
      { name, title: 'Fenland Cärrier, 1951', edition: '1', state: 'readable' },
    ])
  })

  it('is kept letter by letter while it is no sheet yet, and what could be read before stays beside it', async () => {
    const { name, draft, basis } = await begun()
    const sound = await survey.ask('sheets.keep', { name, draft: withTables(draft, ...body), basis })
    const broken = withTables(draft, ...body, rows('count-cells', { count: 'none yet', built: 'about 40' }))
    const kept = await survey.ask('sheets.keep', { name, draft: broken, basis: sound.basis })
    expect(kept.readable).toBe(false)
    expect(await survey.ask('sheets.read', { name })).toMatchObject({ draft: broken, basis: kept.basis })
    expect(await survey.ask('sheets.own', {})).toMatchObject([{ state: 'unfinished', title: 'Fenland Cärrier, 1951' }])
    expect(readFileSync(join(folder, `${name}.yaml`), 'utf8')).toContain('closed')
    const mended = await survey.ask('sheets.keep', { name, draft: withTables(draft, ...body), basis: kept.basis })
    expect(mended.readable).toBe(true)
    expect(readdirSync(folder)).toEqual([`${name}.yaml`])
  })

  it('is not written over when another window kept something since, and takes the same draft twice', async () => {
    const { name, draft, basis } = await begun()
    const first = withTables(draft, ...body)
    const kept = await survey.ask('sheets.keep', { name, draft: first, basis })
    expect(await survey.ask('sheets.keep', { name, draft: first, basis })).toMatchObject({ basis: kept.basis })
    const other = withTables(draft, ...body.slice(0, 2))
    const refused = await survey.refusal('sheets.keep', { name, draft: other, basis })
    expect(refused.code).toBe('not-allowed-here')
    expect((await survey.ask('sheets.read', { name })).basis).toBe(kept.basis)
    // Two at the same moment from the same beginning: one is kept, the other refused.
    const both = await Promise.allSettled([
      survey.ask('sheets.keep', { name, draft: other, basis: kept.basis }),
      survey.ask('sheets.keep', { name, draft: draft, basis: kept.basis }),
    ])
    expect(both.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected'])
  })

  it('written by hand keeps its comments as text, and a copy of them when it is written on as tables', async () => {
    mkdirSync(folder, { recursive: true })
    const text = `# by hand\nform: 1\nsheetId: fen\ntitle: Fen\nedition: "1"\nvariables:\n  - { id: body, name: Body, values: [{ id: open, name: open }] }\n`
    writeFileSync(join(folder, 'fen.yaml'), text)
    const opened = await survey.ask('sheets.read', { name: 'fen' })
    expect(opened).toMatchObject({ byHand: true, draft: { written: 'as text', text } })
    const asText = await survey.ask('sheets.keep', {
      name: 'fen',
      draft: { written: 'as text', text: text.replace('Fen\n', 'Fenland\n') },
      basis: opened.basis,
    })
    expect(readFileSync(join(folder, 'fen.yaml'), 'utf8')).toContain('# by hand')
    const tables = await survey.ask('sheets.turn', { draft: opened.draft })
    await survey.ask('sheets.keep', { name: 'fen', draft: tables, basis: asText.basis })
    expect(readFileSync(join(folder, 'fen.yaml'), 'utf8')).not.toContain('# by hand')
    const [copy = ''] = readdirSync(join(folder, 'put-away'))
    expect(readFileSync(join(folder, 'put-away', copy), 'utf8')).toContain('# by hand')
  })

  it('is put away where a person finds it again', async () => {
    const { name } = await begun()
    await survey.ask('sheets.putAway', { name })
    expect(await survey.ask('sheets.own', {})).toEqual([])
    expect(existsSync(join(folder, `${name}.yaml`))).toBe(false)
    expect(readdirSync(join(folder, 'put-away'))).toHaveLength(1)
    expect((await survey.refusal('sheets.read', { name })).code).toBe('not-found')
  })

  it('begins as a copy of a shipped one, and reads the same as tables and as text', async () => {
    const { name } = await survey.ask('sheets.begin', { title: 'Sedge', copyOf: { from: 'program', name: 'sedge' } })
    const { draft } = await survey.ask('sheets.read', { name })
    expect(draft.written).toBe('as tables')
    const text = await survey.ask('sheets.turn', { draft })
    expect(await survey.ask('sheets.turn', { draft: text })).toEqual(draft)
    const wrong = { written: 'as text', text: 'form: 1\nsheetId: Fen' } as const
    expect((await survey.refusal('sheets.turn', { draft: wrong })).message).toMatch(/line 2, sheetId/)
  })

  it('imports another of one’s own; a ring is refused with its names', async () => {
    mkdirSync(folder, { recursive: true })
    const head = (id: string, imported: string) =>
      `form: 1\nsheetId: ${id}\ntitle: ${id}\nedition: "1"\nimports: [{ sheetId: ${imported} }]\nvariables: [{ id: ${id}-body, name: Body, values: [{ id: a, name: a }, { id: b, name: b }] }]\n`
    writeFileSync(join(folder, 'one.yaml'), head('one', 'other'))
    const other = { written: 'as text', text: head('other', 'one') } as const
    const { messages } = await survey.ask('sheets.check', { name: 'other', draft: other })
    expect(messages).toMatchObject([{ severity: 'error', what: expect.stringContaining('other → one → other') }])
    const alone = { written: 'as text', text: head('other', 'one').replace(/imports.*\n/, '') } as const
    expect((await survey.ask('sheets.check', { name: 'other', draft: alone })).usable).toBe(true)
  })
})

it('every table and column says what belongs in it, and the worked example has a row for each', async () => {
  const forms = await survey.ask('sheets.forms', {})
  expect(forms.map(({ name }) => name)).toEqual(['sheet', ...sheetTables.map(({ name }) => name)])
  for (const { name, says, columns, example } of forms) {
    expect(says, name).not.toBe('')
    expect(columns.map(({ heading }) => heading)).toEqual(headingsOf(name))
    for (const column of columns) expect(column.says, `${name}, ${column.heading}`).not.toBe('')
    if (name !== 'imports') expect(example.length, name).toBeGreaterThan(0)
  }
  const tables = Object.fromEntries(forms.map(({ name, example }) => [name, example.map((row) => [...row])]))
  const { usable, messages } = await survey.ask('sheets.check', { name: null, draft: { written: 'as tables', tables } })
  expect({ usable, messages }).toEqual({ usable: true, messages: [] })
})
