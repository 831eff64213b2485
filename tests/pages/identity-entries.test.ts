import { resolve } from 'node:path'
import type { Page } from 'playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { TOUCH_TARGET_PX } from '../../shared-types/tokens.ts'
import { askThrough } from './asking.ts'
import { axeViolations } from './axe-violations.ts'
import { goToPlace, settled } from './browser.ts'
import type { Keyboard } from './keyboard.ts'
import { type OpenPage, openPage } from './open-page.ts'
import { startOnDemonstration } from './started-program.ts'

let openedPage: OpenPage
let page: Page
let keyboard: Keyboard
let faults: readonly string[]

beforeAll(async () => {
  openedPage = await openPage(startOnDemonstration, {
    viewport: { width: 1024, height: 768 },
    hasTouch: true,
    byKeyboard: true,
    timeoutMs: 60_000,
  })
  ;({ page, keyboard, faults } = openedPage)
  await goToPlace(page, '2', 'Identity')
  await page.locator('.tell-row').first().waitFor()
  await settled(page)
}, 180_000)

afterAll(() => openedPage?.close())

const view = () => askThrough(page, 'record.view', {})
const noted = async (tell: string) => (await view()).observations.find((row) => row.tell === `sedge/${tell}`) ?? null

/** Controls of the entries that a finger may miss: what they say, and their size. */
const tooSmall = () =>
  page.evaluate((least) => {
    const within = ['.tell-answer', '.claim-says', '.panel-tell', '.tell-row']
    const controls = within.flatMap((where) => [
      ...document.querySelectorAll<HTMLElement>(`${where} button, ${where} input, ${where} textarea, button${where}`),
    ])
    const shown = controls.map((control) => ({
      words: control.textContent ?? '',
      box: (control.closest('label') ?? control).getBoundingClientRect(),
      file: (control as HTMLInputElement).type === 'file',
    }))
    const sized = shown.filter(({ box, file }) => !file && box.width > 0)
    return {
      seen: sized.length,
      small: sized.filter(({ box }) => Math.min(box.width, box.height) < least - 0.5).map(({ words }) => words),
    }
  }, TOUCH_TARGET_PX)

async function stands(): Promise<void> {
  await settled(page)
  expect(await axeViolations(page)).toEqual([])
  const { seen, small } = await tooSmall()
  expect(seen).toBeGreaterThanOrEqual(4)
  expect(small).toEqual([])
}

/** Name of the tell whose answers have the focus; empty where none has. */
const tellInHand = () =>
  page.evaluate(() => document.activeElement?.closest('.tell-answer')?.querySelector('legend')?.textContent ?? '')

/** Opens a tell from its row, wherever it stands, and waits until its answers have the focus. */
async function openTell(name: string): Promise<void> {
  await page.locator('[data-tell]', { hasText: name }).focus()
  await keyboard.press('Enter')
  await expect.poll(tellInHand, { timeout: 20_000 }).toContain(name)
}

/** Waits until an answer is kept and the next tell has the focus. */
async function onToAnother(name: string): Promise<void> {
  await expect.poll(tellInHand, { timeout: 30_000 }).not.toContain(name)
  await expect.poll(tellInHand, { timeout: 30_000 }).not.toBe('')
  await settled(page)
}

/** Weights of the months as they stand on the page. */
const months = () =>
  page.evaluate(
    () =>
      [...document.querySelectorAll('.can-be')].find((block) => block.textContent?.startsWith('Built'))?.textContent ??
      '',
  )

