import { afterEach, beforeEach, expect, it } from 'vitest'
import { rust, type Survey, startSurvey } from './survey-program.ts'

let survey: Survey
beforeEach(async () => {
  survey = await startSurvey()
})
afterEach(() => survey.end())

/** A reader of RFC 4180 written from its grammar, so that the writer is not read by itself. */
function readCsv(text: string): string[][] {
  const rows: string[][] = [[]]
  const cell = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n|$)/gy
  for (let found = cell.exec(text); found !== null; found = cell.exec(text)) {
    rows.at(-1)?.push(found[1]?.replaceAll('""', '"') ?? found[2] ?? '')
    if (found[3] === '') break
    if (found[3] === '\r\n') rows.push([])
  }
  return rows.filter((row) => row.length > 1 || row[0] !== '')
}

const table = async (register: 'findings' | 'panels') => {
  const { csv, fileName } = await survey.ask('register.table', { register })
  expect(csv.startsWith('\uFEFF')).toBe(true)
  const [head = [], ...rows] = readCsv(csv.slice(1))
  return { fileName, rows: rows.map((row) => Object.fromEntries(head.map((name, at) => [name, row[at]]))) }
}

// OWASP, CSV Injection: leading = + - @ tab and carriage return.
it.each(['=1+1', '+1', '-2+3', '@SUM(A1)', '\t=1', '\r=1', '=HYPERLINK("http://x","y")', '＝1+1'])(
  'a note beginning with %j is text for a spreadsheet',
  async (note) => {
    await survey.ask('finding.add', { draft: { ...rust, note } })
    const { rows } = await table('findings')
    expect(rows[0]?.note).toBe(`'${note}`)
  },
)

it.each([
  'a "quoted" note, with a comma',
  'two\r\nlines',
  '<script>',
  'عربى \u202Eright to left',
  '🚗',
  'x'.repeat(100_000),
])('a hostile note comes back letter for letter', async (note) => {
  await survey.ask('finding.add', { draft: { ...rust, note } })
  expect((await table('findings')).rows[0]?.note).toBe(note)
})

it('lists every panel of the walk, unseen ones as not inspected', async () => {
  await survey.ask('panel.setMetal', { panelId: 'roof-skin', metal: 'original metal' })
  const { rows, fileName } = await table('panels')
  expect(fileName).toBe('T-1-panels.csv')
  expect(rows.find((row) => row.panelId === 'roof-skin')?.metal).toBe('original metal')
  expect(rows.filter((row) => row.inspection === 'not inspected')).toHaveLength(rows.length - 1)
})

it.each(['spots', 'parts', 'claims', 'corrections', 'exhibits', 'carNumbers'] as const)(
  'gives %s, also empty',
  async (register) => {
    expect((await survey.ask('register.table', { register })).csv).toBe('\uFEFF')
  },
)
