import { bodyPlan } from '../../../electron/figures/body-plan.ts'
import type { CalloutWish } from '../../../electron/figures/callout-wish.ts'
import { callouts } from '../../../electron/figures/callouts.ts'
import { boundsOf, flattened } from '../../../electron/figures/cubic-path.ts'
import { readOutline } from '../../../electron/figures/path-text.ts'
import type { HatchName, PanelMark, PlanMarks, PlanSheet } from '../../../shared-types/figure.ts'
import type { DrawnPlan } from '../../pages/drawn-plan-child.ts'

export const PANELS = 120
export const CALLOUTS = 60
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
  return {
    figure,
    sheet: {
      ...outside,
      widthMm,
      views: cut.filter(({ panels }) => panels.length > 0),
    },
  }
}

export function fullPlan(): DrawnPlan {
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
    .map(
      (mark): CalloutWish => ({
        ...mark,
        quiet: false,
        inHand: false,
        hatched: mark.hatch !== 'clean',
        at: null,
      }),
    )
  const rings = callouts(sheet, wishes, 0.1, [], {
    inAView: PANELS,
    quiet: 0,
  }).slice(0, CALLOUTS)
  if (rings.length < CALLOUTS) throw new Error(`Only ${rings.length} callouts found a place.`)
  const marks: PlanMarks = {
    ...{
      panels,
      callouts: rings,
      extents: [],
      places: [],
      captions: [],
      legend: [],
    },
    table: panels.map((mark) => ({
      ...mark,
      layer: 'outer',
      findings: [],
      exhibits: [],
    })),
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
  const maps = [
    {
      view: largest.view.id,
      panelId,
      outline,
      grid,
      limits: [150, 200, 300, 500, 1000],
    },
  ]
  return { figure, sheet, marks, maps, room: { width: 988, height: 640 } }
}

/** The same sheet with nothing on it. */
export function emptyPlan({ figure, sheet, room }: DrawnPlan): DrawnPlan {
  const views = sheet.views.map((view) => ({
    ...view,
    panels: [],
    ink: [],
    silhouette: '',
  }))
  const marks = {
    panels: [],
    extents: [],
    callouts: [],
    places: [],
    captions: [],
    table: [],
    legend: [],
  }
  return { figure, sheet: { ...sheet, views }, marks, maps: [], room }
}
