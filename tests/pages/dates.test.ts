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
  await dates()
    .getByText(/built 27 April to|built \d+ .* 1960/)
    .first()
    .waitFor({ timeout: 120_000 })
}, 300_000)

afterAll(() => openedPage?.close())

const dates = () => page.locator('.dates')
const line = (name: string) => dates().locator('.dated-line').filter({ hasText: name }).first()

describe('the section Dates', { timeout: 90_000 }, () => {
  it('is a line until T opens it; then it has the focus, a drawing in words, and axe finds nothing', async () => {
    expect(await dates().textContent()).toMatch(/one conflict/)
    expect(await page.locator('.time-line').count()).toBe(0)
    await page.keyboard.press('t')
    const drawing = page.locator('.time-line-drawing[role="img"]')
    await drawing.waitFor()
    await settled(page)
    expect(await drawing.getAttribute('aria-label')).toMatch(
      /^Time line of \d+ dated things\. Car built: .*Conflict 1: /,
    )
    expect(await page.evaluate(() => document.activeElement?.closest('.dates') !== null)).toBe(true)
    expect(await axeViolations(page)).toEqual([])
  })

  it.each([
    [1440, 900],
    [1024, 768],
  ])('has its words whole at %i by %i: none runs into the next column or off the drawing', async (width, height) => {
    await page.setViewportSize({ width, height })
    await settled(page)
    const wide = await page.locator('.time-line-drawing[role="img"]').evaluate((svg) => {
      const frame = svg.getBoundingClientRect()
      const boxes = [...svg.querySelectorAll('tspan')].map((span) => ({
        text: span.textContent ?? '',
        figures: span.parentElement?.classList.contains('is-figures') ?? false,
        right: span.getBoundingClientRect().right - frame.left,
        left: span.getBoundingClientRect().left - frame.left,
      }))
      const columns = boxes.filter(({ figures, text }) => figures && text !== '').map(({ left }) => left)
      const axis = [...svg.querySelectorAll('.time-ink')].map((path) => path.getBoundingClientRect().left - frame.left)
      const [beside, from] = [Math.min(...columns), Math.min(...axis)]
      return boxes.filter(({ figures, right }) => right > (figures ? from : beside)).map(({ text }) => text)
    })
    expect(wide).toEqual([])
    const told = await page.locator('.time-line-drawing[role="img"]').textContent()
    expect(told?.replaceAll(' ', '')).toContain('print460onthewrap')
  })

  it('explains a conflict: the fewest things that cannot all be, each with its source, and the ways out', async () => {
    await page.setViewportSize({ width: 1440, height: 900 })
    const conflict = dates().locator('.date-conflict')
    const words = (await conflict.textContent()) ?? ''
    expect(words).toMatch(/these cannot all be so/)
    expect(words).toMatch(/Cylinder block: “7 62”, July 1962/)
    expect(words).toMatch(/such parts travel together, so this is no further witness/)
    expect(words).toMatch(/ways out.*C 2 does not hold/)
    // Shown as few: three steps or four, not every date of the car.
    expect(await conflict.locator('.chain-steps').first().locator('li').count()).toBeLessThan(6)
  })

  it('opens what a line rests on, and arrows go from line to line', async () => {
    await line('Cylinder block').focus()
    await page.keyboard.press('Enter')
    await dates()
      .locator('.dated-chain')
      .getByText(/it came later, whatever its type/)
      .first()
      .waitFor()
    await page.keyboard.press('Enter')
    await page.keyboard.press('ArrowDown')
    const lineInHand = () => page.evaluate(() => document.activeElement?.closest('.dated-line')?.textContent ?? '')
    await expect.poll(lineInHand).not.toMatch(/^$|Cylinder block/)
  })

  it('reads a tyre code by the weeks of 49 CFR 574.5, and says when it cannot be', async () => {
    const { parts } = await askThrough(page, 'record.view', {})
    const tyres = parts.find(({ partId }) => partId.startsWith('tyre'))
    if (tyres === undefined) throw new Error('The demonstration has no tyres.')
    const asRead = async (dateAsRead: string) => {
      await askThrough(page, 'part.set', { entry: { ...tyres, dateAsRead } })
      await settled(page)
    }
    await asRead('0109')
    // The example of the rule: 0109 is Sunday 4 January 2009 to Saturday 10 January 2009.
    await line('Tyre')
      .getByText(/4 January to 10 January 2009/)
      .first()
      .waitFor()
    await asRead('5301')
    await dates().locator('.unread-date').filter({ hasText: '5301' }).getByText(/week/).first().waitFor()
    await askThrough(page, 'part.set', { entry: tyres })
    await settled(page)
  })

  it('closes again with T', async () => {
    await page.keyboard.press('t')
    await page.locator('.time-line').waitFor({ state: 'detached' })
  })

  it('did all this without a fault', () => {
    expect(faults).toEqual([])
  })
})
