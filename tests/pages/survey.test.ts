import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Page } from 'playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { cameraFiles, writeCameraFiles } from '../fixtures/camera-files.ts'
import { askThrough } from './asking.ts'
import { goToPlace, settled } from './browser.ts'
import type { Keyboard } from './keyboard.ts'
import { type OpenPage, openPage } from './open-page.ts'
import { checkSyntax, factsOf, fontsOf, pdfToolsThere, picturesIn, runningTextOf } from './pdf-tools.ts'
import { type StartedProgram, startEmpty } from './started-program.ts'
import { stepsInOrder } from './steps-in-order.ts'

const PHOTOGRAPHS = 40
const SPOTS = 20
const PARTS = 10

let program: StartedProgram
let openedPage: OpenPage
let page: Page
let keyboard: Keyboard
let faults: readonly string[]
let photographs: readonly string[]

beforeAll(async () => {
  openedPage = await openPage(startEmpty, { byKeyboard: true, timeoutMs: 15_000 })
  ;({ program, page, keyboard, faults } = openedPage)
  photographs = await writeCameraFiles(join(program.folder, 'camera'), PHOTOGRAPHS)
  // Heard all the time, so that the dialog for files is taken over before the first key asks for it.
  page.on('filechooser', () => undefined)
})

afterAll(() => openedPage?.close())

stepsInOrder()

const view = () => askThrough(page, 'record.view', {})
async function noSheet(): Promise<void> {
  await page.locator('.edit-sheet').waitFor({ state: 'detached' })
  await settled(page)
}
/** Waits for the form and for the focus in it, as a hand does that looks up. */
async function sheet(): Promise<void> {
  await page.locator('.edit-sheet').waitFor()
  await page.waitForFunction(() => document.activeElement?.closest('.edit-sheet') !== null)
  await settled(page)
}

const goTo = (figure: string, name: string) => goToPlace(page, figure, name)

/** Keeps the open form with its own key and waits until it has gone. */
async function keep(): Promise<void> {
  await keyboard.press('Control+Enter')
  await noSheet()
}

