import { existsSync, readFileSync } from 'node:fs'
import { mkdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Page } from 'playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { placeList } from '../../renderer/store/place-list.ts'
import type { SheetName } from '../../shared-types/tokens.ts'
import { nameOf, settled } from './browser.ts'
import { type OpenPage, openPage } from './open-page.ts'
import { layoutOf, movedBoxes } from './page-layout.ts'
import { asCompared, asKept, changedSquares } from './picture-comparison.ts'
import { heedQuestions } from './questions.ts'
import { startOnDemonstration } from './started-program.ts'

/** Reviewed pictures of every place, and where its boxes stand. `WITNESSMARK_RENEW_PICTURES=1` makes them anew. */
const folder = join(import.meta.dirname, 'reference')
const browserFile = join(folder, 'browser.json')
const renews = process.env.WITNESSMARK_RENEW_PICTURES === '1'
/** A picture that is not as it was is left here beside its reference, to be looked at. */
const differences = join(import.meta.dirname, '..', '..', '.built', 'pictures')

const sizes = [
  { width: 1024, height: 768, sheets: ['paper', 'night'] },
  { width: 1440, height: 900, sheets: ['paper', 'night', 'outdoor'] },
  { width: 2560, height: 1440, sheets: ['paper', 'night'] },
] as const satisfies readonly { width: number; height: number; sheets: readonly SheetName[] }[]
const cases = sizes.flatMap((size) => placeList.map(({ id, name }) => ({ ...size, id, name })))

let openedPage: OpenPage
let page: Page
let samePixels = false
let nothingAsked: ReturnType<typeof heedQuestions>

beforeAll(async () => {
  openedPage = await openPage(startOnDemonstration, {
    timezoneId: 'UTC',
    locale: 'en-GB',
    reducedMotion: 'reduce',
    before: async (fresh) => {
      nothingAsked = heedQuestions(fresh)
      await fresh.clock.setFixedTime(new Date('2026-06-02T14:00:00.000Z'))
    },
  })
  ;({ page } = openedPage)
  const version = nameOf(page.context().browser())
  if (renews) {
    await mkdir(folder, { recursive: true })
    await writeFile(browserFile, `{ "chromium": "${version}" }\n`)
  }
  const known = existsSync(browserFile) ? (JSON.parse(readFileSync(browserFile, 'utf8')) as { chromium: string }) : null
  samePixels = known?.chromium === version
  if (!samePixels) {
    process.stdout.write(`Pictures are of Chromium ${known?.chromium}; in ${version} boxes alone are compared.\n`)
  }
}, 120_000)

afterAll(() => openedPage?.close())

/** Waits for faces and pictures, and writes over what no two runs have in common: paths, hashes, times of files. */
async function standStill(): Promise<void> {
  await page.waitForFunction(() => [...document.images].every((image) => image.complete || image.loading === 'lazy'))
  await page.evaluate(async () => {
    await document.fonts.ready
    const shown = [...document.images].filter((image) => image.getBoundingClientRect().top < innerHeight)
    await Promise.all(shown.map((image) => image.decode().catch(() => undefined)))
  })
  if ((await page.locator('.plan-room').count()) > 0) await nothingAsked()
  await settled(page)
  await page.evaluate(() => {
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
    for (let node = texts.nextNode(); node !== null; node = texts.nextNode()) {
      const words = node.textContent ?? ''
      const still = words
        .replace(/\S*[/\\]([\w-]+\.wmk)/, '/records/$1')
        .replace(/^changed .*/, 'changed 2 Jun 2026, 13:05')
        .replace(/[0-9a-f]{64}/, '0'.repeat(64))
      if (still !== words) node.textContent = still
    }
  })
}

