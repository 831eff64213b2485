import type { Page } from 'playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { goToPlace } from './browser.ts'
import { type OpenPage, openPage } from './open-page.ts'
import { startOnDemonstration } from './started-program.ts'

let openedPage: OpenPage
let page: Page
let faults: readonly string[]

beforeAll(async () => {
  openedPage = await openPage(startOnDemonstration, { timeoutMs: 60_000 })
  ;({ page, faults } = openedPage)
}, 300_000)

afterAll(() => openedPage?.close())

const words = async (): Promise<string> => ((await page.getByRole('main').textContent()) ?? '').replaceAll(/\s+/g, ' ')
const row = (part: string) => page.locator(`[data-key="${part}"]`)

/** What the demonstration car argues of its parts, dates and sizes, place by place, as somebody sees it. */
describe.sequential('the demonstration car on screen', () => {
  it('finds its gearbox of another line by interchange under Parts', async () => {
    await goToPlace(page, '5', 'Parts')
    await page.getByText('facts suggest').first().waitFor({ timeout: 120_000 })
    await page.keyboard.press('i')
    const section = page.getByRole('region', { name: /Interchange/ })
    await section.getByText('Van gearbox V3').first().waitFor()
    await page.keyboard.press('Escape')
    await section.waitFor({ state: 'detached' })
  })

  it('draws the time line with its one conflict', async () => {
    await page.keyboard.press('t')
    const conflict = page.locator('.date-conflict')
    await conflict.first().waitFor()
    expect(await conflict.count()).toBe(1)
    expect(await conflict.textContent()).toMatch(/Cylinder block: “7 62”, July 1962/)
  })

  it('shows its engine of the wrong date and its contradicted badge, each with its reasons', async () => {
    await row('emblems').click()
    const sheet = page.getByRole('complementary', { name: 'Part in hand' })
    await sheet.getByText('Against the sheet').waitFor()
    expect(await sheet.textContent()).toMatch(/“Lantern”/)
    await row('engine-block').click()
    await sheet.getByText(/The facts suggest right type, wrong date/).waitFor()
  })

  it('lists the stud circle with its tie and the photograph measured under Measuring', async () => {
    await goToPlace(page, '6', 'Measuring')
    await page.getByText('Spacing of the wiper spindles').first().waitFor()
    const text = await words()
    expect(text).toMatch(/Stud circle, spare wheel/)
    expect(text).toMatch(/98\.4\d* ± 0\.\d+ mm/)
    expect(text).toMatch(/348(\.\d)? ± \d(\.\d)? mm/)
  })

  it('weighs the shares under Judgement by the program’s own weights until others are set', async () => {
    await goToPlace(page, '7', 'Judgement')
    await page.getByRole('heading', { name: 'Weights' }).waitFor()
    expect(await words()).toContain('Charter of Turin')
  })

  it('says under Identity that the format of 17 characters does not apply to a car of 1960', async () => {
    await goToPlace(page, '2', 'Identity')
    await page.getByText(/it does not apply to a car built by/).waitFor()
    expect(await words()).not.toMatch(/forged/i)
  })

  it('does all this without a fault', () => {
    expect(faults).toEqual([])
  })
})
