import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { askThrough } from './asking.ts'
import { axeViolations } from './axe-violations.ts'
import { goToPlace, settled } from './browser.ts'
import { type OpenPage, openPage } from './open-page.ts'
import { type StartedProgram, startOnDemonstration } from './started-program.ts'

let program: StartedProgram
let openedPage: OpenPage
let page: Page
let faults: readonly string[]

beforeAll(async () => {
  openedPage = await openPage(startOnDemonstration, { timeoutMs: 30_000 })
  ;({ program, page, faults } = openedPage)
  await askThrough(page, 'sheets.begin', {
    title: 'Sedge, another hand',
    copyOf: { from: 'program', name: 'sedge' },
  })
}, 120_000)
afterAll(() => openedPage?.close())

/** What axe-core objects to, and what stands out of its frame, on paper and at night, in both windows. */
async function objections(screen: string): Promise<string[]> {
  const found: string[] = []
  for (const [width, height] of [
    [1440, 900],
    [1024, 768],
  ] as const) {
    await page.setViewportSize({ width, height })
    for (const sheet of ['paper', 'night', 'outdoor']) {
      // Alt N turns to the next sheet; after the third it is paper again.
      await settled(page)
      if (sheet === 'outdoor') {
        await page.keyboard.press('Alt+n')
        continue
      }
      const wide = await page.evaluate(
        () => document.documentElement.scrollWidth > document.documentElement.clientWidth,
      )
      const said = [...(await axeViolations(page)), ...(wide ? ['the page is wider than its window'] : [])]
      found.push(...said.map((each) => `${screen}, ${width}, ${sheet}: ${each}`))
      await page.keyboard.press('Alt+n')
    }
  }
  await page.setViewportSize({ width: 1440, height: 900 })
  return found
}

const toTable = async (name: string) => {
  await page
    .locator('.table-name', { hasText: new RegExp(`^${name}`) })
    .first()
    .click()
  await page.getByRole('table', { name }).waitFor()
}

describe.sequential('every screen of the sheet editor', () => {
  it('the filled tables', async () => {
    await goToPlace(page, '1', 'Records')
    await page.keyboard.press('s')
    await page
      .getByRole('button', { name: /Sedge, another hand/ })
      .first()
      .click()
    await page.getByRole('table', { name: 'sheet' }).waitFor()
    for (const table of ['sheet', 'rules', 'tells', 'number-places']) {
      await toTable(table)
      expect(await objections(table)).toEqual([])
    }
  })

  it('the pane in which a sheet is tried', async () => {
    await page.keyboard.press('Alt+y')
    const pane = page.getByRole('region', { name: 'Try the sheet' })
    await pane.getByText('builds the rules allow').waitFor()
    await pane.locator('.can-be-head').first().click()
    await settled(page)
    expect(await objections('tried')).toEqual([])
    await page.keyboard.press('Alt+y')
    await pane.waitFor({ state: 'detached' })
  })

  it('the spreadsheet out, and back in with what is wrong and with what it changes', async () => {
    await page.keyboard.press('Alt+s')
    await page.getByRole('button', { name: 'write one workbook (.xlsx)' }).click()
    await page.getByText(/was written into .*a tab for each table/).waitFor()
    const wrong = join(program.folder, 'values.csv')
    writeFileSync(wrong, 'variable,id,nmae\nbody,open,open\n')
    const input = page.locator('input[type="file"][accept*=".xlsx"]')
    await input.setInputFiles(wrong)
    await page.getByText('It has no use for the column “nmae”.').waitFor()
    expect(await objections('spreadsheet, refused')).toEqual([])
    writeFileSync(wrong, 'variable,id,name\nbody,open,open\n')
    await input.setInputFiles(wrong)
    await page.getByRole('button', { name: 'bring these tables in' }).waitFor()
    expect(await objections('spreadsheet, before it is taken')).toEqual([])
    await page.getByRole('button', { name: 'bring these tables in' }).click()
    await page
      .locator('.section-beside', { hasText: /\d+ wrong/ })
      .first()
      .waitFor()
    expect(await objections('messages')).toEqual([])
    await page.keyboard.press('Control+z')
    await page.keyboard.press('Alt+s')
  })

  it('the sheet as text', async () => {
    await page.keyboard.press('Alt+t')
    await page.getByLabel('The sheet as text (YAML)').waitFor()
    expect(await objections('text')).toEqual([])
    await page.keyboard.press('Escape')
    await page.getByText('Reference sheets of your own').waitFor()
    expect(await objections('list')).toEqual([])
  })

  it('what another edition would change', async () => {
    const [own] = await askThrough(page, 'sheets.own', {})
    const { draft, basis, name } = await askThrough(page, 'sheets.read', { name: own?.name ?? '' })
    const text = draft.written === 'as text' ? draft : await askThrough(page, 'sheets.turn', { draft })
    if (text.written !== 'as text') throw new Error('A sheet turned is text.')
    const changed = text.text
      .replace(/sheetId: [a-z-]+/, 'sheetId: sedge')
      .replace(/edition: "?\d+"?/, 'edition: "9"')
      .replace('readBy: coupe-tag-number', 'readBy: null')
    await askThrough(page, 'sheets.keep', { name, basis, draft: { written: 'as text', text: changed } })
    await goToPlace(page, '2', 'Identity')
    await page.getByRole('button', { name: /^see what it changes/ }).click()
    await page.getByRole('region', { name: /edition 9, changes/ }).waitFor()
    await settled(page)
    expect(await objections('another edition')).toEqual([])
  })

  it('and nothing else happened on the page', () => {
    expect(faults).toEqual([])
  })
})
