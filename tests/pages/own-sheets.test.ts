import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { beginning } from '../record/sample-record.ts'
import { askThrough } from './asking.ts'
import { goToPlace, settled } from './browser.ts'
import type { Keyboard } from './keyboard.ts'
import { type OpenPage, openPage } from './open-page.ts'
import { type StartedProgram, startEmpty } from './started-program.ts'
import { stepsInOrder } from './steps-in-order.ts'

let program: StartedProgram
let openedPage: OpenPage
let page: Page
let keyboard: Keyboard
let faults: readonly string[]

beforeAll(async () => {
  openedPage = await openPage(startEmpty, { byKeyboard: true, timeoutMs: 60_000 })
  ;({ program, page, keyboard, faults } = openedPage)
}, 120_000)
afterAll(() => openedPage?.close())

stepsInOrder()

const folder = () => join(program.folder, 'reference-sheets')
const inHand = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '')
const press = async (...keys: readonly string[]) => {
  for (const key of keys) await page.keyboard.press(key)
}
/** Writes cells side by side from the one in hand on; Enter then begins the next row where this one began. */
async function row(...cells: readonly string[]): Promise<void> {
  for (const cell of cells) {
    if (cell !== '') await page.keyboard.type(cell)
    await press('Tab')
  }
  await press('Enter')
}
async function toTable(name: string): Promise<void> {
  for (let step = 0; step < 20; step++) {
    if (await page.locator('.table-name[aria-current]', { hasText: name }).count()) return
    await press('Alt+PageDown')
  }
  throw new Error(`No way to the table ${name}.`)
}
const standing = (words: string) => page.locator('.section-beside', { hasText: words }).first().waitFor()

