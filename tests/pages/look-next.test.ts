import type { Page } from 'playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { placeList } from '../../renderer/store/place-list.ts'
import { askThrough } from './asking.ts'
import { goToPlace, settled } from './browser.ts'
import { type OpenPage, openPage } from './open-page.ts'
import { startOnDemonstration } from './started-program.ts'

let openedPage: OpenPage
let page: Page
let faults: readonly string[]

beforeAll(async () => {
  openedPage = await openPage(startOnDemonstration, { timeoutMs: 30_000 })
  ;({ page, faults } = openedPage)
}, 120_000)
afterAll(() => openedPage?.close())

describe.sequential('the three looks worth most now', () => {
  it.each(placeList.map(({ figure, name }) => ({ figure: String(figure), name })))(
    'stand in $name with their reasons, and a key leads from there to each',
    async ({ figure, name }) => {
      const looks = await askThrough(page, 'looks.next', {})
      expect(looks[0]?.tell).toBe('sedge/loom-bracket')
      for (const [at, key] of ['j', 'k', 'l'].entries()) {
        await goToPlace(page, figure, name)
        const shown = page.locator('.rail-look').nth(at)
        expect(await shown.textContent()).toContain(looks[at]?.name)
        expect(await shown.textContent()).toContain(looks[at]?.reason)
        await page.keyboard.press(`Alt+${key}`)
        const row = page.locator(`[data-tell="${looks[at]?.tell}"][aria-expanded="true"]`)
        await row.waitFor()
        await settled(page)
        // The answers of the tell are in hand, so that its keys are heard.
        expect(await page.evaluate(() => document.activeElement?.closest('.tell, [aria-label]') !== null)).toBe(true)
      }
    },
  )

  it('change once the first was looked at, and its answer tells the day and the series', async () => {
    const before = await askThrough(page, 'identity.view', { whatIf: [], chainsOf: [] })
    await goToPlace(page, '3', 'Walk-round')
    await page.keyboard.press('Alt+j')
    await page.locator('[data-tell="sedge/loom-bracket"][aria-expanded="true"]').waitFor()
    await settled(page)
    await page.keyboard.press('a')
    await expect
      .poll(async () => (await askThrough(page, 'looks.next', {}))[0]?.tell, { timeout: 20_000 })
      .not.toBe('sedge/loom-bracket')
    const after = await askThrough(page, 'identity.view', { whatIf: [], chainsOf: [] })
    const spread = (view: typeof before) =>
      view.variables
        .find(({ key }) => key === 'sedge/built')
        ?.values.reduce((sum, { now }) => (now > 0 ? sum - now * Math.log2(now) : sum), 0) ?? Number.NaN
    expect(spread(after)).toBeLessThan(spread(before))
    expect(faults).toEqual([])
  })
})
