import type { Page } from 'playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { placeList } from '../../renderer/store/place-list.ts'
import { METRIC, withoutTyped } from '../use-cases/shown-units.ts'
import { askThrough } from './asking.ts'
import { goToPlace, settled } from './browser.ts'
import { type OpenPage, openPage } from './open-page.ts'
import { startOnDemonstration } from './started-program.ts'

let openedPage: OpenPage
let page: Page
let ownWords: (text: string) => string

beforeAll(async () => {
  openedPage = await openPage(startOnDemonstration, { timeoutMs: 30_000, reducedMotion: 'reduce' })
  ;({ page } = openedPage)
  const view = await askThrough(page, 'record.view', {})
  ownWords = withoutTyped(view)
  await askThrough(page, 'commission.set', { commission: { ...view.commission, coatingUnit: 'mil', lengthUnit: 'in' } })
  await page.reload()
  await page.getByRole('navigation', { name: 'Places' }).waitFor()
}, 180_000)
afterAll(() => openedPage?.close())

const view = () => askThrough(page, 'record.view', {})

/** Every text, spoken name and typed value of the page. */
const shown = (): Promise<readonly string[]> =>
  page.evaluate(() => {
    const found: string[] = []
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
    for (let node = texts.nextNode(); node !== null; node = texts.nextNode()) {
      // A list that is not open holds every choice there is, for the browser's own filling in.
      if (node.parentElement?.tagName !== 'OPTION') found.push(node.textContent ?? '')
    }
    for (const named of document.querySelectorAll('[aria-label]')) found.push(named.getAttribute('aria-label') ?? '')
    return found
  })

/** Names of things, and words kept as they were written on another day. */
const STAYS: readonly RegExp[] = [
  // The size of the sheet A4 (ISO 216).
  /^210 × 297 mm$/,
  // How a photograph was measured, in the units the record had that day; opened again it is told anew.
  /^plane by known points, .*standard uncertainty of picking/,
  // The unit somebody chose or read in on another day, as the journal has it.
  /^(µm|mm)$|\bentered in µm\b/,
]
/** What the page itself says in a metric unit. */
const metricWords = async (): Promise<readonly string[]> =>
  (await shown()).filter((text) => METRIC.test(ownWords(text)) && !STAYS.some((name) => name.test(text.trim())))

const openAll = () =>
  page.evaluate(() => {
    for (const folded of document.querySelectorAll<HTMLDetailsElement>('#working-area details')) folded.open = true
    const closed = document.querySelectorAll<HTMLElement>('#working-area button[aria-expanded="false"]')
    for (const button of closed) if (!button.hasAttribute('aria-haspopup')) button.click()
  })

describe('a record in mil and inches', () => {
  it.each(placeList.filter(({ id }) => id !== 'records').map(({ figure, name }) => ({ figure, name })))(
    'shows no metric unit at the place $name but in what a person or a source wrote',
    async ({ figure, name }) => {
      await goToPlace(page, figure, name)
      await page.locator('#working-area section, #working-area table').first().waitFor()
      expect(await metricWords()).toEqual([])
      await openAll()
      await settled(page)
      expect(await metricWords()).toEqual([])
    },
  )

  it.each([
    ['3', 'Walk-round', 'f', /arrows 1\/2 in \(Shift 5\)/],
    ['6', 'Measuring', 'm', /kept as the metric value/],
    ['6', 'Measuring', 'u', /Paint, mil/],
    ['6', 'Measuring', 'd', /Nominal and wear limit, in/],
    ['6', 'Measuring', 'p', /Side A to B, in/],
  ])('nor at %s, %s, in the entry that %s opens', async (figure, name, key, says) => {
    await goToPlace(page, figure, name)
    await page.keyboard.press(key)
    await page.locator('.edit-sheet, .walk-entry, form').filter({ hasText: says }).first().waitFor()
    await settled(page)
    expect(await metricWords()).toEqual([])
    await page.keyboard.press('Escape')
    await settled(page)
  })
})

