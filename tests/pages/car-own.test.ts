import type { Page } from 'playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { askThrough } from './asking.ts'
import { axeViolations } from './axe-violations.ts'
import { goToPlace, settled } from './browser.ts'
import type { Keyboard } from './keyboard.ts'
import { type OpenPage, openPage } from './open-page.ts'
import { startEmpty } from './started-program.ts'

let openedPage: OpenPage
let page: Page
let keyboard: Keyboard
let faults: readonly string[]

beforeAll(async () => {
  openedPage = await openPage(startEmpty, {
    viewport: { width: 1024, height: 768 },
    byKeyboard: true,
    timeoutMs: 15_000,
  })
  ;({ page, keyboard, faults } = openedPage)
})

afterAll(() => openedPage?.close())

/** Controls of the two sections that are less high than a finger needs, CSS pixels. */
const smallTargets = () =>
  page.evaluate(() => {
    const controls = document.querySelectorAll<HTMLElement>(
      '.car-own .yes-no, .car-own .field-input, .car-own-fold > summary',
    )
    const found = [...controls].map(
      (control) => [control.textContent ?? '', control.getBoundingClientRect().height] as const,
    )
    return { seen: found.length, small: found.filter(([, height]) => height < 44) }
  })

const particulars = async () => (await askThrough(page, 'record.view', {})).particulars

describe.sequential('what a car has and measures, by keyboard alone', () => {
  it('is entered when a record begins, shown as cars of the body usually are until then', async () => {
    await goToPlace(page, '1', 'Records')
    await keyboard.press('n')
    await page.getByRole('radiogroup', { name: 'Level of inspection' }).waitFor()
    await keyboard.press('p')
    await keyboard.fill('Title', 'Sedge coupé, 1960')
    await keyboard.fill('Who examines', 'An examiner')
    await keyboard.tabTo('Opening roof panel')
    await keyboard.press('Space')
    await keyboard.tabTo('none given')
    await keyboard.press('Enter')
    await keyboard.fill('Overall length', '9000')
    await settled(page)
    expect(await axeViolations(page)).toEqual([])
    const { seen, small } = await smallTargets()
    expect(seen).toBeGreaterThan(20)
    expect(small).toEqual([])
    await keyboard.press('Control+Enter')
    await page
      .getByText(/Overall length, 9000 mm, lies outside/)
      .first()
      .waitFor()
    await page.keyboard.press('Control+a')
    await page.keyboard.insertText('4300')
    await keyboard.press('Control+Enter')
    await page.waitForFunction(() => document.title.startsWith('Identity'))
    expect(await particulars()).toMatchObject({
      conditions: ['pillared', 'filler-flap.R', 'fixed-rear-side-window', 'sunroof', 'spare-well'],
      dimensions: { lengthMm: 4300 },
    })
  })

  it('is amended in Identity, and the walk and the plan follow', async () => {
    const plans: unknown[] = []
    page.on('request', (request) => {
      if (request.url().endsWith('/ask/figures.plan')) plans.push(JSON.parse(request.postData() ?? '{}'))
    })
    await goToPlace(page, '2', 'Identity')
    await page.getByText('Overall length 4\u202f300\u202fmm').waitFor()
    await keyboard.press('p')
    await page.locator('.edit-sheet').waitFor()
    await page.locator('.edit-sheet').getByText('Fuel filler flap').first().waitFor()
    await settled(page)
    await keyboard.choose(/Fuel filler flap/, 'on the left')
    await keyboard.fill('Wheelbase', '2540')
    await settled(page)
    expect(await axeViolations(page)).toEqual([])
    expect((await smallTargets()).small).toEqual([])
    await keyboard.press('Control+Enter')
    await page.locator('.edit-sheet').waitFor({ state: 'detached' })
    const { conditions, dimensions } = await particulars()
    expect(dimensions).toEqual({ lengthMm: 4300, wheelbaseMm: 2540 })
    expect(conditions).toContain('filler-flap.L')
    expect(conditions).not.toContain('filler-flap.R')
    await goToPlace(page, '3', 'Walk-round')
    await settled(page)
    expect(plans.at(-1)).toEqual({ body: 'coupe', names: 'uk', dimensions, conditions, lengthUnit: 'mm' })
    expect(faults.filter((fault) => !/ 400|Bad Request/.test(fault))).toEqual([])
  })
})
