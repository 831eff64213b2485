import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { bodyPlan } from '../../electron/figures/body-plan.ts'
import { boundsOf, flattened } from '../../electron/figures/cubic-path.ts'
import { developedPanelAreasM2 } from '../../electron/figures/panel-areas.ts'
import { readOutline } from '../../electron/figures/path-text.ts'
import type { PlanViewFile } from '../../electron/figures/plan-sheet-file.ts'
import { drawnBody } from '../../electron/figures/plan-sheets.ts'
import { resourcePath } from '../../electron/places-on-disk.ts'
import { dimensionsOf } from '../../electron/sheets/dimension-list.ts'
import { panelAreaM2 } from '../../electron/sheets/panel-areas.ts'
import { panelConditions, panelList } from '../../electron/sheets/panel-list.ts'
import type { BodyStyle } from '../../shared-types/words.ts'
import { bodies } from './body-trays/test-frames.ts'
import { faultsOf, named, unnamedSeams } from './plan-checks.ts'
import { plausibleAreas } from './plausible-areas.ts'
import { sedge } from './sedge.ts'

const listedAreas: Readonly<Record<string, unknown>> = JSON.parse(
  readFileSync(resourcePath('lists', 'panel-areas.json'), 'utf8'),
).areasM2

const everything = Object.keys(panelConditions()).flatMap((name) =>
  name === 'filler-flap' ? ['filler-flap.R'] : name === 'side-loading-door' ? ['side-loading-door.L'] : [name],
)
const plans = bodies.map((body) => [body, drawnBody(body, dimensionsOf(body, {}), sedge)] as const)
const outsideOf = (body: BodyStyle): readonly PlanViewFile[] => {
  const sheet = plans.find(([name]) => name === body)?.[1].sheets.find(({ id }) => id === 'outside')
  if (!sheet) throw new Error(`No outside of ${body}`)
  return sheet.views
}
describe.each(plans)('the plan of a %s', (body, plan) => {
  it('draws every panel of the walk and no other, whatever the car has', () => {
    for (const conditions of [[], sedge, everything]) {
      const { sheets } = drawnBody(body, dimensionsOf(body, {}), conditions)
      const drawn = new Set(sheets.flatMap(({ views }) => views.flatMap((view) => view.panels.map((p) => p.panelId))))
      const walk = panelList(body, 'with underneath', conditions).panels.map((panel) => panel.id)
      expect(walk.filter((id) => !drawn.has(id))).toEqual([])
      expect([...drawn].filter((id) => !walk.includes(id))).toEqual([])
    }
  })

  it('has the length, width, height and wheelbase it states', () => {
    const { lengthMm, widthMm, heightMm, wheelbaseMm } = plan.dimensions
    const left = named(outsideOf(body), 'left')
    const side = boundsOf(flattened(readOutline(left.silhouette), 30))
    expect(Math.abs(-side.v - heightMm)).toBeLessThan(1)
    const above = boundsOf(flattened(readOutline(named(outsideOf(body), 'roof').silhouette), 30))
    expect(Math.abs(above.height - widthMm)).toBeLessThan(2)
    const inked = left.ink
      .filter(({ occlude }) => occlude)
      .map(({ path }) => boundsOf(flattened(readOutline(path), 20)))
    const ends = inked.map((box) => [box.u, box.u + box.width] as const)
    expect(Math.abs(Math.min(...ends.map(([from]) => from)))).toBeLessThan(6)
    expect(Math.abs(Math.max(...ends.map(([, to]) => to)) - lengthMm)).toBeLessThan(6)
    const tyres = inked.filter((box) => Math.abs(box.width - 2 * plan.dimensions.tyreRadiusMm) < 1)
    expect(Math.abs((tyres[0]?.u ?? 0) - (tyres[1]?.u ?? 0))).toBeCloseTo(wheelbaseMm, 1)
  })

  it('outlines closed, simple, clockwise, labels inside; tiles, mirrors and registers to the micrometre', () => {
    expect(faultsOf(outsideOf(body))).toEqual([])
  })

  it('neighbours meet by a joint that has a name, whatever the car has', () => {
    for (const conditions of [[], sedge, everything]) {
      const [outside] = drawnBody(body, dimensionsOf(body, {}), conditions).sheets
      expect(unnamedSeams(body, outside?.views ?? [])).toEqual([])
    }
  })

  it('has the developed areas its drawing gives; `node build/panel-areas.mjs` makes the list anew', () => {
    const drawn = developedPanelAreasM2(body)
    expect(Object.keys(drawn).length).toBeGreaterThan(15)
    expect(listedAreas[body]).toEqual(drawn)
  })

  it('has developed areas within what is plausible', () => {
    const faults = Object.entries(plausibleAreas(body)).flatMap(([id, [least, most]]) => {
      const drawn = panelAreaM2(body, id) ?? panelAreaM2(body, `${id}.L`)
      return drawn !== null && (drawn < least || drawn > most) ? [`${id}: ${drawn} not in ${least} to ${most}`] : []
    })
    expect(faults).toEqual([])
    for (const id of ['front-side.L', 'front-door.R', 'front-lid', 'lower-rail-outer.L']) {
      expect(panelAreaM2(body, id)).not.toBeNull()
    }
  })
})

describe('a car of its own dimensions', () => {
  it('is drawn with them', () => {
    const own = bodyPlan('coupe', 'uk', { wheelbaseMm: 2600, heightMm: 1400 }, sedge)
    expect(own.dimensions).toMatchObject({ wheelbaseMm: 2600, heightMm: 1400, lengthMm: 4250 })
    expect(own.sheets[0]?.views[0]?.silhouette).not.toBe(
      bodyPlan('coupe', 'uk', {}, sedge).sheets[0]?.views[0]?.silhouette,
    )
  })
})

describe('the figure handed out', () => {
  it('is the same object each time and names its panels in the chosen English', () => {
    expect(bodyPlan('coupe', 'uk')).toBe(bodyPlan('coupe', 'uk'))
    expect(bodyPlan('coupe', 'us').textAlternative).toContain('Left front fender')
    expect(bodyPlan('coupe', 'uk').textAlternative).toContain('Left front wing')
  })
})
