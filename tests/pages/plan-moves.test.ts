import type { Page } from 'playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { goToPlace, settled } from './browser.ts'
import { type OpenPage, openPage } from './open-page.ts'
import { heedQuestions } from './questions.ts'
import { startOnDemonstration } from './started-program.ts'

let openedPage: OpenPage
let page: Page
let nothingAsked: ReturnType<typeof heedQuestions>

beforeAll(async () => {
  openedPage = await openPage(startOnDemonstration, {
    before: (fresh) => {
      nothingAsked = heedQuestions(fresh)
    },
  })
  ;({ page } = openedPage)
  await goToPlace(page, '3', 'Walk-round')
  await page.locator('.callout').first().waitFor()
})
afterAll(() => openedPage?.close())

/** Longer than a gesture is waited for to go on, and then for its callouts to be asked for, ms. */
const REST_MS = 350

/** The plan has come to rest: all its layers are drawn for the zoom it has, and none is carried to another. */
async function rested(): Promise<void> {
  await settled(page)
  await page.waitForFunction(() => {
    const layers = [...document.querySelectorAll('.plan-layers, .plan-layer')]
    const grown = [...document.querySelectorAll('.plan-layer .moves')].map((one) => one.getAttribute('transform'))
    const zooms = layers.map((layer) => new DOMMatrix(getComputedStyle(layer).transform).a)
    return new Set(grown).size === 1 && zooms.every((zoom) => zoom === 1)
  })
  await settled(page)
}
const wholeSheet = async () => {
  await page.keyboard.press('0')
  await rested()
}
const boxOf = async (selector: string) => {
  const box = await page.locator(selector).first().boundingBox()
  if (box === null) throw new Error(`${selector} is not drawn`)
  return box
}
const bonnet = '.plan-target[data-panel="front-lid"]'
const titleOf = () => page.locator('.sheet-title').textContent()
const ringWidths = () =>
  page.locator('.callout-ring').evaluateAll((rings) => rings.map((ring) => ring.getBoundingClientRect().width))

describe('the plan moves', () => {
  it('with the wheel, about the place under the pointer, and rings and hatches keep their size', async () => {
    const at = { x: 560, y: 430 }
    const under = () => page.evaluate(({ x, y }) => document.elementFromPoint(x, y)?.getAttribute('data-panel'), at)
    const [before, panel] = [await boxOf(bonnet), await under()]
    await page.mouse.move(at.x, at.y)
    for (let notch = 0; notch < 4; notch++) await page.mouse.wheel(0, -120)
    await rested()
    const after = await boxOf(bonnet)
    const grown = after.width / before.width
    expect(grown).toBeGreaterThan(1.8)
    expect((at.x - after.x) / (at.x - before.x)).toBeCloseTo(grown, 1)
    expect((at.y - after.y) / (at.y - before.y)).toBeCloseTo(grown, 1)
    expect(await under()).toBe(panel)
    for (const width of await ringWidths()) expect(Math.abs(width - 17.9)).toBeLessThan(1.5)
    const pitches = await page.locator('.plan-paper pattern').evaluateAll((patterns) =>
      patterns.map((one) => {
        const pattern = one as SVGPatternElement
        const group = pattern.ownerSVGElement?.querySelector('.moves > g[transform]') as SVGGElement
        const tile = pattern.patternTransform.baseVal.consolidate()?.matrix ?? new DOMMatrix()
        return Math.hypot(tile.a, tile.b) * Math.hypot(group.getCTM()?.a ?? 0, group.getCTM()?.b ?? 0)
      }),
    )
    expect(pitches.length).toBeGreaterThan(3)
    for (const pixelsPerPixel of pitches) expect(pixelsPerPixel).toBeCloseTo(1, 1)
    await wholeSheet()
  })

  it('with a drag, which chooses no panel', async () => {
    await page.keyboard.press('+')
    await page.keyboard.press('+')
    await rested()
    const [before, title] = [await boxOf(bonnet), await titleOf()]
    await page.mouse.move(700, 500)
    await page.mouse.down()
    await page.mouse.move(640, 470, { steps: 6 })
    await page.mouse.up()
    await rested()
    const after = await boxOf(bonnet)
    expect(after.x - before.x).toBeCloseTo(-60, -1)
    expect(after.y - before.y).toBeCloseTo(-30, -1)
    expect(await titleOf()).toBe(title)
    await wholeSheet()
  })

  it('as one picture, also where it is dragged on while its layers are drawn anew, one in each frame', async () => {
    const places = () =>
      page.evaluate(() => {
        const layers = [...document.querySelectorAll<SVGElement>('.plan-layer')]
        return layers.map(
          (layer) => `${layer.querySelector('.moves')?.getAttribute('transform')} ${layer.style.transform}`,
        )
      })
    await page.evaluate(() => {
      const seen = new Set<number>()
      Object.assign(window, { seen })
      const layers = [...document.querySelectorAll('.plan-layer .moves')]
      const before = layers.map((one) => one.getAttribute('transform'))
      const look = () => {
        seen.add(layers.filter((one, index) => one.getAttribute('transform') !== before[index]).length)
        if (!seen.has(layers.length)) requestAnimationFrame(look)
      }
      look()
    })
    await page.mouse.move(700, 500)
    await page.mouse.wheel(0, -240)
    await page.waitForFunction(() => (window as unknown as { seen: Set<number> }).seen.size > 2)
    await page.mouse.down()
    await page.mouse.move(663.5, 480.5, { steps: 4 })
    await page.mouse.up()
    await rested()
    const all = await places()
    expect(all.length).toBeGreaterThan(5)
    expect(new Set(all).size).toBe(1)
    const steps = await page.evaluate(() => [...(window as unknown as { seen: Set<number> }).seen])
    expect(steps).toEqual([...all, ''].map((_, drawn) => drawn))
    await wholeSheet()
  })

  it('with two fingers', async () => {
    const before = await boxOf(bonnet)
    const session = await page.context().newCDPSession(page)
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', gap: number) =>
      session.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: type === 'touchEnd' ? [] : [-1, 1].map((side, id) => ({ x: 560 + side * gap, y: 430, id })),
      })
    await touch('touchStart', 40)
    for (const gap of [50, 60, 70, 80]) await touch('touchMove', gap)
    await touch('touchEnd', 0)
    await rested()
    expect((await boxOf(bonnet)).width / before.width).toBeCloseTo(2, 0)
    await wholeSheet()
    expect((await boxOf(bonnet)).width).toBeCloseTo(before.width, 0)
  })

  it('with keys, and plain arrows still walk', async () => {
    const title = await titleOf()
    await page.keyboard.press('+')
    await rested()
    const before = await boxOf(bonnet)
    await page.keyboard.press('Shift+ArrowRight')
    await rested()
    await expect.poll(async () => (await boxOf(bonnet)).x).toBeLessThan(before.x)
    expect(await titleOf()).toBe(title)
    await page.keyboard.press('ArrowDown')
    await expect.poll(titleOf).not.toBe(title)
    await page.keyboard.press('ArrowUp')
    await expect.poll(titleOf).toBe(title)
    await wholeSheet()
  })
})

