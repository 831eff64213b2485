import type { Page } from 'playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { TOUCH_TARGET_PX } from '../../shared-types/tokens.ts'
import { goToPlace, settled } from './browser.ts'
import { type OpenPage, openPage } from './open-page.ts'
import { startOnDemonstration } from './started-program.ts'

let openedPage: OpenPage
let page: Page

beforeAll(async () => {
  openedPage = await openPage(startOnDemonstration, { viewport: { width: 1024, height: 768 }, hasTouch: true })
  ;({ page } = openedPage)
  await goToPlace(page, '3', 'Walk-round')
  await page.getByText(/in hand \d+ of/).waitFor()
}, 120_000)

afterAll(() => openedPage?.close())

/** Controls a finger may miss: each one that is shown and smaller than the least size, with its size. */
const tooSmall = () =>
  page.evaluate((least) => {
    const controls = document.querySelectorAll<HTMLElement>(
      'button, a[href], input, textarea, select, summary, [role="button"], [role="option"], tr[tabindex]',
    )
    return [...controls].flatMap((control) => {
      // A choice is taken anywhere in the words that hold it.
      const target = control.closest('label') ?? control
      const box = target.getBoundingClientRect()
      const hidden =
        box.width === 0 ||
        getComputedStyle(target).visibility === 'hidden' ||
        control.closest('svg, [aria-hidden="true"]') !== null
      if (hidden || (control as HTMLInputElement).type === 'file') return []
      const small = Math.min(box.width, box.height) < least - 0.5
      return small
        ? [`${target.textContent?.trim().slice(0, 40)}: ${box.width.toFixed(0)} × ${box.height.toFixed(0)}`]
        : []
    })
  }, TOUCH_TARGET_PX)

describe('with a finger, in the walk-round', () => {
  it('a screen that can be touched is known as one', async () => {
    expect(await page.evaluate(() => matchMedia('(any-pointer: coarse)').matches)).toBe(true)
  })

  it.each([
    [1024, 768],
    [1440, 900],
    [2560, 1440],
  ])('every control is at least 44 px high and wide at %i × %i', async (width, height) => {
    await page.setViewportSize({ width, height })
    await settled(page)
    await expect.poll(tooSmall).toEqual([])
  })

  it.each(['m', 'p', 'f', 'e', 'r', 't', 'g', 'v'])(
    'every control is at least 44 px high and wide after the key %s',
    async (key) => {
      await page.setViewportSize({ width: 1024, height: 768 })
      const opened = page.locator(key === 'v' ? '.plan-table' : '.edit-sheet')
      await page.keyboard.press(key)
      await opened.waitFor()
      await settled(page)
      await expect.poll(tooSmall).toEqual([])
      await page.keyboard.press(key === 'v' ? key : 'Escape')
      await opened.waitFor({ state: 'detached' })
      await settled(page)
    },
  )

  it('a control made too small is found', async () => {
    await page.evaluate(() => {
      for (const key of document.querySelectorAll<HTMLElement>('.sheet-steps .action-key')) key.style.minHeight = '30px'
    })
    expect((await tooSmall()).length).toBeGreaterThan(0)
  })
})
