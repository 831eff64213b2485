import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Page } from 'playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { placeList } from '../../renderer/store/place-list.ts'
import { askThrough } from './asking.ts'
import { goToPlace } from './browser.ts'
import { hostileWords, longNote } from './hostile-text.ts'
import { type OpenPage, openPage } from './open-page.ts'
import { actionsIn, checkSyntax, pdfToolsThere, runningTextOf } from './pdf-tools.ts'
import { type StartedProgram, startOnDemonstration } from './started-program.ts'

let program: StartedProgram
let openedPage: OpenPage
let page: Page
let faults: readonly string[]
const words = Object.values(hostileWords)

beforeAll(async () => {
  openedPage = await openPage(startOnDemonstration)
  ;({ program, page, faults } = openedPage)
  const { particulars, commission, findings, claims } = await askThrough(page, 'record.view', {})
  await askThrough(page, 'particulars.set', {
    particulars: { ...particulars, title: hostileWords.markup, maker: hostileWords.pdf, history: words.join('\n') },
  })
  await askThrough(page, 'commission.set', { commission: { ...commission, client: hostileWords.formula } })
  for (const note of [...words, longNote]) {
    const { number: _number, ...finding } = findings[0] ?? expect.fail('the demonstration has findings')
    await askThrough(page, 'finding.add', { draft: { ...finding, note } })
  }
  const { number: _number, ...claim } = claims[0] ?? expect.fail('the demonstration has claims')
  for (const said of words)
    await askThrough(page, 'claim.add', { draft: { ...claim, words: said, who: hostileWords.command } })
  await page.reload()
  await page.getByRole('navigation', { name: 'Places' }).waitFor()
}, 120_000)

afterAll(() => openedPage?.close())

const struck = () => page.evaluate(() => 'struck' in window)

describe('hostile names and notes', () => {
  it('stay words on every place: no script runs, nothing is fetched, the title is shown letter for letter', async () => {
    for (const { figure, name } of placeList) {
      await goToPlace(page, figure, name)
      expect(await struck(), name).toBe(false)
    }
    expect(await page.locator('.head-title').textContent()).toBe(hostileWords.markup)
    expect(await page.locator('img[src="x"], svg[onload], script:not([src])').count()).toBe(0)
    expect(faults).toEqual([])
  })

  it('come back from the record letter for letter, a note of 100,000 characters too', async () => {
    const { findings, particulars } = await askThrough(page, 'record.view', {})
    expect(particulars.maker).toBe(hostileWords.pdf)
    const notes = findings.map((finding) => finding.note)
    for (const note of words) expect(notes).toContain(note)
    expect(notes.find((note) => note.length === 100_000)).toBe(longNote)
  })

  it('are no formulas in the tables for spreadsheets (OWASP, CSV injection: a cell begins with none of = + - @)', async () => {
    for (const register of ['findings', 'claims'] as const) {
      const { csv } = await askThrough(page, 'register.table', { register })
      const cells = csv.split(/(?:^|[,;\n])(?:")?/)
      const hurting = cells.filter((cell) => /^[=+@]|^-\d+\+/.test(cell))
      expect(hurting, register).toEqual([])
      expect(csv).toContain('onerror')
    }
  })

  it.skipIf(!pdfToolsThere)(
    'are words in the report: sound syntax, no action, readable to the last word',
    async () => {
      const { document } = await askThrough(page, 'report.preview', { paper: 'A4' })
      const base64 = await page.evaluate(async (address) => {
        const bytes = new Uint8Array(await (await fetch(address)).arrayBuffer())
        let text = ''
        for (let at = 0; at < bytes.length; at += 32_768)
          text += String.fromCharCode(...bytes.subarray(at, at + 32_768))
        return btoa(text)
      }, `/document/${document}`)
      const path = join(program.folder, 'hostile.pdf')
      await writeFile(path, Buffer.from(base64, 'base64'))
      checkSyntax(path)
      expect(actionsIn(path)).toEqual([])
      const text = runningTextOf(path)
      const seen = text.replaceAll(' ', '')
      expect(seen).toContain('onerror="window.struck=1"')
      expect(seen).toContain('/OpenAction<</S/JavaScript/JS(app.alert(1))>>')
      expect(seen).toContain('Theseareitslastwords.')
    },
    120_000,
  )
})
