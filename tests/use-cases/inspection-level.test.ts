import { readFileSync } from 'node:fs'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { panelList } from '../../electron/sheets/panel-list.ts'
import { previewDocument } from '../../electron/use-cases/report.ts'
import { type InspectionLevel, inspectionLevel } from '../../shared-types/words.ts'
import { beginning } from '../record/sample-record.ts'
import { type Survey, startSurvey } from './survey-program.ts'

let survey: Survey
beforeEach(async () => {
  survey = await startSurvey({ begin: false })
})
afterEach(() => survey.end())

const begin = (level: InspectionLevel) =>
  survey.ask('records.create', { ...beginning, fileName: 'sedge', commission: { ...beginning.commission, level } })
const everyPanel = () => {
  const { body, conditions } = beginning.particulars
  return panelList(body, 'with underneath', conditions).panels
}

/** Text of the previewed report, as one line. */
async function reportText(): Promise<string> {
  const { document } = await survey.ask('report.preview', { paper: 'A4' })
  const data = new Uint8Array(readFileSync(previewDocument(survey.program, document)))
  const pdf = await getDocument({ data }).promise
  const pages: string[] = []
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const { items } = await (await pdf.getPage(number)).getTextContent()
    pages.push(items.map((item) => ('str' in item ? item.str : '')).join(' '))
  }
  await pdf.destroy()
  return pages.join(' ').replace(/\s+/g, ' ')
}

const commissioned: { readonly [L in InspectionLevel]: RegExp | null } = {
  'outside only': /the commission covers the outside only/,
  'with openings': /the commission covers the outside, the openings and the engine bay only/,
  'with inside': /the commission covers everything but the underside/,
  'with underneath': null,
}

describe.each(inspectionLevel.options)('a record begun %s', (level) => {
  it('counts every panel of the body, those beyond the level as not inspected', async () => {
    await begin(level)
    const walkedPhases = inspectionLevel.options.indexOf(level) + 1
    const all = everyPanel()
    const beyond = all.filter(({ phase }) => phase > walkedPhases)
    const { coverage, whole } = await survey.ask('judgement.view', {})
    const sum = (count: (row: (typeof coverage)[number]) => number) => coverage.reduce((so, row) => so + count(row), 0)
    expect(sum(({ all: those }) => those)).toBe(all.length)
    expect(sum(({ walked }) => walked)).toBe(all.length - beyond.length)
    expect(sum(({ seen, notAccessible }) => seen + notAccessible)).toBe(0)
    expect(whole).toMatchObject({ panels: all.length, panelsSeen: 0 })
    expect(whole.originalMetal).toMatchObject({ lowPercent: 0, highPercent: 100 })
  })

  it('has a line for every panel in the register, and marks on every sheet of its plan', async () => {
    await begin(level)
    const { csv } = await survey.ask('register.table', { register: 'panels' })
    const ids = everyPanel().map(({ id }) => id)
    for (const id of ids) expect(csv).toMatch(new RegExp(`${id.replace('.', '\\.')}[,;].*not inspected`))
    const marked = new Set<string>()
    for (const sheet of ['outside', 'openings', 'bay', 'floor', 'under'] as const) {
      const marks = await survey.ask('figures.marks', { sheet, pixelsPerMm: 0.1, inHand: null })
      for (const panel of marks.panels) {
        expect(panel).toMatchObject({ inspection: 'not inspected', edge: 'dotted' })
        marked.add(panel.panelId)
      }
    }
    expect(ids.filter((id) => !marked.has(id))).toEqual([])
  })

  it('says in its report in words why the rest was not inspected, and names each panel of it', async () => {
    await begin(level)
    const text = await reportText()
    expect(text).toContain('has Centre posts up to the roof')
    const words = commissioned[level]
    if (words === null) {
      expect(text).not.toMatch(/the commission covers/)
      return
    }
    expect(text).toMatch(words)
    expect(text).toMatch(/Not drawn/)
    for (const name of ['Tunnel', 'Left front rail']) {
      const panel = everyPanel().find(({ uk }) => name.toLowerCase().endsWith(uk.toLowerCase()))
      if (panel !== undefined && panel.phase > inspectionLevel.options.indexOf(level) + 1) {
        expect(text.toLowerCase()).toContain(`${panel.stop} ${name.toLowerCase()}`)
      }
    }
  })
})

it('a level narrowed after the walk keeps what was seen beyond it, in coverage and on the plan of the report', async () => {
  await begin('with underneath')
  const beyond = everyPanel().find(({ phase }) => phase === 4)
  if (beyond === undefined) throw new Error('The walk goes underneath.')
  await survey.ask('panel.setMetal', { panelId: beyond.id, metal: 'repaired metal' })
  const { commission } = survey.program.record().view()
  await survey.ask('commission.set', { commission: { ...commission, level: 'outside only' } })
  const { coverage } = await survey.ask('judgement.view', {})
  expect(coverage.find(({ layer }) => layer === 'under')).toMatchObject({ seen: 1, walked: 0 })
  const text = await reportText()
  expect(text).toContain('repaired metal')
  expect(text).toMatch(/Underneath, 1 : \d+/)
  expect(text).toMatch(/1 of 25 panels inspected, none in the walk/)
})
