import type { Page } from 'playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { askThrough } from './asking.ts'
import { goToPlace, settled } from './browser.ts'
import type { Keyboard } from './keyboard.ts'
import { type OpenPage, openPage } from './open-page.ts'
import { startEmpty } from './started-program.ts'
import { stepsInOrder } from './steps-in-order.ts'

/** A door with filler in its lower rear corner, as three readings called out at each place of the grid. */
const calledOut = (at: { u: number; v: number }): string =>
  at.u > 2150 && at.v > -520 ? '980 1010 995' : '118 122 120'

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

stepsInOrder()

const view = () => askThrough(page, 'record.view', {})
const grid = () => askThrough(page, 'coating.grid', { panelId: 'front-door.L' })

async function opened(key: string): Promise<void> {
  await keyboard.press(key)
  await page.locator('.edit-sheet').waitFor()
  await page.waitForFunction(() => document.activeElement?.closest('.edit-sheet') !== null)
  await settled(page)
}
async function kept(): Promise<void> {
  await keyboard.press('Control+Enter')
  await page.locator('.edit-sheet').waitFor({ state: 'detached' })
  await settled(page)
}

describe.sequential('a newcomer with a gauge maps one door by keyboard alone', () => {
  it('begins a record', async () => {
    await goToPlace(page, '1', 'Records')
    await page.getByRole('button', { name: 'new record' }).waitFor()
    await keyboard.press('n')
    await page.getByRole('radiogroup', { name: 'Level of inspection' }).waitFor()
    await keyboard.press('o')
    await keyboard.fill('Title', 'A coupé')
    await keyboard.fill('Who examines', 'A newcomer')
    await keyboard.press('Control+Enter')
    await page.waitForFunction(() => document.title.startsWith('Identity'))
  })

  it('is told on the empty place what to do first, and adds a gauge by its name alone', async () => {
    await goToPlace(page, '4', 'Coating')
    await expect(page.locator('#working-area').textContent()).resolves.toMatch(/W.*walk.*grid/i)
    await opened('g')
    await keyboard.write('Borrowed gauge')
    await kept()
    expect((await view()).gauges).toMatchObject([{ name: 'Borrowed gauge', principle: 'magnetic induction' }])
  })

  it('checks it on bare metal and a shim', async () => {
    for (const [shim, read] of [
      ['0', '1 0 1'],
      ['125', '126 124 125'],
    ] as const) {
      await opened('h')
      await keyboard.fill('Shim', shim)
      await keyboard.fill('Read', read)
      await kept()
    }
    expect((await view()).gaugeChecks).toHaveLength(2)
  })

  it('chooses the door, and is called to one place after the other, each shown on the panel', async () => {
    await opened('w')
    await keyboard.tabTo(/Panel$/)
    await page.keyboard.type('Left door', { delay: 40 })
    await page.getByRole('heading', { name: 'Grid of Left door' }).waitFor()
    await page
      .locator('.grid-next')
      .filter({ hasText: /Next: place 1 of \d+/ })
      .waitFor()
    const { places } = await grid()
    expect(places.length).toBeGreaterThanOrEqual(20)
    await keyboard.tabTo(/^Values, µm/)
    for (const [index, place] of places.entries()) {
      await page
        .locator('.grid-next')
        .filter({ hasText: `Next: place ${index + 1} of` })
        .waitFor()
      await keyboard.write(calledOut(place.at))
      await keyboard.press('Enter')
      await page
        .locator('.edit-sheet')
        .filter({ hasText: `${index + 1} of ${places.length} places read` })
        .waitFor()
    }
    await page.locator('.grid-next').filter({ hasText: 'Every place is read' }).waitFor()
    expect((await view()).spots).toHaveLength(places.length)
  })

  it('says before the first reading what the gauge reads over steel', async () => {
    const lines = page.getByRole('list', { name: 'What the gauge reads there' })
    await expect(lines.textContent()).resolves.toMatch(/In magnetic mode/)
  })

  it('gets a map that shows the filler where it was read, with its area and where to read next', async () => {
    await keyboard.press('Escape')
    await page.locator('.edit-sheet').waitFor({ state: 'detached' })
    // Each reading asked for a map of its own; the last is there when all before it have been computed.
    await page.locator('#working-area').filter({ hasText: 'Thicker than 300 µm' }).waitFor({ timeout: 60_000 })
    await page.locator('.coating-map').waitFor()
    await settled(page)
    const text = ((await page.locator('#working-area').textContent()) ?? '').replaceAll(/[\u00a0\u202f]/g, ' ')
    expect(text).toMatch(/Left door/)
    expect(text).toMatch(/Thicker than 300 µm[\d.]+ m² \([\d.]+ to [\d.]+/)
    expect(text).toMatch(/Read next: a/)
    const map = await askThrough(page, 'coating.map', { panelId: 'front-door.L' })
    expect(map.problem).toBeNull()
    expect(map.fillerArea?.low).toBeGreaterThan(0)
    expect(map.fillerArea?.high).toBeLessThan(map.assessedM2 / 2)
    expect(faults).toEqual([])
  })
})
