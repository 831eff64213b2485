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

  it.each([860, 900])(
    'leave the foot of the rail in sight in a window %i high, however long their names',
    async (height) => {
      await page.setViewportSize({ width: 1440, height })
      const looks = page.locator('.rail-looks')
      expect(await looks.evaluate((all) => all.scrollHeight - all.clientHeight)).toBe(0)
      await page.evaluate(() => {
        for (const look of document.querySelectorAll('.rail-look'))
          look.append(' and all that is beside it, behind it and below')
      })
      const foot = page.locator('.rail-foot > .rail-word').last()
      expect(await foot.textContent()).toContain('Sides from the driver’s seat')
      const { bottom, scrolls } = await foot.evaluate((words) => ({
        bottom: words.getBoundingClientRect().bottom,
        scrolls: (words.closest('.rail')?.scrollHeight ?? 0) - (words.closest('.rail')?.clientHeight ?? 0),
      }))
      expect(bottom).toBeLessThanOrEqual(height)
      expect(scrolls).toBeLessThanOrEqual(0)
      await page.locator('.rail-look').last().focus()
      expect(await page.locator('.rail-look').last().isVisible()).toBe(true)
      await page.setViewportSize({ width: 1440, height: 900 })
      await page.reload()
      await page.locator('.rail-look').first().waitFor()
      await settled(page)
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
