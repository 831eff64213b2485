import type { Browser, Page } from 'playwright'
import { openBrowser } from '../../pages/browser.ts'
import { servePlan } from '../../pages/drawn-plan.ts'
import type { RedrawKind } from '../../pages/drawn-plan-child.ts'
import { CALLOUTS, emptyPlan, fullPlan, PANELS } from './full-plan.ts'
import { threadTimes } from './page-thread.ts'

const SLOWED = 4
const WARMING = 12

interface PageMeasures {
  measureRedraws(kind: RedrawKind, rounds: number): Promise<number[]>
  measureMoving(rounds: number): Promise<number[]>
}

const measureIn = (page: Page, kind: RedrawKind, rounds: number): Promise<number[]> =>
  page.evaluate(([name, count]) => (window as unknown as PageMeasures).measureRedraws(name, count), [
    kind,
    rounds,
  ] as const)

const movingIn = (page: Page, rounds: number): Promise<number[]> =>
  page.evaluate((count) => (window as unknown as PageMeasures).measureMoving(count), rounds)

const at95 = (times: readonly number[]): number =>
  [...times].sort((a, b) => a - b)[Math.ceil(times.length * 0.95) - 1] ?? Number.NaN

const median = (times: readonly number[]): number =>
  [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? Number.NaN

const inShort = (times: readonly number[]): string => `${at95(times).toFixed(1)} ms (${median(times).toFixed(1)})`

async function openPlan(browser: Browser, address: string): Promise<Page> {
  const page = await browser.newPage({
    viewport: { width: 1440, height: 900 },
  })
  page.on('pageerror', (fault) => process.stderr.write(`${fault.message}\n`))
  await page.goto(address)
  await page.waitForFunction(() => 'measureRedraws' in window)
  return page
}

/** Slows the page's own thread while something is done. */
async function slowed<Answer>(page: Page, act: () => Promise<Answer>): Promise<Answer> {
  const session = await page.context().newCDPSession(page)
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWED })
  const answer = await act()
  await session.send('Emulation.setCPUThrottlingRate', { rate: 1 })
  await session.detach()
  return answer
}

interface Measured {
  /** Processor time of the page's thread, four times. */
  readonly thread: readonly number[]
  /** By the clock, the page slowed four times by the browser. */
  readonly clock: readonly number[]
}

const kinds = [
  ['state', 'state of a panel', 60],
  ['inHand', 'another panel in hand', 60],
  ['move', 'zoom and pan', 60],
  ['map', 'new values on 2,500 map cells', 60],
  ['rest', 'longest frame until a zoom that rests is drawn anew', 20],
] as const satisfies readonly (readonly [RedrawKind, string, number])[]

async function measureKind(browser: Browser, page: Page, kind: RedrawKind, rounds: number): Promise<Measured> {
  await page.bringToFront()
  await measureIn(page, kind, kind === 'rest' ? 2 : WARMING)
  const times = await threadTimes(browser, page, () => measureIn(page, kind, rounds))
  if (times.length !== rounds) throw new Error(`${times.length} of ${rounds} redraws were recorded.`)
  const clock = kind === 'rest' ? [] : await slowed(page, () => measureIn(page, kind, rounds))
  return {
    thread: times.map(({ all, longest }) => SLOWED * (kind === 'rest' ? longest : all)),
    clock,
  }
}

/**
 * Redraws of a plan with 120 panels, 60 callouts and 2,500 map cells, processor slowed four times, beside the same page
 * with an empty plan. A redraw is everything the page's own thread does from the change until its picture is handed
 * over: script, style, layout, paint, commit. It is taken from the browser's record of its threads as processor time,
 * and four times that is what a processor four times as slow would need. The time by the clock stands beside it, the page
 * slowed by the browser; that one holds waiting too, for the next picture of the display (16.7 ms apart) and for whatever
 * else the machine does. Filling the tiles with colour and putting them together is work of other threads, alongside; the
 * last row tells whether pictures keep up when every frame moves the plan. After a zoom several frames draw it anew, and
 * the longest counts.
 */
export async function planRedraw() {
  const plan = fullPlan()
  const [full, empty] = [await servePlan(plan), await servePlan(emptyPlan(plan))]
  const browser = await openBrowser()
  try {
    const [ours, theirs] = [await openPlan(browser, full.address), await openPlan(browser, empty.address)]
    const drawn = [await ours.locator('.plan-target').count(), await ours.locator('.callout').count()]
    if (drawn.join() !== `${PANELS},${CALLOUTS}`) throw new Error(`Not what was to be drawn: ${drawn.join(' ')}`)
    const rows = []
    for (const [kind, what, rounds] of kinds) {
      const own = await measureKind(browser, ours, kind, rounds)
      const reference = await measureKind(browser, theirs, kind, rounds)
      const byClock = ({ clock }: Measured) => (clock.length === 0 ? '' : `; by the clock ${inShort(clock)}`)
      rows.push({
        what: `redraw, ${what}; ${PANELS} panels, ${CALLOUTS} callouts, four times the processor time, 95th percentile (median) of ${rounds}`,
        ours: `${inShort(own.thread)}${byClock(own)}`,
        reference: `${inShort(reference.thread)}${byClock(reference)}, empty plan`,
        ratio: at95(own.thread) / 16,
        aim: '1 (of 16 ms)',
      })
    }
    const between: number[][] = []
    for (const page of [ours, theirs]) {
      await page.bringToFront()
      between.push(await slowed(page, () => movingIn(page, 120)))
    }
    const [own = [], reference = []] = between
    return [
      ...rows,
      {
        what: `from picture to picture while moving, by the clock, page slowed ${SLOWED} times, 95th percentile (median) of 120`,
        ours: inShort(own),
        reference: `${inShort(reference)}, empty plan`,
        ratio: at95(own) / 34,
        aim: '1 (of 34 ms)',
      },
    ]
  } finally {
    await browser.close()
    full.stop()
    empty.stop()
  }
}