describe('what is typed in inches', () => {
  const open = async (figure: string, name: string, key: string) => {
    await goToPlace(page, figure, name)
    await page.keyboard.press(key)
    await page.locator('.edit-sheet').waitFor()
    await settled(page)
  }
  const keep = async () => {
    await page.keyboard.press('Control+Enter')
    await page.locator('.edit-sheet').waitFor({ state: 'detached' })
    await settled(page)
  }

  it('by hand is kept in millimetres, and comes back as it was typed', async () => {
    await open('6', 'Measuring', 'm')
    await page.getByLabel('What was measured').fill('Height of the sill')
    await page.getByLabel('Value').fill('13 3/4')
    await page.getByLabel('Uncertainty U').fill('0.05')
    await keep()
    const kept = (await view()).exhibits.at(-1)?.measurement
    // 13.75 × 25.4 and 0.05 × 25.4.
    expect(kept).toMatchObject({ value: 349.25, uncertainty: 1.27, unit: 'mm' })
    const row = page.getByRole('row', { name: /Height of the sill/ })
    expect(await row.textContent()).toMatch(/13\.75 ± 0\.05\sin \(k = 2\)/)
    await row.press('Enter')
    await page.locator('.edit-sheet').waitFor()
    expect(await page.getByLabel('Value').inputValue()).toBe('13.75')
    await page.getByLabel('What was measured').fill('Height of the left sill')
    await keep()
    expect((await view()).exhibits.at(-1)?.measurement).toMatchObject({ value: 349.25, uncertainty: 1.27, unit: 'mm' })
  })

  it('on the readings of a sheet is kept in millimetres and micrometres', async () => {
    await open('6', 'Measuring', 'u')
    for (const [label, text] of [
      ['Travel time, µs', '0.5'],
      ['u of the time, µs', '0.005'],
      ['Nominal, in', '0.048'],
      ['Paint, mil', '4.25'],
      ['u of the paint, mil', '0.4'],
    ] as const)
      await page.getByLabel(label, { exact: true }).fill(text)
    await page
      .locator('.tape-result')
      .filter({ hasText: /4\.25\smil taken for metal/ })
      .waitFor()
    await keep()
    const taken = (await view()).exhibits.at(-1)?.measurement?.taken
    // 4.25 × 25.4, 0.4 × 25.4 and 0.048 × 25.4.
    expect(taken?.question).toMatchObject({ paintUm: 107.95, uPaintUm: 10.16, nominalMm: 1.2192 })
  })

  it('at the ends of a cut is shown to a hundredth, and stays as it was typed', async () => {
    await goToPlace(page, '4', 'Coating')
    await page.getByRole('button', { name: /Left front wing/ }).click()
    await page.locator('.cut-drawing[role="img"]').waitFor({ timeout: 60_000 })
    const places = page.getByLabel(/^(First|Second) end, (across|down), in$/)
    expect(await places.count()).toBe(4)
    for (const place of await places.all()) expect(await place.inputValue()).toMatch(/^\d+(\.\d{1,2})?$/)
    const was = await page.locator('.cut-middle').first().getAttribute('d')
    await page.getByLabel('First end, across, in').pressSequentially('1')
    await page.getByLabel('First end, across, in').fill('12.345')
    await page.waitForFunction((old) => document.querySelector('.cut-middle')?.getAttribute('d') !== old, was)
    expect(await page.getByLabel('First end, across, in').inputValue()).toBe('12.345')
  })

  it('of a gauge check tells two micrometres apart', async () => {
    await goToPlace(page, '6', 'Measuring')
    await open('4', 'Coating', 'h')
    await page.getByLabel('Shim, mil').fill('4')
    await page.getByLabel('Read, mil').fill('4.08 4.08')
    await keep()
    // 4 × 25.4 and 4.08 × 25.4.
    expect((await view()).gaugeChecks.at(-1)).toMatchObject({ shimUm: 101.6 })
    expect((await view()).gaugeChecks.at(-1)?.readUm[0]).toBeCloseTo(103.632, 6)
    const line = page.locator('.check-line').last()
    expect(await line.textContent()).toMatch(/shim 4\.00\smil: \+0\.08\smil.*of 0\.\d\d\smil/)
  })
})
