import type { Page } from 'playwright'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { askThrough } from './asking.ts'
import { goToPlace, settled } from './browser.ts'
import { type OpenPage, openPage } from './open-page.ts'
import { startOnDemonstration } from './started-program.ts'

/** A metric unit after a figure or by itself. */
const METRIC = /µm|cm³|cm²|m²|(?<![\p{L}\d])mm(?!\p{L})/u

let openedPage: OpenPage
let page: Page
/** What somebody typed into the record stays as it was typed, whatever it measures in. */
let typed: string

beforeAll(async () => {
  openedPage = await openPage(startOnDemonstration, { timeoutMs: 30_000, reducedMotion: 'reduce' })
  ;({ page } = openedPage)
  const view = await askThrough(page, 'record.view', {})
  await askThrough(page, 'commission.set', { commission: { ...view.commission, coatingUnit: 'mil', lengthUnit: 'in' } })
  typed = JSON.stringify(view)
  await page.reload()
  await page.getByRole('navigation', { name: 'Places' }).waitFor()
  await goToPlace(page, '4', 'Coating')
  await page.getByRole('button', { name: /Right sill, outer/ }).click()
  await page.locator('.cut-drawing[role="img"]').waitFor({ timeout: 60_000 })
  await settled(page)
}, 180_000)
afterAll(() => openedPage?.close())

/** Every text and spoken name of the page, each on a line of its own. */
const shown = (): Promise<string> =>
  page.evaluate(() => {
    const found: string[] = []
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
    for (let node = texts.nextNode(); node !== null; node = texts.nextNode()) found.push(node.textContent ?? '')
    for (const named of document.querySelectorAll('[aria-label]')) found.push(named.getAttribute('aria-label') ?? '')
    return found.join('\n')
  })

/** Values are typed as the gauge shows them, in a unit of their own: that choice names both, and the field the one chosen. */
const OF_ENTRY = /^(Values, )?µm$/u
/** Lines of the page that name a metric unit. */
const metricLines = (text: string): readonly string[] =>
  text.split('\n').filter((line) => METRIC.test(line) && !OF_ENTRY.test(line) && !typed.includes(line.trim()))

it('shows no metric unit at the place Coating of a record in mil and inches', async () => {
  await page.locator('.map-grounds summary').click()
  const text = await shown()
  expect(metricLines(text)).toEqual([])
  expect(text).toMatch(/Thicker than 11\.8\u202fmil/)
  expect(text).toMatch(/[\d.]+\u202fft² mapped; [\d.]+\u202fft² not assessed/)
  const legend = await page.locator('.map-legend li').allTextContents()
  expect(legend[0]).toBe('under 2.4')
  expect(legend).toContain('11.8 to 19.7')
  expect(legend).toContain('over 78.7\u202fmil')
})

it.each([
  ['r', 'a spot'],
  ['w', 'the grid'],
  ['g', 'a gauge'],
  ['h', 'a gauge check'],
])('nor in the entry that %s opens, %s', async (key) => {
  await page.keyboard.press(key)
  await page.locator('.edit-sheet').waitFor()
  await settled(page)
  expect(metricLines(await shown())).toEqual([])
  await page.keyboard.press('Escape')
  await page.locator('.edit-sheet').waitFor({ state: 'detached' })
})
