import type { Page } from 'playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { askThrough } from './asking.ts'
import { axeViolations } from './axe-violations.ts'
import { goToPlace, settled } from './browser.ts'
import { Keyboard } from './keyboard.ts'
import { type OpenPage, openPage } from './open-page.ts'
import { startOnDemonstration } from './started-program.ts'

let openedPage: OpenPage
let page: Page
let faults: readonly string[]

beforeAll(async () => {
  openedPage = await openPage(startOnDemonstration)
  ;({ page, faults } = openedPage)
  await goToPlace(page, '7', 'Judgement')
  await page.getByRole('heading', { name: 'Weights' }).waitFor({ timeout: 60_000 })
}, 300_000)

afterAll(() => openedPage?.close())

const section = () => page.getByRole('region', { name: 'Weights' })

describe.sequential('a weight of the user’s own', () => {
  it('is set by keys alone, and the shares follow it with the ones without it beside them', async () => {
    const keys = new Keyboard(page)
    const before = await askThrough(page, 'judgement.view', {})
    expect(await section().textContent()).toContain('None is set')
    const tables = page.locator('.state-tables').first()
    expect(await tables.textContent()).toMatch(/leaves filler over metal open.*there original metal ends lower\.$/)
    await page.keyboard.press('w')
    const sheet = page.getByRole('region', { name: 'A weight' })
    await sheet.getByText('how many times it counts').waitFor()
    await keys.press('Control+Enter')
    await sheet.getByText('Choose what this weight is for.').waitFor()
    await keys.press('Tab', 'Enter')
    await page.getByRole('option', { name: 'Left side' }).waitFor()
    await keys.press('End', 'Enter', 'Tab')
    await keys.write('2.5')
    await keys.press('Tab')
    await keys.write('the side the buyer asks about')
    expect(await axeViolations(page)).toEqual([])
    await keys.press('Control+Enter')
    await sheet.waitFor({ state: 'detached' })
    await section().getByText('× 2.5').waitFor()
    await tables.getByText('The bars count with the weights set; the table counts by area alone.').waitFor()
    const after = await askThrough(page, 'judgement.view', {})
    expect(after.unweighed?.originalMetal.highPercent).toBeCloseTo(before.whole.originalMetal.highPercent, 9)
    expect(after.whole.originalMetal).not.toEqual(before.whole.originalMetal)
    expect(await section().textContent()).toMatch(
      /set by .+2026|set by .+\d{4}, \d\d:\d\d: the side the buyer asks about/,
    )
    expect(await section().textContent()).toContain('Without them the whole car stands at')
    expect(await axeViolations(page)).toEqual([])
  })

  it('is amended and withdrawn, and each step is undone', async () => {
    await section().getByRole('button', { name: /× 2.5/ }).click()
    const sheet = page.getByRole('region', { name: 'Weight', exact: true })
    await sheet.getByLabel('Weight, times').fill('4')
    await page.keyboard.press('Control+Enter')
    await section().getByText('× 4').waitFor()
    await section().getByRole('button', { name: /× 4/ }).click()
    await sheet.getByRole('button', { name: /Withdraw/ }).click()
    await section().getByText('None is set').waitFor()
    await page.keyboard.press('Control+z')
    await section().getByText('× 4').waitFor()
    await settled(page)
    await page.keyboard.press('Control+z')
    await section().getByText('× 2.5').waitFor()
    await settled(page)
    await page.keyboard.press('Control+z')
    await section().getByText('None is set').waitFor()
  })

  it('does all this without a fault', () => {
    expect(faults).toEqual([])
  })
})
