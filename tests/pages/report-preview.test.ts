import type { Page, Route } from 'playwright'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { beginning } from '../record/sample-record.ts'
import { askThrough } from './asking.ts'
import { goToPlace, settled } from './browser.ts'
import { type OpenPage, openPage } from './open-page.ts'
import { startEmpty } from './started-program.ts'

let openedPage: OpenPage
let page: Page
let faults: readonly string[]

/** What the page itself asked for since the test began: papers of previews, and ends of tasks. */
const asked: string[] = []
/** Set while a test keeps previews waiting: those that wait. */
let waiting: Route[] | null = null

beforeAll(async () => {
  openedPage = await openPage(startEmpty, { timeoutMs: 60_000 })
  ;({ page, faults } = openedPage)
  const { particulars, commission, visit } = beginning
  await askThrough(page, 'records.create', { fileName: 'previewed', particulars, commission, visit })
  await page.reload()
  await page.getByRole('navigation', { name: 'Places' }).waitFor()
  await page.route(/\/ask\/(report\.preview|task\.cancel)$/, async (route) => {
    const name = route.request().url().split('/').at(-1)
    const { paper } = route.request().postDataJSON() as { readonly paper?: string }
    asked.push(paper === undefined ? `${name}` : `${name} ${paper}`)
    if (waiting === null || paper === undefined) await route.continue()
    else waiting.push(route)
  })
}, 120_000)
afterAll(() => openedPage?.close())

beforeEach(async () => {
  await goToPlace(page, '1', 'Records')
  asked.length = 0
})

/** Longer than the place rests before it makes a preview, by the page's own clock. */
const rest = () => page.evaluate(() => new Promise((done) => setTimeout(done, 900)))
/** Opens the place and presses a key there after too short a rest, by the page's own clock: a busy machine holds up both. */
const throughReport = (key: string, alt: boolean) =>
  page.evaluate(
    async ([then, withAlt]) => {
      const press = (pressed: string, altKey: boolean) =>
        document.body.dispatchEvent(
          new KeyboardEvent('keydown', { key: pressed, altKey, bubbles: true, cancelable: true }),
        )
      press('9', true)
      while (document.querySelector('#working-area > h1')?.textContent !== 'Report')
        await new Promise((done) => setTimeout(done))
      await new Promise((done) => setTimeout(done, 300))
      press(then, withAlt)
    },
    [key, alt] as const,
  )
const pages = () => page.locator('canvas.pdf-page')
const status = () => page.getByRole('region', { name: 'Preview' }).getByRole('status')
/** The open record becomes another state of itself, as from another window. */
const amend = async (client: string) => {
  const { commission } = await askThrough(page, 'record.view', {})
  await askThrough(page, 'commission.set', { commission: { ...commission, client } })
}

