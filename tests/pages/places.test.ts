import type { Page } from 'playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { placeList } from '../../renderer/store/place-list.ts'
import { type SheetName, sheets } from '../../shared-types/tokens.ts'
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
}, 120_000)

afterAll(() => openedPage?.close())

const sheetNames = Object.keys(sheets) as SheetName[]
/** Waits until the sheet to read on is the one that is expected after so many turns. */
async function onSheet(sheet: SheetName): Promise<void> {
  await page.waitForFunction((name) => document.documentElement.dataset.sheet === name, sheet)
  await settled(page)
}

const goTo = (figure: string, name: string) => goToPlace(page, figure, name)

/** What is cut off: text in a box that hides what runs over, or wider than the window; a drawing wider than its room. */
const cutOff = () =>
  page.evaluate(() => {
    const found: string[] = []
    if (document.documentElement.scrollWidth > window.innerWidth) {
      found.push(`the page is ${document.documentElement.scrollWidth} wide in ${window.innerWidth}`)
    }
    for (const element of document.querySelectorAll<HTMLElement>('body *')) {
      const words = [...element.childNodes].some(
        (node) => node.nodeType === Node.TEXT_NODE && node.textContent?.trim() !== '',
      )
      if (!words || element.closest('.unseen, svg, input, textarea') !== null) continue
      const style = getComputedStyle(element)
      // Words for those who do not see the page are clipped to nothing on purpose.
      if (style.clipPath === 'inset(50%)') continue
      if (style.display === 'inline' || style.visibility === 'hidden' || element.clientWidth === 0) continue
      const hides = style.overflowX === 'hidden' || style.overflowX === 'clip'
      if (hides && element.scrollWidth > element.clientWidth + 1)
        found.push(`cut: ${element.textContent?.slice(0, 60)}`)
      const box = element.getBoundingClientRect()
      const scrolls = element.closest('[data-scrolls], .scrolls')
      if (scrolls === null && (box.right > window.innerWidth + 1 || box.left < -1)) {
        found.push(`outside: ${element.textContent?.slice(0, 60)}`)
      }
    }
    for (const drawing of document.querySelectorAll<SVGElement>('svg.panel-drawing')) {
      const drawn = Number(drawing.getAttribute('width'))
      if (drawn > drawing.clientWidth + 1) found.push(`cut: a drawing of ${drawn} px in ${drawing.clientWidth}`)
    }
    return found
  })

describe.each(placeList.map(({ figure, name }) => ({ figure: String(figure), name })))('$name', ({ figure, name }) => {
  it('has nothing axe-core objects to, in a narrow window and on the paper, the night and the outdoor sheet', async () => {
    await page.setViewportSize({ width: 1024, height: 768 })
    await goTo(figure, name)
    const narrow = await axeViolations(page)
    await page.setViewportSize({ width: 1440, height: 900 })
    const found: Record<string, string[]> = { narrow }
    for (const sheet of sheetNames) {
      await onSheet(sheet)
      found[sheet] = await axeViolations(page)
      await page.keyboard.press('Alt+n')
    }
    expect(found).toEqual({ narrow: [], paper: [], night: [], outdoor: [] })
  })

  it.each([
    [1024, 768],
    [1440, 900],
    [2560, 1440],
  ])('shows its text whole, without sideways scrolling, at %i × %i on every sheet', async (width, height) => {
    await page.setViewportSize({ width, height })
    await goTo(figure, name)
    const found: Record<string, string[]> = {}
    for (const sheet of sheetNames) {
      await onSheet(sheet)
      found[sheet] = await cutOff()
      await page.keyboard.press('Alt+n')
    }
    expect(found).toEqual({ paper: [], night: [], outdoor: [] })
  })
})

describe('an open entry', () => {
  it.each([
    ['Walk-round', '3', ['m', 'p', 'f', 'e', 'r', 't', 'g']],
    ['Identity', '2', ['n', 'c', 'v', 'p', 'm']],
    ['Coating', '4', ['r', 'g', 'h']],
    ['Measuring', '6', ['m']],
    ['Putting right', '8', ['k']],
    ['Report', '9', ['i']],
  ])(
    'of %s has nothing axe-core objects to and shows its text whole at 1024 × 768 on every sheet',
    async (name, figure, keys) => {
      await page.setViewportSize({ width: 1024, height: 768 })
      await goTo(figure, name)
      for (const key of keys) {
        await page.keyboard.press(key)
        await page.locator('.edit-sheet').waitFor()
        await settled(page)
        for (const sheet of sheetNames) {
          await onSheet(sheet)
          const found = { key, sheet, violations: await axeViolations(page), cut: await cutOff() }
          expect(found).toEqual({ key, sheet, violations: [], cut: [] })
          await page.keyboard.press('Alt+n')
        }
        await page.keyboard.press('Escape')
        await page.locator('.edit-sheet').waitFor({ state: 'detached' })
        await settled(page)
      }
    },
  )

  it('the list of keys has nothing axe-core objects to', async () => {
    await page.keyboard.press('?')
    await page.getByRole('region', { name: 'Keys that work now' }).waitFor()
    expect(await axeViolations(page)).toEqual([])
    await page.keyboard.press('Escape')
  })
})

describe('a planted fault', () => {
  it('of the markup and of a colour alone is objected to, also where all else was judged before', async () => {
    await goTo('1', 'Records')
    expect(await axeViolations(page)).toEqual([])
    await page.evaluate(() => document.querySelector('#working-area')?.append(document.createElement('button')))
    expect(await axeViolations(page)).toEqual([expect.stringContaining('button-name')])
    await page.evaluate(() => document.querySelector('#working-area > button:last-child')?.remove())
    expect(await axeViolations(page)).toEqual([])
    await page.evaluate(async () => {
      const pale = await new CSSStyleSheet().replace('#working-area * { color: #eee }')
      document.adoptedStyleSheets = [...document.adoptedStyleSheets, pale]
    })
    expect(await axeViolations(page)).toEqual([expect.stringContaining('color-contrast')])
  })
})

describe('the whole page', () => {
  it('made no script error, dialog or request to another machine', () => {
    expect(faults).toEqual([])
  })
})
