import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Page } from 'playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { askThrough } from './asking.ts'
import { goToPlace, settled } from './browser.ts'
import { type OpenPage, openPage } from './open-page.ts'
import { startEmpty } from './started-program.ts'
import { stepsInOrder } from './steps-in-order.ts'

let opened: OpenPage
let page: Page

beforeAll(async () => {
  opened = await openPage(startEmpty, { timeoutMs: 15_000 })
  page = opened.page
}, 120_000)
afterAll(() => opened?.close())

stepsInOrder()

const view = () => askThrough(page, 'record.view', {})
const field = (name: string | RegExp) => page.getByRole('textbox', { name, exact: typeof name === 'string' })
const inHand = () =>
  page.evaluate(() => [...((document.activeElement as HTMLInputElement | null)?.labels ?? [])][0]?.textContent ?? '')
const saidUnder = () => page.locator('.field-problem').allInnerTexts()
const keep = () => page.keyboard.press('Control+Enter')
async function form(key: string): Promise<void> {
  await page.keyboard.press(key)
  await page.locator('.edit-sheet').waitFor()
  await settled(page)
}
async function reload(): Promise<void> {
  await page.reload()
  await page.locator('.head-facts').waitFor()
  await settled(page)
}
const formGone = () => page.locator('.edit-sheet').waitFor({ state: 'detached' })