describe.sequential('a newcomer writes a sheet of an invented line by keyboard', () => {
  it('reaches the sheets from Records and begins one', async () => {
    await goToPlace(page, '1', 'Records')
    await press('s')
    await page.getByText('No sheet yet').waitFor()
    await press('n')
    await page.getByLabel('Car line and years').waitFor()
    await page.keyboard.type('Fenland Carrier, 1951 to 1953')
    await press('Control+Enter')
    await page.getByRole('table', { name: 'sheet' }).waitFor()
    expect(await inHand()).toBe('title, row 1')
    await standing('1 wrong')
    await page.getByText('Add a variable with its values.').waitFor()
    expect(await page.locator('.sheet-desk-head h2').textContent()).toBe('Fenland Carrier, 1951 to 1953')
  })

  it('writes variables, values, a rule and a tell, cell by cell', async () => {
    await toTable('sources')
    await row('notes', 'The writer', 'Notes of three cars', '', '80', 'invented')
    await toTable('variables')
    expect(await inHand()).toBe('id, row 1')
    await row('body', 'Body')
    await row('engine', 'Engine')
    await toTable('values')
    await row('body', 'open', 'open')
    await row('body', 'closed', 'closed')
    await row('engine', 'small', 'small')
    await row('engine', 'large', 'large')
    await toTable('rules')
    await row('closed-large', 'requires', 'notes', '', 'body: closed', 'engine: lrge')
    await toTable('tells')
    await row('roof', 'Roof', 'notes', 'From outside.', '', '', 'above the doors', '', '1', 'from outside', '', 'body')
  })

  it('sees what is wrong, goes to the cell by a key, takes the name that is offered, and all is well', async () => {
    await page.getByText('“lrge” is no value of engine.').first().waitFor()
    await press('Alt+m')
    await expect.poll(inHand).toMatch(/^needs, row 1: “lrge” is no value of engine/)
    await page.keyboard.type('engine: la')
    await press('Control+Space')
    await expect.poll(() => page.locator('.grid-field').inputValue()).toBe('engine: large')
    await standing('it can be used')
  })

  it('takes back every edit and does it again', async () => {
    await press('Control+z')
    await press('Control+z')
    await page.getByText('“lrge” is no value of engine.').first().waitFor()
    await press('Control+Shift+Z')
    await press('Control+Shift+Z')
    await standing('it can be used')
  })

  it('keeps everything without being told to: as YAML, over leaving, other places and a reload', async () => {
    await page.locator('.sheet-desk-head', { hasText: /kept \d/ }).waitFor()
    const [file = ''] = readdirSync(folder())
    expect(readFileSync(join(folder(), file), 'utf8')).toContain('needs: { engine: [ large ] }')
    await goToPlace(page, '2', 'Identity')
    await goToPlace(page, '1', 'Records')
    await press('Control+z')
    await page.getByText('“la” is no value').or(page.getByText('“lrge” is no value')).first().waitFor()
    await press('Control+Shift+Z')
    await press('Escape')
    await page
      .getByRole('button', { name: /Fenland Carrier/ })
      .first()
      .waitFor()
    await settled(page)
    const [own] = await askThrough(page, 'sheets.own', {})
    expect(own).toMatchObject({ title: 'Fenland Carrier, 1951 to 1953', state: 'readable' })
  })

  it('shows the same sheet as text, and what is wrong there by its line', async () => {
    await page
      .getByRole('button', { name: /Fenland Carrier/ })
      .first()
      .focus()
    await press('Enter')
    await page.getByRole('table', { name: 'sheet' }).waitFor()
    await press('Alt+t')
    const text = page.getByLabel('The sheet as text (YAML)')
    await text.waitFor()
    expect(await text.inputValue()).toContain('title: Fenland Carrier, 1951 to 1953')
    await press('Control+End')
    await page.keyboard.type('rulez: []\n')
    await page.getByText('The form knows no “rulez” here.').waitFor()
    await press('Control+z')
    await standing('it can be used')
    await press('Alt+t')
    await page.getByRole('table', { name: 'sheet' }).waitFor()
  })

  it('tries the sheet without a record: says what one could see, and sees what follows', async () => {
    await press('Alt+y')
    const pane = page.getByRole('region', { name: 'Try the sheet' })
    await pane.getByText('3 builds the rules allow').waitFor()
    await keyboard.tabTo(/^[A-Z]?closed/)
    await press('Enter')
    await pane.getByText('1 of 3 builds could show this').waitFor()
    const large = pane.locator('.can-be-row', { hasText: 'large' })
    expect(await large.locator('.figures').textContent()).toMatch(/100/)
    await press('Alt+y')
    await pane.waitFor({ state: 'detached' })
  })

  it('takes it into a record, and is shown what a later edition changes before it is taken', async () => {
    const { particulars, commission, visit } = beginning
    await askThrough(page, 'records.create', { fileName: 'fenland', particulars, commission, visit })
    await page.reload()
    await page.getByRole('navigation', { name: 'Places' }).waitFor()
    await goToPlace(page, '2', 'Identity')
    await keyboard.tabTo('take it in: Fenland Carrier')
    await press('Enter')
    await page.getByText('3 builds the rules allow').waitFor()
    const [own] = await askThrough(page, 'sheets.own', {})
    const { draft, basis, name } = await askThrough(page, 'sheets.read', { name: own?.name ?? '' })
    const text = await askThrough(page, 'sheets.turn', { draft })
    if (text.written !== 'as text') throw new Error('A sheet turned is text.')
    const second = text.text.replace('edition: "1"', 'edition: "2"').replace('[ large ]', '[ small ]')
    await askThrough(page, 'sheets.keep', { name, basis, draft: { written: 'as text', text: second } })
    await page.reload()
    await page.getByRole('navigation', { name: 'Places' }).waitFor()
    await page.getByText('3 builds the rules allow').waitFor()
    await keyboard.tabTo('see what it changes: Fenland Carrier')
    await press('Enter')
    const change = page.getByRole('region', { name: /edition 2, changes/ })
    await change.getByText('From edition 1 to edition 2:').waitFor()
    expect((await change.textContent()) ?? '').toContain('Engine')
    expect((await askThrough(page, 'record.view', {})).sheets[0]?.edition).toBe('1')
    await keyboard.tabTo('take this edition in')
    await press('Enter')
    await change.waitFor({ state: 'detached' })
    await expect
      .poll(async () => (await askThrough(page, 'record.view', {})).sheets[0]?.edition, { timeout: 20_000 })
      .toBe('2')
    await page.getByText('in this record', { exact: true }).waitFor()
  })

  it('nothing else happened on the page', () => {
    expect(faults).toEqual([])
  })
})