describe.sequential('tells, answered by keyboard alone', () => {
  it('the first is opened by 1 and answered by a letter: the weights change, the next is in hand, undo restores', async () => {
    const before = await months()
    expect(before).toContain('March 1960')
    await keyboard.press('1')
    await expect.poll(tellInHand).toBe('Loom bracket on the bulkhead')
    await stands()
    expect(await page.locator('.place-figure svg').getAttribute('aria-label')).toContain('left of the heater')
    expect(await page.locator('.tell-values-drawn .value-sketch').count()).toBe(3)
    await keyboard.press('b')
    await expect
      .poll(() => noted('loom-bracket'), { timeout: 20_000 })
      .toMatchObject({ state: 'seen', value: 'one-hole' })
    await expect.poll(months, { timeout: 60_000 }).not.toBe(before)
    await onToAnother('Loom bracket on the bulkhead')
    await keyboard.press('Control+z')
    await expect.poll(() => noted('loom-bracket')).toMatchObject({ state: 'cannot be seen' })
    await expect.poll(months, { timeout: 60_000 }).toBe(before)
  }, 240_000)

  it('a press that is held, or follows at once upon the next, answers that one alone', async () => {
    const saidSoFar = async () => (await view()).observations.filter(({ state }) => state !== 'cannot be seen').length
    const before = await saidSoFar()
    await keyboard.press('1')
    await expect.poll(tellInHand).not.toBe('')
    const first = await tellInHand()
    await settled(page)
    // In the very picture in which the next stands there, its own key, its own button, and Enter held on that.
    await page.evaluate(() => {
      const inHand = () => document.activeElement?.closest('.tell-answer') ?? null
      const legend = () => inHand()?.querySelector('legend')?.textContent ?? ''
      const was = legend()
      const look = () => {
        if (legend() === was || legend() === '') {
          requestAnimationFrame(look)
          return
        }
        for (const key of ['a', 'b'])
          document.activeElement?.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }))
        inHand()?.querySelector<HTMLElement>('.tell-value')?.click()
        document.body.dataset.pressedAtOnce = 'yes'
      }
      look()
    })
    await page.keyboard.down('a')
    for (let held = 0; held < 20; held++) await page.keyboard.down('a')
    await page.locator('body[data-pressed-at-once]').waitFor({ state: 'attached' })
    await onToAnother(first)
    for (let held = 0; held < 20; held++) await page.keyboard.down('a')
    await page.keyboard.up('a')
    expect(await saidSoFar()).toBe(before + 1)
    const second = await tellInHand()
    await page.keyboard.down('Enter')
    await onToAnother(second)
    for (let held = 0; held < 20; held++) await page.keyboard.down('Enter')
    await page.keyboard.up('Enter')
    await settled(page)
    expect(await saidSoFar()).toBe(before + 2)
    for (let back = 0; back < 2; back++) {
      const said = await saidSoFar()
      await keyboard.press('Control+z')
      await expect.poll(saidSoFar).toBe(said - 1)
    }
    await settled(page)
  }, 240_000)

  it('“I think so” is said before the letter, and an exhibit is cited with it', async () => {
    await settled(page)
    await openTell('Bolts of the front seats')
    await keyboard.press('s')
    await page.getByRole('radiogroup', { name: 'How sure are you' }).waitFor()
    await stands()
    await keyboard.press('3')
    await page.getByText('how sure: 80\u202f% sure').waitFor()
    await keyboard.press('e')
    await expect.poll(() => keyboard.focusName()).toContain('Exhibits it rests on')
    await keyboard.write('4 8')
    await stands()
    await keyboard.press('Escape')
    await expect.poll(() => keyboard.focusName()).toContain('four in a row')
    await keyboard.press('b')
    await expect
      .poll(() => noted('seat-bolts'), { timeout: 20_000 })
      .toMatchObject({ state: 'believed', value: 'eight', surePercent: 80, exhibits: [4, 8] })
    await page.getByText('eight in two squares, 80 % sure').waitFor()
    await onToAnother('Bolts of the front seats')
  }, 240_000)

  it('any share of a hundred can be said afterwards', async () => {
    await openTell('Bolts of the front seats')
    await keyboard.press('s')
    await keyboard.press('5')
    await expect.poll(() => keyboard.focusName()).toContain('Sure, of a hundred')
    await keyboard.write('72')
    await keyboard.press('Enter')
    await expect.poll(() => noted('seat-bolts'), { timeout: 20_000 }).toMatchObject({ surePercent: 72, value: 'eight' })
    await onToAnother('Bolts of the front seats')
  }, 120_000)

  it('a measured value is kept with half of its expanded uncertainty, or with its standard one', async () => {
    await openTell('Stud circle of the spare wheel')
    await keyboard.press('m')
    await expect.poll(() => keyboard.focusName()).toContain('Measured, mm')
    await stands()
    await keyboard.write('98.3')
    await keyboard.press('Tab')
    await keyboard.write('0.5')
    await keyboard.press('Enter')
    await expect
      .poll(() => noted('spare-circle'), { timeout: 20_000 })
      .toMatchObject({ state: 'measured', measured: { value: 98.3, standardUncertainty: 0.25 } })
    await onToAnother('Stud circle of the spare wheel')
    await openTell('Stud circle of the spare wheel')
    await keyboard.press('m')
    await keyboard.choose(/Stated as/, 'standard')
    await keyboard.press('Control+Enter')
    await expect.poll(() => noted('spare-circle')).toMatchObject({ measured: { standardUncertainty: 0.5 } })
    await onToAnother('Stud circle of the spare wheel')
  }, 120_000)

  it('one that cannot be seen asks why, and one that was disturbed may say what disturbed it', async () => {
    await openTell('Bracket of the screen washer')
    await keyboard.press('x')
    await expect.poll(() => keyboard.focusName()).toContain('Why it cannot be seen')
    await keyboard.press('Enter')
    await page.getByText('Write why it cannot be seen').waitFor()
    expect(await noted('washer-bracket')).toBeNull()
    await stands()
    await keyboard.write('Battery in the way, no leave to lift it')
    await keyboard.press('Enter')
    await expect
      .poll(() => noted('washer-bracket'), { timeout: 20_000 })
      .toMatchObject({ state: 'cannot be seen', note: 'Battery in the way, no leave to lift it' })
    await onToAnother('Bracket of the screen washer')
    await openTell('Holes for overriders')
    await keyboard.press('y')
    await expect.poll(() => keyboard.focusName()).toContain('What disturbed it')
    await keyboard.press('Enter')
    await expect.poll(() => noted('overrider-holes')).toMatchObject({ state: 'disturbed', value: null })
    await onToAnother('Holes for overriders')
    await openTell('Holes for overriders')
    await keyboard.press('Delete')
    await expect.poll(() => noted('overrider-holes')).toBeNull()
    await settled(page)
  }, 240_000)

  it('a photograph taken in here becomes an exhibit and is cited at once', async () => {
    await settled(page)
    await openTell('Ash tray in the tunnel')
    await keyboard.press('e')
    const { length } = (await view()).exhibits
    const photograph = resolve(import.meta.dirname, '../fixtures/photographs/orientation-1.jpg')
    await page.locator('.tell-answer input[type=file]').setInputFiles(photograph)
    await page.getByText('1 of 1 photograph taken').waitFor()
    const taken = (await view()).exhibits.at(-1)
    expect(taken).toMatchObject({ kind: 'photograph', panelId: 'tunnel' })
    expect((await view()).exhibits).toHaveLength(length + 1)
    await page.getByText(`rests on E\u202f${taken?.number}`).waitFor()
    await keyboard.press('Escape')
    await page.locator('.tell-answer .tell-form').waitFor({ state: 'detached' })
    await expect.poll(tellInHand).toContain('Ash tray in the tunnel')
    await keyboard.press('a')
    await expect.poll(() => noted('ash-tray'), { timeout: 20_000 }).toMatchObject({ exhibits: [taken?.number] })
    await onToAnother('Ash tray in the tunnel')
  }, 120_000)

  it('what is tried is shown and not kept', async () => {
    await settled(page)
    const { journalNumber } = await view()
    await page.getByRole('checkbox', { name: /What if/ }).focus()
    await keyboard.press('Space')
    await openTell('Loom bracket on the bulkhead')
    await keyboard.press('b')
    await page.getByText('1 tried').waitFor()
    await onToAnother('Loom bracket on the bulkhead')
    expect((await view()).journalNumber).toBe(journalNumber)
    await page.getByRole('checkbox', { name: /What if/ }).focus()
    await keyboard.press('Space')
    await settled(page)
  }, 120_000)

  it('a number read and an observation recorded are set aside for a try, and put back with it', async () => {
    const kept = await view()
    const weights = async () => (await page.locator('.can-be').allTextContents()).join('|')
    const before = await weights()
    await page.getByRole('checkbox', { name: /What if/ }).focus()
    await keyboard.press('Space')
    const tag = page.locator('.number-read').filter({ hasText: 'B2 5519' })
    await tag.getByRole('button', { name: 'set aside' }).focus()
    await keyboard.press('Enter')
    const aside = page.getByRole('list', { name: 'Set aside' }).getByRole('listitem')
    await expect.poll(() => aside.count()).toBeGreaterThanOrEqual(1)
    await expect.poll(weights, { timeout: 60_000 }).not.toBe(before)
    await page
      .locator('.tell-said')
      .getByRole('button', { name: 'set aside' })
      .and(page.locator(':enabled'))
      .first()
      .focus()
    const numbers = await aside.count()
    await keyboard.press('Enter')
    await expect.poll(() => aside.count()).toBe(numbers + 1)
    await stands()
    for (let left = numbers; left >= 0; left -= 1) {
      await aside.getByRole('button', { name: 'put back' }).first().focus()
      await keyboard.press('Enter')
      await expect.poll(() => aside.count()).toBe(left)
    }
    await expect.poll(weights, { timeout: 60_000 }).toBe(before)
    await page.getByRole('checkbox', { name: /What if/ }).focus()
    await keyboard.press('Space')
    expect((await view()).journalNumber).toBe(kept.journalNumber)
  }, 240_000)
})

