import type { Page } from 'playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { placeList } from '../../renderer/store/place-list.ts'
import { settled, watch } from './browser.ts'
import { type OpenPage, openPage } from './open-page.ts'
import { type StartedProgram, startEmpty } from './started-program.ts'

let program: StartedProgram
let openedPage: OpenPage
let page: Page

beforeAll(async () => {
  openedPage = await openPage(startEmpty)
  ;({ program, page } = openedPage)
  await settled(page)
}, 120_000)

afterAll(() => openedPage?.close())

/** Visits a place with the code of the program held back, or not. */
async function visit(place: string, heldBack: boolean): Promise<void> {
  await page.unrouteAll()
  if (heldBack) await page.route(/assets\/begin-/, () => undefined)
  await page.goto('about:blank')
  await page.goto(`${new URL(program.address).origin}/#${place}`, { waitUntil: 'commit' })
  await page.locator(heldBack ? '.program[inert]' : '.program:not([inert])').waitFor()
  // A browser paints nothing before its style sheets have come, so until then nothing stands anywhere.
  await page.waitForFunction(() => {
    const links = [...document.querySelectorAll<HTMLLinkElement>('link[rel="stylesheet"]')]
    return links.length > 0 && links.every((link) => link.sheet !== null)
  })
  await page.evaluate(() => document.fonts.ready)
}

/** Where everything of the rail stands, with its colour, and the outlines of the working area; no record is open. */
const frame = () =>
  page.evaluate(() =>
    [...document.querySelectorAll('.rail *, .head-line, .working-area')].map((element) => {
      const { x, y, width, height } = element.getBoundingClientRect()
      const { color, fontWeight } = getComputedStyle(element)
      return [element.tagName, x, y, width, height, color, fontWeight].join(' ')
    }),
  )

describe('the first frame', () => {
  it.each(['records', 'report'])('of %s stands where the program then stands, on paper and at night', async (place) => {
    const { faults } = watch(page)
    for (const sheet of ['night', 'paper']) {
      await page.evaluate((name) => localStorage.setItem('witnessmark.sheet', name), sheet)
      await visit(place, true)
      const first = await frame()
      expect(await page.locator('.rail-row[aria-current]').allTextContents()).toEqual([
        expect.stringContaining(placeList.find(({ id }) => id === place)?.name ?? 'none'),
      ])
      await visit(place, false)
      await settled(page)
      expect(first.length).toBeGreaterThan(50)
      expect(await frame()).toEqual(first)
    }
    expect(faults).toEqual([])
  })

  it('says nothing of a record, takes no focus and is untold until the program hears', async () => {
    await visit('records', true)
    expect(await page.locator('.head-line').textContent()).toBe('')
    expect(await page.getByRole('button').count()).toBe(0)
    await page.keyboard.press('Tab')
    expect(await page.evaluate(() => document.activeElement === document.body)).toBe(true)
  })

  it('begins the program though the page is not seen and draws no frame', async () => {
    await page.unrouteAll()
    const unseen = await page.context().newPage()
    await unseen.addInitScript(() => Object.assign(window, { requestAnimationFrame: () => 0 }))
    await unseen.goto(`${new URL(program.address).origin}/`)
    await unseen.getByRole('navigation', { name: 'Places' }).waitFor()
    await unseen.close()
  })
})