describe.sequential('a survey of a car that is not the demonstration, by keyboard alone', () => {
  it('begins a record: the level first, then the car, the commission, the visit and the leave', async () => {
    await goTo('1', 'Records')
    await page.getByRole('button', { name: 'new record' }).waitFor()
    await keyboard.press('n')
    await page.getByRole('radiogroup', { name: 'Level of inspection' }).waitFor()
    await keyboard.press('u')
    await keyboard.fill('Title', 'Fenwick two-seat coupé, 1958')
    await keyboard.fill('Market of first sale', 'export')
    await keyboard.fill('Who examines', 'An examiner')
    await keyboard.fill('For whom', 'An owner')
    await keyboard.fill('Question to answer', 'What is it, and what has been done to it?')
    await keyboard.fill('Place', 'A shed')
    await keyboard.press('Control+Enter')
    await page.waitForFunction(() => document.title.startsWith('Identity'))
    const { particulars, commission, consents } = await view()
    expect(particulars.title).toBe('Fenwick two-seat coupé, 1958')
    expect(commission.level).toBe('with underneath')
    expect(consents).toHaveLength(9)
    expect(consents.every((consent) => !consent.given)).toBe(true)
  })

  it('takes three claims and two numbers before the walk', async () => {
    await goTo('2', 'Identity')
    for (const words of ['Never welded', 'First engine', 'Two owners']) {
      await keyboard.press('c')
      await sheet()
      await keyboard.write(words)
      await keyboard.fill('Who says so', 'The seller')
      await keep()
    }
    for (const [kind, read] of [
      ['Chassis plate', 'FX 0418'],
      ['Engine, stamped', 'M 77 102'],
    ] as const) {
      await keyboard.press('n')
      await sheet()
      await keyboard.fill('What number', kind)
      await keyboard.fill('As read', read)
      await keep()
    }
    const { claims, carNumbers } = await view()
    expect(claims.map((claim) => claim.words)).toEqual(['Never welded', 'First engine', 'Two owners'])
    expect(carNumbers.map((number) => number.asRead)).toEqual(['FX 0418', 'M 77 102'])
  })

  it('walks to every panel: states, findings, readings and photographs, none left out', async () => {
    await goTo('3', 'Walk-round')
    const { panels } = await askThrough(page, 'lists.panels', {
      body: 'coupe',
      level: 'with underneath',
      conditions: [...(await view()).particulars.conditions],
    })
    const walked = panels.filter((panel) => panel.walked)
    let spots = 0
    let photos = 0
    for (const [at, panel] of walked.entries()) {
      await page.getByText(`in hand ${panel.stop} of`).waitFor()
      await settled(page)
      if (at % 11 === 10) {
        await keyboard.press('x')
        await sheet()
        await keyboard.write('Closed section, no opening')
        await keyboard.press('Enter')
      } else if (at % 4 === 0) {
        await keyboard.press('m')
        await sheet()
        await keyboard.press(at % 8 === 0 ? 'r' : 'o')
        await noSheet()
        await keyboard.press('p')
        await sheet()
        await keyboard.press('r')
        await noSheet()
        await keyboard.press('f')
        await sheet()
        await keyboard.press('c', '3', '3')
        await keyboard.write(`Finding at stop ${panel.stop}: rust along the lower edge`)
        await keyboard.press('Enter')
      } else {
        await keyboard.press('n')
        await page.getByText('inspected, nothing found').waitFor()
        await settled(page)
      }
      await noSheet()
      if (spots < SPOTS && panel.layer === 'outer' && at % 11 !== 10) {
        await keyboard.press('r')
        await sheet()
        await keyboard.write(spots % 5 === 4 ? '1210 >1500 -' : `1${spots}2 14${spots % 10} 151`)
        await keyboard.press('Enter')
        await noSheet()
        spots += 1
      }
      if (photos < PHOTOGRAPHS && at % 4 === 0) {
        await keyboard.press('e')
        await sheet()
        const chooser = page.waitForEvent('filechooser')
        await keyboard.press('1')
        await (await chooser).setFiles(photographs.slice(photos, photos + 5))
        photos += 5
        await page.waitForFunction(async (wanted) => {
          const said = await fetch('/ask/record.view', {
            method: 'POST',
            headers: { 'content-type': 'application/json' },
            body: '{}',
          })
          return ((await said.json()) as { value: { exhibits: unknown[] } }).value.exhibits.length >= wanted
        }, photos)
        await keyboard.press('Escape')
        await noSheet()
      }
      await keyboard.press(']')
    }
    // What the page shows at once is written a moment later.
    await expect
      .poll(
        async () => {
          const { panels: surveyed } = await view()
          const touched = new Set(
            surveyed.flatMap(({ panelId, inspection }) => (inspection === 'not inspected' ? [] : [panelId])),
          )
          return walked.filter(({ id }) => !touched.has(id)).map(({ id }) => id)
        },
        { timeout: 20_000 },
      )
      .toEqual([])
    const record = await view()
    expect(spots).toBe(SPOTS)
    expect(record.spots.flatMap((spot) => spot.values)).toHaveLength(3 * SPOTS)
    expect(record.exhibits.filter((exhibit) => exhibit.kind === 'photograph')).toHaveLength(PHOTOGRAPHS)
    expect(record.findings.length).toBeGreaterThan(15)
  }, 150_000)

  it('keeps the camera files with all eight orientations, each picture upright', async () => {
    const { exhibits } = await view()
    const orientations = new Set(exhibits.map((exhibit) => exhibit.photograph?.orientation))
    expect([1, 2, 3, 4, 5, 6, 7, 8].filter((orientation) => !orientations.has(orientation))).toEqual([])
    // The letter F was laid down as 40 × 80 or 80 × 40 pixels; upright it is higher than wide in all eight.
    const letters = exhibits.filter((exhibit) => exhibit.photograph?.fileName.includes('-orientation-'))
    expect(letters.length).toBeGreaterThanOrEqual(8)
    for (const { photograph } of letters) expect([photograph?.widthPx, photograph?.heightPx]).toEqual([40, 80])
    expect(await cameraFiles()).toHaveLength(16)
  })

  it('notes parts down the list', async () => {
    await goTo('5', 'Parts')
    const onRow = () => page.evaluate(() => document.activeElement?.closest('[role="row"], tr') != null)
    for (let step = 0; step < 80 && !(await onRow()); step++) await keyboard.press('Tab')
    await keyboard.press('Enter')
    await sheet()
    for (let part = 1; part <= PARTS; part++) {
      await keyboard.press(part % 3 === 0 ? 'l' : 'f', 'Enter')
      await expect.poll(async () => (await view()).parts.length, { timeout: 10_000 }).toBe(part)
      await settled(page)
    }
  })

  it('plans three corrections', async () => {
    await goTo('8', 'Putting right')
    for (const what of ['Let in the left foot', 'Renew a hose', 'Clean the drains']) {
      await keyboard.press('k')
      await sheet()
      await keyboard.fill(/^What/, what)
      await keep()
    }
    expect((await view()).corrections.map((correction) => correction.what)).toHaveLength(3)
  })

  it('issues an edition, changes a finding, and issues a second one that says what changed', async () => {
    await goTo('9', 'Report')
    await keyboard.press('i')
    await page.locator('.edit-sheet').waitFor()
    await keyboard.press('Control+Enter')
    await expect.poll(async () => (await view()).editions.length, { timeout: 60_000 }).toBe(1)
    await goTo('3', 'Walk-round')
    await settled(page)
    await keyboard.press('f')
    await sheet()
    await keyboard.press('d', '2', '2')
    await keyboard.write('A dent seen after the first edition')
    await keyboard.press('Enter')
    await noSheet()
    await goTo('9', 'Report')
    await keyboard.press('i')
    await sheet()
    await keyboard.fill(/^Why/, 'A dent was seen afterwards')
    await keyboard.press('Control+Enter')
    await expect.poll(async () => (await view()).editions.length, { timeout: 60_000 }).toBe(2)
  }, 150_000)

  it.skipIf(!pdfToolsThere)(
    'hands over PDFs that outside readers find sound (poppler, qpdf)',
    async () => {
      for (const { number, pages } of (await view()).editions) {
        const path = join(program.folder, `edition-${number}.pdf`)
        const bytes = await page.evaluate(async (address) => {
          const read = new FileReader()
          const blob = await (await fetch(address)).blob()
          return new Promise<string>((done) => {
            read.onload = () => done(String(read.result).split(',')[1] ?? '')
            read.readAsDataURL(blob)
          })
        }, `/edition/${number}`)
        await writeFile(path, Buffer.from(bytes, 'base64'))
        checkSyntax(path)
        expect(Number(factsOf(path).get('Pages'))).toBe(pages)
        const fonts = fontsOf(path)
        expect(fonts.length).toBeGreaterThan(0)
        for (const font of fonts) expect(font.embedded && font.unicode, font.row).toBe(true)
        expect(picturesIn(path)).toBeGreaterThanOrEqual(PHOTOGRAPHS)
        const text = runningTextOf(path)
        expect(text).toContain('Fenwick two-seat coupé, 1958')
        expect(text).toContain('FX 0418')
        expect(text).toContain('Never welded')
        expect(text).toContain('Finding at stop 1: rust along the lower edge')
        expect(text.includes('A dent seen after the first edition')).toBe(number === 2)
        expect(text).toMatch(new RegExp(`page ${pages} of ${pages}`, 'i'))
      }
    },
    60_000,
  )

  it('made no script error, dialog or request to another machine', () => {
    expect(faults).toEqual([])
  })
})
