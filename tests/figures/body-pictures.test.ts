import { describe, expect, it } from 'vitest'
import { drawnBody } from '../../electron/figures/plan-sheets.ts'
import { renderPlanSvg } from '../../electron/figures/render-plan-svg.ts'
import { dimensionsOf } from '../../electron/sheets/dimension-list.ts'
import { bodies } from './body-trays/test-frames.ts'
import { plainMarks } from './plain-marks.ts'
import { sedge } from './sedge.ts'

/** Pictures of every body from outside, looked at before they were kept; a change of drawing must be looked at again. */
describe.each(bodies)('reference pictures of a %s', (body) => {
  it.each(['paper', 'night'] as const)('%s', async (look) => {
    const { sheets } = drawnBody(body, dimensionsOf(body, {}), [...sedge, 'side-loading-door.L'])
    const [outside] = sheets
    if (!outside) throw new Error('no outside')
    const svg = renderPlanSvg({ sheet: outside, marks: plainMarks(outside), look, pixelsPerMm: 0.2 })
    await expect(svg).toMatchFileSnapshot(`reference/bodies/${body}-${look}.svg`)
  })
})