async function openPlace(id: string, name: string, width: number, height: number): Promise<void> {
  await page.setViewportSize({ width, height })
  await page.evaluate((place) => {
    localStorage.setItem('witnessmark.sheet', 'paper')
    location.hash = place
  }, id)
  await page.reload()
  await page.waitForFunction((title) => {
    const head = document.querySelector('#working-area > h1')
    const open = (document.querySelector('.head-line')?.textContent ?? '') !== ''
    return open && head?.textContent === title && head.nextElementSibling !== null
  }, name)
  await page.waitForLoadState('networkidle')
  // The preview comes by itself, and takes as long as it takes to compose the report.
  if (id === 'report') await page.locator('canvas.pdf-page').first().waitFor()
  if (id === 'walk-round') await page.locator('.plan-legend, .callout').first().waitFor()
  // What a place says while it waits for an answer.
  await page.waitForFunction(
    () =>
      !/reckoning from|being (?:reckoned|drawn|computed|compared|searched|read)|reading the (?:journal|record|list)/.test(
        document.body.textContent ?? '',
      ),
  )
  await settled(page)
}

async function compare(file: string, half: boolean): Promise<readonly string[]> {
  const picture = await page.screenshot({ animations: 'disabled', caret: 'hide' })
  const path = join(folder, `${file}.png`)
  if (renews) {
    await writeFile(path, await asKept(picture, half))
    return []
  }
  const now = await asCompared(picture, half)
  const squares = await changedSquares(await readFile(path), now)
  if (squares.length > 0) {
    await mkdir(differences, { recursive: true })
    await writeFile(join(differences, `${file}.png`), now)
  }
  return squares.map(({ x, y, share }) => `${file}: ${(100 * share).toFixed(0)} % differs at ${x}, ${y}`)
}

describe('the pictures of', () => {
  it.each(cases)('$name at $width × $height are as they were reviewed', async ({ id, name, width, height, sheets }) => {
    await openPlace(id, name, width, height)
    await standStill()
    const layoutFile = join(folder, `${id}-${width}.txt`)
    const layout = await layoutOf(page)
    if (renews) await writeFile(layoutFile, `${layout.join('\n')}\n`)
    const moved = movedBoxes((await readFile(layoutFile, 'utf8')).trimEnd().split('\n'), layout)
    const changed: string[] = []
    for (const sheet of samePixels ? sheets : []) {
      await page.waitForFunction((wanted) => document.documentElement.dataset.sheet === wanted, sheet)
      await standStill()
      changed.push(...(await compare(`${id}-${width}-${sheet}`, width > 2000)))
      await page.keyboard.press('Alt+n')
    }
    expect({ moved, changed }).toEqual({ moved: [], changed: [] })
  })
})

describe('a planted change', () => {
  const plant = async (act: () => void) => {
    await openPlace('identity', 'Identity', 1440, 900)
    await standStill()
    await page.evaluate(act)
    const reference = (await readFile(join(folder, 'identity-1440.txt'), 'utf8')).trimEnd().split('\n')
    const picture = await page.screenshot({ animations: 'disabled', caret: 'hide' })
    const kept = await readFile(join(folder, 'identity-1440-paper.png'))
    return { moved: movedBoxes(reference, await layoutOf(page)), changed: await changedSquares(kept, picture) }
  }

  it('is found, by pixels and by boxes: a heading that is hidden', async () => {
    const { moved, changed } = await plant(() => {
      const head = document.querySelector<HTMLElement>('#working-area h2')
      if (head !== null) head.style.visibility = 'hidden'
    })
    expect(moved.length).toBeGreaterThan(0)
    if (samePixels) expect(changed.length).toBeGreaterThan(0)
  })

  it('is found, by boxes: a list that stands four pixels lower', async () => {
    const { moved, changed } = await plant(() => {
      const part = document.querySelector<HTMLElement>('#working-area section')
      if (part !== null) part.style.paddingTop = '16px'
    })
    expect(moved.length).toBeGreaterThan(0)
    if (samePixels) expect(changed.length).toBeGreaterThan(0)
  })

  it.runIf(renews === false)('is found, by pixels: one figure that reads otherwise', async () => {
    const { changed } = await plant(() => {
      // What the first tell in sight would settle.
      const figure = [...document.querySelectorAll('.figures')].find(
        (one) => /\d\sbit$/.test(one.textContent ?? '') && one.getBoundingClientRect().bottom < innerHeight,
      )
      const before = figure?.textContent ?? ''
      const after = before.replace(/\d\.\d+/, '1.17')
      if (figure === undefined || after === before) throw new Error('No figure in bits is in sight.')
      figure.textContent = after
    })
    if (samePixels) expect(changed.length).toBeGreaterThan(0)
  })
})
