import type { Page } from 'playwright'
import { bodyPlan } from '../../../electron/figures/body-plan.ts'
import type { CalloutWish } from '../../../electron/figures/callout-wish.ts'
import { callouts } from '../../../electron/figures/callouts.ts'
import { boundsOf, flattened } from '../../../electron/figures/cubic-path.ts'
import { readOutline } from '../../../electron/figures/path-text.ts'
import type { HatchName, PanelMark, PlanMarks, PlanSheet } from '../../../shared-types/figure.ts'
import { openBrowser } from '../../pages/browser.ts'
import { servePlan } from '../../pages/drawn-plan.ts'
import type { DrawnPlan, RedrawTimes } from '../../pages/drawn-plan-child.ts'

const SLOWED = 4
const ROUNDS = 60
const PANELS = 120
const CALLOUTS = 60
const CELLS_ALONG = 50
const hatchesUsed: readonly HatchName[] = ['clean', 'repaired', 'replacement', 'filler-over', 'patch', 'filler-through']

/** Sheets of the plan side by side until there are 120 outlines, each with an id of its own. */
function fullSheet(): { sheet: PlanSheet; figure: DrawnPlan['figure'] } {
  const figure = bodyPlan('coupe', 'uk')
  const [outside, ...others] = figure.sheets
  if (outside === undefined) throw new Error('The plan has no sheets.')
  let { widthMm } = outside
  const views = [...outside.views]
  for (const other of others) {
    for (const view of other.views) views.push({ ...view, at: { x: widthMm + view.at.x, y: view.at.y } })
    widthMm += other.widthMm
  }
  let left = PANELS
  const cut = views.map((view) => {
    const panels = view.panels.slice(0, left).map((panel) => ({ ...panel, panelId: `${panel.panelId}@${view.id}` }))
    left -= panels.length
    return { ...view, panels }
  })
  if (left > 0) throw new Error(`The plan has only ${PANELS - left} outlines.`)
  return { figure, sheet: { ...outside, widthMm, views: cut.filter(({ panels }) => panels.length > 0) } }
}

function fullPlan(): DrawnPlan {
  const { sheet, figure } = fullSheet()
  const outlines = sheet.views.flatMap((view) => view.panels.map((panel) => ({ view, panel })))
  const panels = outlines.map(
    ({ panel }, index): PanelMark => ({
      panelId: panel.panelId,
      stop: index + 1,
      name: `Panel ${index + 1}`,
      inspection: index % 5 === 0 ? 'not inspected' : 'inspected',
      metal: 'original metal',
      paint: 'refinished',
      hatch: index % 5 === 0 ? 'clean' : (hatchesUsed[index % hatchesUsed.length] ?? 'clean'),
      edge: index % 5 === 0 ? 'dotted' : 'solid',
      crossed: false,
      word: 'original metal',
    }),
  )
  const wishes = panels
    .filter((_, index) => index % 2 === 0)
    .map((mark): CalloutWish => ({ ...mark, quiet: false, inHand: false, hatched: mark.hatch !== 'clean', at: null }))
  const rings = callouts(sheet, wishes, 0.1, [], { inAView: PANELS, quiet: 0 }).slice(0, CALLOUTS)
  if (rings.length < CALLOUTS) throw new Error(`Only ${rings.length} callouts found a place.`)
  const marks: PlanMarks = {
    ...{ panels, callouts: rings, extents: [], places: [], captions: [], legend: [] },
    table: panels.map((mark) => ({ ...mark, layer: 'outer', findings: [], exhibits: [] })),
  }
  const largest = outlines.reduce((best, one) => (one.panel.areaMm2 > best.panel.areaMm2 ? one : best))
  const box = boundsOf(flattened(readOutline(largest.panel.outline)))
  const cellMm = Math.max(box.width, box.height) / CELLS_ALONG
  const values = Array.from({ length: CELLS_ALONG * CELLS_ALONG }, (_, at) => {
    const [row, column] = [Math.floor(at / CELLS_ALONG), at % CELLS_ALONG]
    return 120 + 900 * Math.sin(column / 9) ** 2 * Math.cos(row / 7) ** 2 + ((at * 7919) % 60)
  })
  const grid = { u: box.u, v: box.v, cellMm, columns: CELLS_ALONG, values }
  const { panelId, outline } = largest.panel
  const maps = [{ view: largest.view.id, panelId, outline, grid, limits: [150, 200, 300, 500, 1000] }]
  return { figure, sheet, marks, maps, room: { width: 988, height: 640 } }
}