describe('panels of the plan', () => {
  it('are named in a fixed line while the pointer is over them', async () => {
    const { x, y, width, height } = await boxOf(bonnet)
    await page.mouse.move(x + width / 2, y + height * 0.3)
    await page.locator('.plan-hovered', { hasText: 'Bonnet' }).waitFor()
    const place = await boxOf('.plan-hovered')
    await page.mouse.move(x + width / 2 + 30, y + height * 0.32)
    await settled(page)
    expect(await page.locator('.plan-hovered').textContent()).toContain('Bonnet')
    expect(await boxOf('.plan-hovered')).toEqual(place)
  })

  it('are met in walking order, each once, with its state in its name', async () => {
    const names = await page.locator('.plan-named').evaluateAll((all) => all.map((one) => one.ariaLabel ?? ''))
    const stops = names.map((name) => Number.parseInt(name, 10))
    expect(stops.length).toBeGreaterThan(30)
    expect(stops).toEqual([...new Set(stops)].sort((a, b) => a - b))
    for (const name of names) expect(name).toMatch(/^\d+, .+: .+/)
  })

  it('have callouts whose words overlap nothing that is written on the plan', async () => {
    for (const width of [1440, 1024]) {
      await page.setViewportSize({ width, height: width === 1440 ? 900 : 768 })
      await nothingAsked(REST_MS)
      await rested()
      const overlaps = () =>
        page.evaluate(() => {
          const boxes = [
            ...document.querySelectorAll('.callout-text, .callout-ring, .measures text, .plan-legend li'),
          ].map((one) => ({
            box: one.getBoundingClientRect(),
            says: one.textContent || 'a ring',
            // The callout in hand lies over itself a second time.
            own: one.closest('.callout')?.getAttribute('data-panel') ?? null,
          }))
          return boxes.flatMap((a, index) =>
            boxes.slice(index + 1).flatMap((b) => {
              const apart =
                a.box.right <= b.box.left + 1 ||
                b.box.right <= a.box.left + 1 ||
                a.box.bottom <= b.box.top + 2 ||
                b.box.bottom <= a.box.top + 2
              return apart || (a.own !== null && a.own === b.own) ? [] : [`${a.says} on ${b.says}`]
            }),
          )
        })
      // Until the callouts for the new scale have come.
      await expect.poll(overlaps, { timeout: 8000 }).toEqual([])
    }
  })
})
