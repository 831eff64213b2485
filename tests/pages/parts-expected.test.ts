import type { Page } from 'playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { askThrough } from './asking.ts'
import { axeViolations } from './axe-violations.ts'
import { goToPlace, settled } from './browser.ts'
import { type OpenPage, openPage } from './open-page.ts'
import { startOnDemonstration } from './started-program.ts'

let openedPage: OpenPage
let page: Page
let faults: readonly string[]

beforeAll(async () => {
  openedPage = await openPage(startOnDemonstration)
  ;({ page, faults } = openedPage)
  await goToPlace(page, '5', 'Parts')
  await page.getByText('facts suggest').first().waitFor({ timeout: 120_000 })
}, 300_000)

afterAll(() => openedPage?.close())

const row = (part: string) => page.locator(`[data-key="${part}"]`)

describe('parts against their sheet, on screen', () => {
  it('show what to expect in the table, and nothing where no sheet says', async () => {
    expect(await row('transmission').textContent()).toMatch(/later fitment\s*S4/)
    expect(await row('front-hubs').textContent()).toMatch(/not seen\s*facts suggest: right type, wrong date/)
    expect(await row('sun-visors').textContent()).toMatch(/not seen\s*one/)
  })

  it('find the gearbox by interchange with a key, and put it away with another', async () => {
    await page.keyboard.press('i')
    const section = page.getByRole('region', { name: /Interchange/ })
    await section.getByText('Van gearbox V3').first().waitFor()
    await page.keyboard.insertText('gearbox')
    await settled(page)
    expect(await section.textContent()).toMatch(/this car was not built with it; what was found is this part/)
    expect(await section.textContent()).not.toContain('Block of type L')
    expect(await axeViolations(page)).toEqual([])
    await page.keyboard.press('Escape')
    await section.waitFor({ state: 'detached' })
  })

  it('open the time line with a key and put it away with Esc, which leaves the focus where it opens', async () => {
    await page.keyboard.press('t')
    await page.locator('.dated-line').first().waitFor()
    await expect.poll(() => page.evaluate(() => document.activeElement?.closest('.dates') !== null)).toBe(true)
    await page.keyboard.press('Escape')
    await page.locator('.dated-line').first().waitFor({ state: 'detached' })
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.textContent ?? ''))
      .toContain('Open the time line')
  })

  it('say what a sample of fastenings says of all, and which to look at', async () => {
    await page.keyboard.press('b')
    const section = page.getByRole('region', { name: /Fastenings by sample/ })
    await section.getByText('nothing is known of them').waitFor()
    await section.getByLabel('Looked at').fill('9')
    await section.getByText('15 were not seen').waitFor()
    await section.getByLabel('Of those wrong').fill('10')
    await section.getByText('More was found than looked at').waitFor()
    expect(await axeViolations(page)).toEqual([])
    for (const [name, typed] of [
      ['Of those wrong', '1o'],
      ['Alike there', 'many'],
      ['Confidence', '9S'],
    ] as const) {
      const figure = section.getByLabel(name)
      const before = await figure.inputValue()
      await figure.fill(typed)
      await section.getByLabel('What is counted').focus()
      await page.keyboard.press('Control+Enter')
      expect(await figure.inputValue()).toBe(typed)
      expect(await figure.evaluate((field) => field === document.activeElement)).toBe(true)
      await section.getByText('Type a number, such as').waitFor()
      await figure.fill(before)
    }
    await section.getByLabel('Of those wrong').fill('')
    await page.keyboard.press('Control+Enter')
    await section.getByText('Write a number here, then keep the sample.').waitFor()
    await section.getByLabel('Of those wrong').fill('0')
    await page.keyboard.press('Control+Enter')
    await section.getByText('Mark what was found at the positions drawn').waitFor()
    const positions = section.getByRole('group', { name: 'look at these' }).getByRole('button')
    const drawn = await positions.count()
    for (let at = 0; at < drawn; at += 1) await positions.nth(at).press('Space')
    await positions.first().press('Space')
    await section.getByText(`1 of ${drawn} looked at`).waitFor()
    expect(await axeViolations(page)).toEqual([])
    await page.keyboard.press('Control+Enter')
    await section.waitFor({ state: 'detached' })
    const { exhibits } = await askThrough(page, 'record.view', {})
    expect(exhibits.at(-1)?.measurement).toMatchObject({ value: 1, unit: 'count', sample: { seed: 'first sample' } })
    expect(exhibits.at(-1)?.measurement?.sample?.seen).toHaveLength(drawn)
    await page.keyboard.press('Control+z')
    await expect.poll(async () => (await askThrough(page, 'record.view', {})).exhibits.length).toBe(exhibits.length - 1)
  })

  it('give the part in hand its reasons, and take a typed word while they are there', async () => {
    await row('engine-block').click()
    const sheet = page.getByRole('complementary', { name: 'Part in hand' })
    await sheet.getByText('Against the sheet').waitFor()
    const words = await sheet.textContent()
    expect(words).toMatch(/The facts suggest right type, wrong date, as you wrote/)
    expect(words).toMatch(/7 62: 1 July 1962 to 31 July 1962, later than the car/)
    expect(words).toMatch(/Counted once with/)
    await sheet.getByLabel('Marks').fill('broached across')
    expect(await sheet.getByLabel('Marks').inputValue()).toBe('broached across')
    expect(await axeViolations(page)).toEqual([])
  })

  it('stand in a register that arrows lead through, to the links of a row and back; Tab goes on behind it', async () => {
    const inHand = () =>
      page.evaluate(() => {
        const { activeElement } = document
        const key = activeElement?.closest<HTMLElement>('.register-row')?.dataset.key ?? 'outside'
        return `${key} ${activeElement?.tagName.toLowerCase()}`
      })
    const led = async (key: string, to: string | RegExp) => {
      await page.keyboard.press(key)
      await expect.poll(inHand).toMatch(to)
    }
    await row('engine-block').focus()
    await led('ArrowRight', /^engine-block button$/)
    await led('ArrowLeft', /^engine-block tr$/)
    await led('ArrowDown', /^cylinder-head tr$/)
    await led('ArrowUp', /^engine-block tr$/)
    await led('ArrowUp', /^engine-block tr$/)
    await led('End', /^(?!engine-block|outside)\S+ tr$/)
    await led('Home', /^engine-block tr$/)
    await led('ArrowDown', /^cylinder-head tr$/)
    await led('Tab', /^outside /)
    await led('Shift+Tab', /^cylinder-head tr$/)
    expect(await page.locator('tr.register-row[tabindex="0"]').count()).toBe(1)
  })

  it('count a part alone by the surveyor’s word with its reason, and as listed again', async () => {
    await row('distributor').click()
    const sheet = page.getByRole('complementary', { name: 'Part in hand' })
    await sheet.getByRole('heading', { name: 'Distributor' }).waitFor()
    const choose = async (choice: string) => {
      await sheet.getByRole('button', { name: /Counts with/ }).press('Enter')
      await page.getByRole('option', { name: choice }).click()
      await page.getByRole('listbox').waitFor({ state: 'detached' })
      await settled(page)
    }
    await choose('nothing: it came by itself')
    await page.keyboard.press('Control+Enter')
    const why = sheet.getByLabel('Why it counts so')
    await expect.poll(() => why.getAttribute('aria-invalid')).toBe('true')
    await why.fill('bought new in 1962, by the invoice')
    expect(await axeViolations(page)).toEqual([])
    await page.keyboard.press('Control+Enter')
    const kept = async () =>
      (await askThrough(page, 'record.view', {})).parts.find(({ partId }) => partId === 'distributor')?.countsWith
    await expect.poll(kept, { timeout: 20_000 }).toEqual({ set: null, reason: 'bought new in 1962, by the invoice' })
    await row('distributor').click()
    await sheet.getByText('it counts alone, by the surveyor’s word').first().waitFor({ timeout: 60_000 })
    await page.keyboard.press('Control+z')
    await expect.poll(kept, { timeout: 20_000 }).toBeNull()
  })

  it('compare a fastening with what is expected of it while it is typed', async () => {
    await row('front-side-bolts').click()
    const sheet = page.getByRole('complementary', { name: 'Part in hand' })
    const section = sheet.getByRole('region', { name: 'Fastening' })
    await section.getByText(/Differs: head hexagon, expected hexagon with washer face/).waitFor()
    await section.getByLabel('Head, found').fill('hexagon with washer face')
    await section.getByText(/Differs: plating zinc, expected cadmium. Agrees: head, drive, thread./).waitFor()
    expect(await section.textContent()).toMatch(/witness marks are disturbed/)
    expect(await axeViolations(page)).toEqual([])
    await sheet.getByRole('button', { name: 'Throw away what was typed' }).click()
  })

  it('do all this without a fault', () => {
    expect(faults).toEqual([])
  })
})
