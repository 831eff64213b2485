import type { Page } from 'playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
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
  openedPage = await openPage(startOnDemonstration, { byKeyboard: true })
  ;({ page, keyboard, faults } = openedPage)
  await goToPlace(page, '6', 'Measuring')
}, 300_000)

afterAll(() => openedPage?.close())

const view = () => askThrough(page, 'record.view', {})
const sheet = () => page.locator('.edit-sheet')
const value = () => page.locator('.picture-value')
const says = (words: string | RegExp) => page.getByText(words).first().waitFor({ timeout: 20_000 })

/** Opens a new measurement on the first photograph of the list. */
async function begin(): Promise<void> {
  await keyboard.press('p')
  await sheet().waitFor()
  await keyboard.tabTo(/^E.\d+/)
  await keyboard.press('Enter')
  await page.locator('#picture-pad').waitFor()
  await settled(page)
}

/** Presses keys on the picture; F6 leads to it and back. */
async function onPicture(...keys: readonly string[]): Promise<void> {
  await keyboard.press('F6')
  await page.waitForFunction(() => document.activeElement?.id === 'picture-pad')
  for (const key of keys) await keyboard.press(key)
  await keyboard.press('F6')
  await settled(page)
}

const times = (key: string, count: number): readonly string[] => Array.from({ length: count }, () => key)
/** A bar from A to B, and as far apart as these a distance from C to D, one coarse step below. */
const barAndDistance = [
  'Enter',
  ...times('Shift+ArrowRight', 5),
  'Enter',
  'Shift+ArrowDown',
  'Enter',
  ...times('Shift+ArrowLeft', 5),
  'Enter',
] as const

describe('measuring on a photograph', { timeout: 90_000 }, () => {
  it('a distance as long as the scale bar is as long as the bar, with an uncertainty; a nudge is one dot', async () => {
    await begin()
    await keyboard.choose(/Plane by$/, 'a scale')
    await keyboard.fill('Known length', '500')
    await keyboard.fill('Known to within', '1')
    await onPicture(...barAndDistance)
    // The same number of dots as the bar: 500 mm, whatever the picture shows.
    await value()
      .filter({ hasText: /^500(\.\d)? ± \d+(\.\d+)?.mm \(k = 2\)/ })
      .waitFor()
    await says(/picking .*· reference .*· distortion not known/)
    await onPicture('d', ...times('ArrowLeft', 10), 'Enter')
    await value()
      .filter({ hasText: /^5(0[1-9]|[1-9]\d)(\.\d)? ±/ })
      .waitFor()
    await onPicture('d', ...times('ArrowRight', 10), 'Enter')
    await value()
      .filter({ hasText: /^500(\.\d)? ±/ })
      .waitFor()
    expect(await axeViolations(page)).toEqual([])
  })

  it('what lies off the plane is said, and is not in the uncertainty', async () => {
    const before = await value().textContent()
    await keyboard.fill('Off the plane by', '20')
    await says('Off the plane: enter both how far off, and how far the camera was.')
    await keyboard.fill('Camera was off by', '2000')
    // 20 mm nearer to a camera 2 m off: about 1 % of 500 mm.
    await says(/Nearer the camera by 20 mm, it reads [45](\.\d+)?.mm too large; this is not in the uncertainty/)
    expect(await value().textContent()).toBe(before)
    await keyboard.fill('Off the plane by', '')
    await keyboard.fill('Camera was off by', '')
  })

  it('is kept with its picks, opens again, is picked anew under its number, and undone', async () => {
    const before = await view()
    await keyboard.fill('What was measured', 'Trial length')
    await keyboard.press('Control+Enter')
    await page.getByRole('heading', { name: /Measurement E/ }).waitFor()
    const kept = (await view()).exhibits.at(-1)
    expect((await view()).exhibits).toHaveLength(before.exhibits.length + 1)
    expect(kept?.measurement).toMatchObject({ what: 'Trial length', unit: 'mm' })
    expect(kept?.measurement?.value).toBeCloseTo(500, 3)
    expect(kept?.picked?.plane.kind).toBe('scale bar')
    await keyboard.press('Escape')
    await sheet().waitFor({ state: 'detached' })
    await page.locator('.register-row', { hasText: 'Trial length' }).focus()
    await keyboard.press('Enter')
    await page.locator('#picture-pad').waitFor()
    await value()
      .filter({ hasText: /^500(\.\d)? ±/ })
      .waitFor()
    await onPicture('d', ...times('Shift+ArrowLeft', 5), 'Enter')
    await value()
      .filter({ hasText: /^1.?000(\.\d)? ±/ })
      .waitFor()
    await keyboard.press('Control+Enter')
    await expect.poll(async () => (await view()).exhibits.at(-1)?.measurement?.value).toBeCloseTo(1000, 3)
    const again = (await view()).exhibits
    expect(again).toHaveLength(before.exhibits.length + 1)
    expect(again.at(-1)?.number).toBe(kept?.number)
    await keyboard.press('Control+z')
    await expect.poll(async () => (await view()).exhibits.at(-1)).toEqual(kept)
    await keyboard.press('Control+z')
    await expect.poll(async () => (await view()).exhibits).toEqual(before.exhibits)
    await keyboard.press('Escape')
    await sheet().waitFor({ state: 'detached' })
  })

  it('a rectangle of known sides gives a plane: a distance along its side is that side', async () => {
    await begin()
    await keyboard.fill('Side A to B', '600')
    await keyboard.fill('Side B to C', '400')
    await keyboard.fill('Known to within', '1')
    await onPicture(
      'Enter',
      ...times('Shift+ArrowRight', 4),
      'Enter',
      ...times('Shift+ArrowDown', 3),
      'Enter',
      ...times('Shift+ArrowLeft', 4),
      'Enter',
      // From C to D again, as E and F.
      'Enter',
      ...times('Shift+ArrowRight', 4),
      'Enter',
    )
    await value()
      .filter({ hasText: /^600(\.\d)? ± \d/ })
      .waitFor()
    expect(await axeViolations(page)).toEqual([])
  })
})

describe('what cannot be', { timeout: 90_000 }, () => {
  it('three corners on one line, a length of nothing, no uncertainty: a clear sentence, and nothing changed', async () => {
    const before = (await view()).journalNumber
    await onPicture('c', ...times('Shift+ArrowUp', 3), 'Enter')
    await says('Three of the points of the plane lie on one line: choose four that span it, as corners do.')
    await keyboard.fill('What was measured', 'Nothing')
    await keyboard.press('Control+Enter')
    await settled(page)
    expect((await view()).journalNumber).toBe(before)
    await keyboard.choose(/Plane by$/, 'a scale')
    await keyboard.fill('Known length', '0')
    await says(/The known length must be greater than nothing/)
    await keyboard.fill('Known length', '500')
    await keyboard.fill('Known to within', '')
    await says(/Enter how exactly the known length is known/)
    await keyboard.press('Control+Enter')
    await settled(page)
    expect((await view()).journalNumber).toBe(before)
    await keyboard.press('Escape')
    await sheet().waitFor({ state: 'detached' })
  })

  it('made no script error, dialog or request to another machine', () => {
    expect(faults).toEqual([])
  })
})
