import type { Page } from 'playwright'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { goToPlace, settled } from './browser.ts'
import { type OpenPage, openPage } from './open-page.ts'
import { startOnDemonstration } from './started-program.ts'

let openedPage: OpenPage
let page: Page
let faults: readonly string[]

beforeAll(async () => {
  openedPage = await openPage(startOnDemonstration, { timeoutMs: 30_000, reducedMotion: 'reduce' })
  ;({ page, faults } = openedPage)
  await goToPlace(page, '4', 'Coating')
  await page.getByRole('button', { name: /Left front wing/ }).click()
  await page.locator('.cut-drawing[role="img"]').waitFor({ timeout: 60_000 })
  await settled(page)
}, 180_000)
afterAll(() => openedPage?.close())

const words = async () => ((await page.locator('#working-area').textContent()) ?? '').replaceAll(/[\u00a0\u202f]/g, ' ')
const down = () => page.getByLabel('First end, down, mm').inputValue()
const matrix = () => page.locator('.coating-map .moves').first().getAttribute('transform')

it('cuts a panel with filler through its thickest place, and says by which rule', async () => {
  expect(await words()).toMatch(/Cut along a line\s*through the place where the middle of the field is thickest/)
  expect(await words()).toMatch(/Thickest [\d ]+ mm from the first end: [\d ]+ µm, between [\d ]+ and [\d ]+ µm/)
  expect(await page.locator('.cut-reading').count()).toBeGreaterThan(0)
})

it('lets an end be moved by arrow keys, and typed in millimetres', async () => {
  const before = Number(await down())
  await page.keyboard.press('c')
  await page.keyboard.press('Escape')
  await page.locator('[data-cut-end="from"]').focus()
  await page.keyboard.press('ArrowDown')
  await page.keyboard.press('Shift+ArrowDown')
  await expect.poll(async () => Number(await down())).toBeCloseTo(before + 11, 1)
  await expect.poll(words).toMatch(/drawn by hand/)
  const drawn = page.locator('.cut-middle').first()
  const was = await drawn.getAttribute('d')
  await page.getByLabel('First end, down, mm').fill(String(before + 60))
  await page.waitForFunction((old) => document.querySelector('.cut-middle')?.getAttribute('d') !== old, was)
  await page.getByRole('button', { name: 'Cut through the thickest place' }).click()
  await expect.poll(async () => Number(await down())).toBeCloseTo(before, 1)
})

it('comes nearer by keys and wheel, moves by drag, and shows all of it again', async () => {
  const box = await page.locator('.coating-map').boundingBox()
  if (box === null) throw new Error('The map is not on the page.')
  const whole = await matrix()
  await page.locator('#working-area').focus()
  await page.keyboard.press('+')
  await page.waitForFunction(
    (old) => document.querySelector('.coating-map .moves')?.getAttribute('transform') !== old,
    whole,
  )
  await page.keyboard.press('0')
  await page.waitForFunction(
    (old) => document.querySelector('.coating-map .moves')?.getAttribute('transform') === old,
    whole,
  )
  // A wheel that passes over the map scrolls the page; once the map was pressed it comes nearer.
  await page.mouse.move(box.x + box.width / 2, box.y + 40)
  await page.mouse.down()
  await page.mouse.up()
  await page.mouse.wheel(0, -400)
  await page.waitForFunction(
    (old) => document.querySelector('.coating-map .moves')?.getAttribute('transform') !== old,
    whole,
  )
  await page.keyboard.press('0')
})

it('says what a reading is when it comes into focus', async () => {
  await page.keyboard.press(']')
  await page.locator('.map-reached').waitFor()
  await expect(page.locator('.map-reached').textContent()).resolves.toMatch(/^R\d+: .*(µm|no reading)/)
  expect(faults).toEqual([])
})