describe.sequential('the preview', () => {
  it('is not made for somebody who only passes through, nor while an edition is being issued, which says what it would be issued without', async () => {
    await throughReport('0', true)
    await goToPlace(page, '0', 'History')
    await rest()
    expect(asked).toEqual([])
    await throughReport('i', false)
    await page.locator('.edit-sheet').waitFor()
    await rest()
    expect(asked).toEqual([])
    await page.getByText('P makes the preview').waitFor()
    const sheet = page.getByRole('region', { name: 'Issue edition 1' })
    const missing = (await askThrough(page, 'report.readiness', {})).map((line) => line.missing)
    expect(missing.length).toBeGreaterThan(1)
    await sheet.getByText(`${missing.length} things are still to state.`).waitFor()
    expect(await sheet.getByRole('listitem').allInnerTexts()).toEqual(missing)
    await sheet.getByRole('button', { name: 'issue' }).waitFor()
    await page.keyboard.press('Escape')
    await page.locator('.edit-sheet').waitFor({ state: 'detached' })
  })

  it('that is being made ends when the place is left, and hears keys meanwhile', async () => {
    waiting = []
    await goToPlace(page, '9', 'Report')
    await expect.poll(() => waiting?.length).toBe(1)
    expect(await status().textContent()).toBe('composing every page')
    await page.keyboard.press('i')
    await page.locator('.edit-sheet').waitFor()
    await page.keyboard.press('Escape')
    await page.locator('.edit-sheet').waitFor({ state: 'detached' })
    await goToPlace(page, '1', 'Records')
    await expect.poll(() => asked).toEqual(['report.preview A4', 'task.cancel'])
    for (const route of waiting) await route.continue()
    waiting = null
  })

  it('comes by itself once the place has rested, and stands there at once when it is come back to', async () => {
    await goToPlace(page, '9', 'Report')
    await pages().first().waitFor()
    expect(await status().textContent()).toMatch(/^\d+ pages; /)
    await goToPlace(page, '1', 'Records')
    await goToPlace(page, '9', 'Report')
    await pages().first().waitFor()
    await rest()
    expect(asked).toEqual(['report.preview A4'])
  })

  it('is made anew once the record has changed, while the pages before it stay', async () => {
    await goToPlace(page, '9', 'Report')
    await pages().first().waitFor()
    waiting = []
    await amend('Another client')
    await expect.poll(() => waiting?.length).toBe(1)
    expect(await pages().count()).toBeGreaterThan(1)
    expect(await status().textContent()).toBe('composing every page')
    for (const route of waiting) await route.continue()
    waiting = null
    await page.getByText(/^\d+ pages; /).waitFor()
    await rest()
    expect(asked).toEqual(['report.preview A4'])
  })

  it('on the other paper is another one; that on the first is still there; P makes one anew though nothing changed', async () => {
    await goToPlace(page, '9', 'Report')
    await pages().first().waitFor()
    const tallness = () =>
      pages()
        .first()
        .evaluate((canvas) => canvas.clientHeight / canvas.clientWidth)
    expect(await tallness()).toBeCloseTo(297 / 210, 1)
    await page.keyboard.press('l')
    await page.locator('.page-to-come').waitFor()
    await pages().first().waitFor()
    expect(await tallness()).toBeCloseTo(11 / 8.5, 1)
    await page.keyboard.press('a')
    await pages().first().waitFor()
    await rest()
    expect(asked).toEqual(['report.preview Letter'])
    await page.keyboard.press('p')
    await expect.poll(() => asked).toEqual(['report.preview Letter', 'report.preview A4'])
    await page.getByText(/^\d+ pages; /).waitFor()
  })

  it('is drawn as fine as the window shows it, also after that was made larger', async () => {
    await goToPlace(page, '9', 'Report')
    await pages().first().waitFor()
    for (const size of [
      { width: 1024, height: 768 },
      { width: 2560, height: 1440 },
    ]) {
      await page.setViewportSize(size)
      await settled(page)
      const fine = () =>
        pages()
          .first()
          .evaluate((canvas: HTMLCanvasElement) => canvas.width - canvas.clientWidth)
      await expect.poll(fine).toBe(0)
    }
    // A large window shows two pages side by side.
    const [first, second] = await Promise.all([pages().nth(0).boundingBox(), pages().nth(1).boundingBox()])
    expect(second?.y).toBe(first?.y)
  })

  it('made no script error, dialog or request to another machine', () => {
    expect(faults).toEqual([])
  })
})

describe('what is still to state', () => {
  it('leads to the very field, with the focus in it and in sight', async () => {
    const labels: Record<string, string> = {
      'the client': 'For whom',
      'the competence of the examiner': 'Competence',
      'independence and interests': 'Independence',
      'who reviewed the report before issue': 'Review by another',
      'the effective date of the opinions': 'Effective date',
      'the grounds of the build interval': 'Grounds of the build interval',
      'material and construction of the car': 'Construction and materials',
    }
    const { commission } = await askThrough(page, 'record.view', {})
    const nothing = { client: '', examinerCompetence: '', independence: '', review: '', effectiveDate: null }
    await askThrough(page, 'commission.set', { commission: { ...commission, ...nothing } })
    const landed: Record<string, string> = {}
    for (const missing of Object.keys(labels)) {
      await goToPlace(page, '9', 'Report')
      await page.getByRole('button', { name: `Go to Identity: ${missing}` }).click()
      await page.locator('.edit-sheet').waitFor()
      landed[missing] = await page.evaluate(() => {
        const field = document.activeElement as HTMLInputElement
        const box = field.getBoundingClientRect()
        const acts = document.querySelector('.sheet-acts')?.getBoundingClientRect()
        const inSight = box.top >= 0 && box.bottom <= (acts?.top ?? 0)
        return `${field.labels?.[0]?.textContent ?? 'nothing'}${inSight ? '' : ', out of sight'}`
      })
      await page.keyboard.press('Escape')
    }
    expect(landed).toEqual(labels)
  })

  it('leads to a new row where there is none', async () => {
    await goToPlace(page, '9', 'Report')
    await page.getByRole('button', { name: 'Go to Identity: at least one number, found or looked for' }).click()
    await page.getByRole('region', { name: 'A number' }).waitFor()
    expect(await page.evaluate(() => document.activeElement?.closest('.edit-sheet') !== null)).toBe(true)
    await page.keyboard.press('Escape')
  })
})