describe.sequential('a first record, with the slips a first record has', () => {
  it('stays in its window while Tab goes through the whole form', async () => {
    await goToPlace(page, '1', 'Records')
    await page.keyboard.press('n')
    await page.keyboard.press('u')
    await field('Title').waitFor()
    for (let step = 0; step < 60; step++) {
      await page.keyboard.press('Tab')
      expect(await page.locator('.program').evaluate((frame) => frame.scrollTop)).toBe(0)
    }
  })

  it('leads to what is missing or cannot be read, in words without names of the program’s own', async () => {
    await keep()
    await expect.poll(inHand).toBe('Title')
    await field('Title').fill('A saloon from a yard, 1961')
    await field('Who examines').fill('An examiner')
    await field('Currency of costs').fill('pounds')
    await keep()
    await expect.poll(inHand).toBe('Currency of costs')
    await expect.poll(saidUnder).toEqual(['Write three capital letters, such as GBP. Correct it and try again.'])
    await field('Currency of costs').fill('eur')
    await keep()
    await page.waitForFunction(() => document.title.startsWith('Identity'))
    expect((await view()).commission.currency).toBe('EUR')
  })

  it('names the panels in what is to be looked at', async () => {
    await goToPlace(page, '3', 'Walk-round')
    const look = page.locator('.look-for')
    await look.waitFor()
    expect(await look.textContent()).toContain('shut line to door,')
    expect(await look.textContent()).toContain('Reach: walk-round;')
  })

  it('takes a year for the first or the last day of it, and keeps no day that it could not read', async () => {
    await goToPlace(page, '2', 'Identity')
    await form('p')
    await field('Maker').fill('A maker')
    await field('Built from').fill('1961')
    await field('Built to').fill('31.12.1961')
    await keep()
    expect(await inHand()).toBe('Built to')
    expect((await view()).particulars.maker).toBe('')
    await field('Built to').fill('May 1961')
    await keep()
    await formGone()
    expect((await view()).particulars).toMatchObject({
      maker: 'A maker',
      builtFrom: '1961-01-01',
      builtTo: '1961-05-31',
    })
  })

  it('keeps no claim with a figure or a number that it could not read, and says what is empty', async () => {
    await form('c')
    await keep()
    await expect.poll(inHand).toBe('The words, as said or written')
    await expect.poll(saidUnder).toEqual(['This cannot be left empty. Correct it and try again.'])
    await field('The words, as said or written').fill('Never welded')
    await field('Of a hundred such statements hold, %').fill('many')
    await field('Findings').fill('4 x')
    await keep()
    expect(await inHand()).toBe('Of a hundred such statements hold, %')
    await field('Of a hundred such statements hold, %').fill('130')
    expect(await saidUnder()).toContain('This must be 99 % or less.')
    await keep()
    expect(await inHand()).toBe('Of a hundred such statements hold, %')
    await field('Of a hundred such statements hold, %').fill('')
    await keep()
    expect(await inHand()).toBe('Findings')
    expect((await view()).claims).toEqual([])
    await field('Findings').fill('')
    await keep()
    await formGone()
    expect((await view()).claims).toHaveLength(1)
  })

  it('goes on in a finding that was left in the middle of its note, and says that it was begun', async () => {
    await goToPlace(page, '3', 'Walk-round')
    await form('f')
    for (const key of ['d', '3', '2']) await page.keyboard.press(key)
    await page.keyboard.type('A dent as lar')
    await goToPlace(page, '2', 'Identity')
    await page.getByText('1 entry begun').waitFor()
    await reload()
    await goToPlace(page, '3', 'Walk-round')
    await page.getByText('go on with the one begun').waitFor()
    await form('f')
    await page.keyboard.type('ge as a palm')
    await page.keyboard.press('Enter')
    await formGone()
    expect((await view()).findings).toMatchObject([
      { kind: 'dent', severity: 'marked', note: 'A dent as large as a palm' },
    ])
  })

  it('begins the grid of a panel with the pointer', async () => {
    await goToPlace(page, '4', 'Coating')
    await page.getByRole('button', { name: 'walk a grid' }).click()
    await page.getByRole('heading', { name: /^Grid of / }).waitFor()
    await page.keyboard.press('Escape')
  })

  it('names a file that is no photograph once, and offers to choose where there is nothing to keep', async () => {
    const file = join(opened.program.folder, 'notes.jpg')
    await writeFile(file, 'no photograph')
    await goToPlace(page, '3', 'Walk-round')
    await form('e')
    const chosen = page.waitForEvent('filechooser')
    await page.getByRole('button', { name: 'choose', exact: true }).click()
    await (await chosen).setFiles([file])
    const refused = page.locator('.edit-sheet .import-note .field-problem')
    await refused.waitFor()
    expect((await refused.textContent())?.match(/notes\.jpg/g)).toHaveLength(1)
    await page.keyboard.press('Escape')
  })

  it('sends nobody to findings that are there, and writes a measurement within its picture', async () => {
    const about = { panelId: null, view: null, at: null, inReport: true, madeBy: '', place: '', caption: 'Track' }
    const measurement = { what: 'track', value: 1221, unit: 'mm', uncertainty: 2, method: '', instrument: '' } as const
    await askThrough(page, 'exhibit.add', { draft: { kind: 'measurement', measurement, ...about } })
    const { findings } = await view()
    await goToPlace(page, '8', 'Putting right')
    const empty = page.getByRole('grid', { name: 'Corrections' }).locator('.register-empty')
    expect(await empty.textContent()).toContain(findings.length === 0 ? 'Add findings' : `${findings.length} finding`)
    await form('k')
    const kind = page.locator('.exhibit-choice .exhibit-kind').first()
    const runsOver = await kind.evaluate(
      (box) => box.scrollWidth > box.clientWidth || box.scrollHeight > box.clientHeight,
    )
    expect(runsOver).toBe(false)
    await page.keyboard.press('Escape')
  })

  it('shows nothing that was typed about one car in the record of another', async () => {
    await goToPlace(page, '2', 'Identity')
    await form('c')
    await field('The words, as said or written').fill('Of the saloon alone')
    await page.keyboard.press('Escape')
    const { path, particulars, commission, visits } = await view()
    const [{ number: _number, ...visit } = expect.fail('a record begins with a visit')] = visits
    await askThrough(page, 'records.create', { fileName: 'another', particulars, commission, visit })
    await reload()
    await goToPlace(page, '2', 'Identity')
    await form('c')
    expect(await field('The words, as said or written').inputValue()).toBe('')
    await page.keyboard.press('Escape')
    await askThrough(page, 'records.open', { path, readOnly: false })
    await reload()
    await goToPlace(page, '2', 'Identity')
    await form('c')
    expect(await field('The words, as said or written').inputValue()).toBe('Of the saloon alone')
  })

  it('takes in a sheet, and goes on with what that says to look at', async () => {
    await page.keyboard.press('Escape')
    await formGone()
    const choose = page.getByRole('button', { name: /^take in a sheet from a file/ })
    const chosen = page.waitForEvent('filechooser')
    await choose.click()
    await chosen
    await page.getByRole('button', { name: /^take it in: .*Sedge/ }).click()
    await page.locator('.tell-row').first().waitFor({ timeout: 60_000 })
    await expect.poll(() => page.evaluate(() => document.activeElement?.className ?? '')).toBe('tell-row')
  })

  it('is left in hand by the demonstration car that somebody asked for and did not wait for', async () => {
    const { path } = await view()
    await goToPlace(page, '1', 'Records')
    const making = page.waitForResponse(/makeDemonstration/, { timeout: 90_000 })
    await page.keyboard.press('d')
    await goToPlace(page, '2', 'Identity')
    await (await making).finished()
    await settled(page)
    expect((await view()).path).toBe(path)
    expect(await page.title()).toMatch(/^Identity/)
    await askThrough(page, 'records.close', {})
    await goToPlace(page, '1', 'Records')
    const opening = page.waitForResponse(/record\.view/)
    await page.keyboard.press('d')
    await page.keyboard.press('Alt+9')
    await (await opening).finished()
    await page.getByText('Brackwater').first().waitFor()
    expect(await page.title()).not.toMatch(/^Walk-round/)
  }, 120_000)

  it('met no fault on the way', () => {
    expect(opened.faults).toEqual([])
  })
})