/** The same sheet with nothing on it. */
function emptyPlan({ figure, sheet, room }: DrawnPlan): DrawnPlan {
  const views = sheet.views.map((view) => ({ ...view, panels: [], ink: [], silhouette: '' }))
  const marks = { panels: [], extents: [], callouts: [], places: [], captions: [], table: [], legend: [] }
  return { figure, sheet: { ...sheet, views }, marks, maps: [], room }
}

const measureIn = (page: Page, rounds: number): Promise<RedrawTimes> =>
  page.evaluate(
    (count) => (window as unknown as { measureRedraws(n: number): Promise<RedrawTimes> }).measureRedraws(count),
    rounds,
  )

const at95 = (times: readonly number[]): number =>
  [...times].sort((a, b) => a - b)[Math.ceil(times.length * 0.95) - 1] ?? Number.NaN

const median = (times: readonly number[]): number =>
  [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? Number.NaN

/**
 * Redraws of a plan with 120 panels, 60 callouts and 2,500 map cells, processor slowed four times, beside the same page
 * with an empty plan. A redraw is timed on the page's own thread, from the start of the frame that makes the change until
 * after that frame was painted; after a zoom several frames draw it anew, and the longest of them counts. The last row
 * tells whether pictures keep up when every frame moves the plan.
 */
export async function planRedraw() {
  const plan = fullPlan()
  const [full, empty] = [await servePlan(plan), await servePlan(emptyPlan(plan))]
  const browser = await openBrowser()
  try {
    const pages: Page[] = []
    const drawn: number[] = []
    for (const { address } of [full, empty]) {
      const page = await browser.newPage({ viewport: { width: 1440, height: 900 } })
      page.on('pageerror', (fault) => process.stderr.write(`${fault.message}\n`))
      await page.goto(address)
      await page.waitForFunction(() => 'measureRedraws' in window)
      drawn.push(await page.locator('.plan-target').count(), await page.locator('.callout').count())
      const session = await page.context().newCDPSession(page)
      await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWED })
      await measureIn(page, 5)
      pages.push(page)
    }
    if (drawn.join() !== `${PANELS},${CALLOUTS},0,0`) throw new Error(`Not what was to be drawn: ${drawn.join(' ')}`)
    const [ours, theirs] = pages
    if (ours === undefined || theirs === undefined) throw new Error('A page is missing.')
    await ours.bringToFront()
    const own = await measureIn(ours, ROUNDS)
    await theirs.bringToFront()
    const reference = await measureIn(theirs, ROUNDS)
    const rows = [
      ['state', 'state of a panel', 16],
      ['inHand', 'another panel in hand', 16],
      ['move', 'zoom and pan', 16],
      ['map', 'new values on 2,500 map cells', 16],
      ['atRest', 'longest frame until a zoom that rests is drawn anew', 16],
      ['between', 'from picture to picture while moving', 34],
    ] as const
    return rows.map(([name, what, aimMs]) => ({
      what: `redraw, ${what}; ${PANELS} panels, ${CALLOUTS} callouts, processor slowed ${SLOWED} times, 95th percentile of ${own[name].length}`,
      ours: `${at95(own[name]).toFixed(1)} ms (median ${median(own[name]).toFixed(1)})`,
      reference: `${at95(reference[name]).toFixed(1)} ms (${median(reference[name]).toFixed(1)}), empty plan`,
      ratio: at95(own[name]) / aimMs,
      aim: `1 (of ${aimMs} ms)`,
    }))
  } finally {
    await browser.close()
    full.stop()
    empty.stop()
  }
}