describe.sequential('a claim, in the terms of the sheet', () => {
  it('says one of several values, how reliable the claimant is, and is put to the test', async () => {
    await page.evaluate(() => (document.activeElement as HTMLElement).blur())
    await keyboard.press('c')
    await page.locator('.edit-sheet').waitFor()
    await settled(page)
    await keyboard.fill('The words, as said', 'It was always one of the dressed ones')
    await keyboard.choose(/It speaks of/, 'Series')
    await keyboard.press('Control+Enter')
    await page.getByText('Choose at least one value').waitFor()
    await expect.poll(() => keyboard.focusName()).toBe('Sedge')
    await keyboard.tabTo('Sedge Marl')
    await keyboard.press('Space')
    await keyboard.tabTo('Sedge Lantern')
    await keyboard.press('Space')
    await keyboard.choose(/How reliable/, 'mostly')
    await page.getByText('the odds of what it says rise 4 times, 6.0 decibans').waitFor()
    await stands()
    await keyboard.press('Control+Enter')
    await page.locator('.edit-sheet').waitFor({ state: 'detached' })
    expect((await view()).claims.at(-1)).toMatchObject({
      asserts: [{ sheetId: 'sedge', variable: 'series', values: ['marl', 'lantern'] }],
      reliability: 80,
      repeats: null,
    })
    await page.getByText('says Series: Sedge Marl or Sedge Lantern; 80 of 100 such statements hold').waitFor()
    await page.locator('.claim-tested', { hasText: 'dressed ones' }).getByText('contradicted').waitFor()
  }, 240_000)

  it('shows what speaks for it and against it once that is opened', async () => {
    const tested = page.locator('.claim-tested', { hasText: 'dressed ones' })
    const steps = tested.locator('.steps tr')
    expect(await steps.count()).toBe(0)
    await tested.locator('summary', { hasText: 'because' }).focus()
    await keyboard.press('Enter')
    await tested.getByText('starting odds, from counts and rules').waitFor()
    expect(await steps.count()).toBeGreaterThan(3)
    await settled(page)
    expect(await axeViolations(page)).toEqual([])
    await keyboard.press('Enter')
    await expect.poll(() => steps.count()).toBe(0)
  }, 120_000)
})

describe.sequential('on the walk-round', () => {
  it('a panel offers the tells that are looked for on it, and a key answers one there', async () => {
    await goToPlace(page, '3', 'Walk-round')
    await keyboard.press('g')
    await page.keyboard.type('bulkhead')
    await keyboard.press('Enter')
    await page.getByRole('heading', { name: 'Tells to look at here' }).waitFor()
    await stands()
    await keyboard.press('i', '3')
    await expect.poll(tellInHand).toBe('Dish in the bulkhead behind the engine')
    await stands()
    await keyboard.press('a')
    await expect.poll(() => noted('bulkhead-dish'), { timeout: 20_000 }).toMatchObject({ state: 'seen', value: 'flat' })
    await page.locator('.edit-sheet').waitFor({ state: 'detached' })
    await page.locator('.panel-tell', { hasText: 'Dish in the bulkhead' }).getByText('flat').waitFor()
  }, 120_000)

  it('nothing went wrong on the page meanwhile', () => {
    expect(faults.filter((fault) => !/ 400|Bad Request/.test(fault))).toEqual([])
  })
})
