import type { Page } from 'playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { placeList } from '../../renderer/store/place-list.ts'
import { askThrough } from './asking.ts'
import { goToPlace, settled } from './browser.ts'
import { Keyboard } from './keyboard.ts'
import { type OpenPage, openPage } from './open-page.ts'
import { type StartedProgram, startOn, startOnDemonstration } from './started-program.ts'

let program: StartedProgram
let openedPage: OpenPage
let page: Page
let keyboard: Keyboard

beforeAll(async () => {
  openedPage = await openPage(startOnDemonstration)
  ;({ program, page, keyboard } = openedPage)
  await goToPlace(page, '3', 'Walk-round')
  await page.getByText(/in hand \d+ of/).waitFor()
}, 120_000)

afterAll(() => openedPage?.close())

const view = () => askThrough(page, 'record.view', {})
async function entryOpen(): Promise<void> {
  await page.locator('.edit-sheet').waitFor()
  await page.waitForFunction(() => document.activeElement?.closest('.edit-sheet') !== null)
  await settled(page)
}
async function entryGone(): Promise<void> {
  await page.locator('.edit-sheet').waitFor({ state: 'detached' })
  await settled(page)
}

describe('keys', () => {
  it('an ordinary finding costs at most eight key presses besides its note', async () => {
    const before = (await view()).findings.length
    const counted = new Keyboard(page)
    await counted.press('f')
    await entryOpen()
    await counted.press('c', '3', '3')
    await counted.write('Rust at the lower edge, 40 mm long')
    await counted.press('Enter')
    await entryGone()
    const { findings } = await view()
    expect(findings).toHaveLength(before + 1)
    expect(findings.at(-1)).toMatchObject({
      kind: 'corrosion',
      severity: 'marked',
      urgency: 'within a year',
      note: 'Rust at the lower edge, 40 mm long',
    })
    expect(counted.presses).toBeLessThanOrEqual(8)
  })

  it('undo takes the finding back from the page, and redo brings it again under its own number', async () => {
    const { findings } = await view()
    const last = findings.at(-1)
    await keyboard.press('Control+z')
    await expect.poll(async () => (await view()).findings.length).toBe(findings.length - 1)
    await page.getByText(`F\u202f${last?.number}`, { exact: true }).first().waitFor({ state: 'detached' })
    await keyboard.press('Control+Shift+z')
    await expect.poll(async () => (await view()).findings.at(-1)?.number).toBe(last?.number)
  })

  it('filler in place of metal is refused without the back seen or a magnet void, with what may be said instead', async () => {
    await keyboard.press(']')
    await settled(page)
    const panelId = (await view()).panels.find((panel) => panel.panelId.startsWith('front-post-upper'))?.panelId
    expect(panelId).toBeDefined()
    await keyboard.press('m')
    await entryOpen()
    await keyboard.press('i')
    await page.getByText('cannot be told from the front').waitFor()
    await page.getByText('filler over metal').first().waitFor()
    await keyboard.press('Escape')
    await entryGone()
  })

  it('a correction takes the findings it answers from the list of them, by their words', async () => {
    await goToPlace(page, '8', 'Putting right')
    await settled(page)
    await keyboard.press('k')
    await entryOpen()
    const { findings } = await view()
    const list = page.getByLabel('Findings it answers, from the list')
    expect(await list.textContent()).toContain(`${findings.length} of ${findings.length} to choose from`)
    for (const finding of findings.slice(1, 3)) {
      await list.focus()
      await keyboard.press('Enter')
      await page.getByRole('option', { name: new RegExp(`^F\\s${finding.number} ${finding.kind}, `) }).focus()
      await keyboard.press('Enter')
      await page.getByRole('listbox').waitFor({ state: 'detached' })
    }
    const numbers = findings.slice(1, 3).map(({ number }) => number)
    expect(await page.getByRole('textbox', { name: 'Findings it answers', exact: true }).inputValue()).toBe(
      numbers.join(' '),
    )
    expect(await list.textContent()).toContain(`${findings.length - 2} of ${findings.length} to choose from`)
    await keyboard.press('Escape')
    await entryGone()
  })

  it.each([
    ['paper', 40],
    ['night', 12],
    ['outdoor', 12],
  ])(
    'Tab goes through every place in reading order, shows where it is, and never gets stuck, on the %s sheet',
    async (sheet, steps) => {
      await page.waitForFunction((name) => document.documentElement.dataset.sheet === name, sheet)
      for (const { figure, name } of placeList) {
        await goToPlace(page, figure, name)
        await page.evaluate(() => {
          if (document.activeElement instanceof HTMLElement) document.activeElement.blur()
        })
        const met = new Set<string>()
        for (let step = 0; step < steps; step++) {
          await page.keyboard.press('Tab')
          const here = await page.evaluate(() => {
            const element = document.activeElement
            if (!(element instanceof HTMLElement || element instanceof SVGElement) || element === document.body)
              return null
            const style = getComputedStyle(element)
            const ringed = [element, element.parentElement, element.closest('label')].some((one) => {
              const look = one === null || one === undefined ? null : getComputedStyle(one)
              return look !== null && (look.outlineStyle !== 'none' || look.boxShadow !== 'none')
            })
            const box = element.getBoundingClientRect()
            return {
              where: `${element.tagName} ${Math.round(box.x)} ${Math.round(box.y)}`,
              ringed,
              unseen: style.opacity === '0',
            }
          })
          if (here === null) continue
          met.add(here.where)
          if (!here.unseen) expect(here.ringed, `${name}: focus is not shown at ${here.where}`).toBe(true)
        }
        expect(met.size, name).toBeGreaterThan(5)
      }
      await page.keyboard.press('Alt+n')
    },
  )

  it('the list of keys opens with ? and lists what works here', async () => {
    await goToPlace(page, '3', 'Walk-round')
    await keyboard.press('?')
    const list = page.getByRole('region', { name: 'Keys that work now' })
    await list.getByText('add a finding').waitFor()
    await keyboard.press('Escape')
    await list.waitFor({ state: 'detached' })
  })

  it('what the page has shown as kept is there after the process is killed at once', async () => {
    const note = `Killed right after this, ${Date.now()}`
    await keyboard.press('f')
    await entryOpen()
    await keyboard.press('d', '2', '1')
    await keyboard.write(note)
    await keyboard.press('Enter')
    await entryGone()
    await program.kill()
    const again = await startOn(program.folder, `${program.folder}/demonstration.wmk`)
    try {
      await page.goto(again.address)
      await page.getByRole('navigation', { name: 'Places' }).waitFor()
      expect((await view()).findings.at(-1)?.note).toBe(note)
      expect(await askThrough(page, 'record.verify', {})).toMatchObject({ sound: true })
    } finally {
      await again.stop()
    }
  })
})
