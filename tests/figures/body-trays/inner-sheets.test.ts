import { performance } from 'node:perf_hooks'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { frameOf } from '../../../electron/figures/body-shape/frame.ts'
import { innerSheets } from '../../../electron/figures/body-trays/inner-sheets.ts'
import { drawnBody } from '../../../electron/figures/plan-sheets.ts'
import { dimensionsOf } from '../../../electron/sheets/dimension-list.ts'
import { panelConditions, panelList } from '../../../electron/sheets/panel-list.ts'
import type { BodyStyle } from '../../../shared-types/words.ts'
import { faultsOf } from './sheet-checks.ts'
import { anyFrame, bodies } from './test-frames.ts'
import { outsideOf } from './test-outside.ts'

const every = Object.keys(panelConditions())
const conditionSets: Readonly<Record<string, readonly string[]>> = {
  none: [],
  all: every,
  'a framed car': ['separate-frame', 'floor-crossmember'],
  'a unitary car': ['front-spring-tower', 'spare-well', 'outriggers', 'floor-crossmember', 'filler-flap.R'],
  'one side only': ['outriggers.L', 'front-spring-tower.R', 'side-loading-door.L', 'sunroof', 'split-tail-door'],
}

/** The inner sheets of a body as it is usually drawn, with the outlines of its outside sheet. */
const usual = (body: BodyStyle, conditions: readonly string[]) =>
  drawnBody(body, dimensionsOf(body, {}), conditions).sheets.filter(({ id }) => id !== 'outside')
const idsOf = (sheets: ReturnType<typeof usual>) =>
  sheets.flatMap(({ views }) => views.flatMap(({ panels }) => panels.map(({ panelId }) => panelId)))

describe.each(bodies)('inner sheets of the body %s', (body) => {
  it.each(Object.entries(conditionSets))('show the panels of the walk once each, with %s', (_name, conditions) => {
    const drawn = idsOf(usual(body, conditions))
    const walk = panelList(body, 'with underneath', conditions).panels.filter(({ phase }) => phase > 1)
    // The front wall of the bed is walked outside and can be drawn from inside the bed only.
    const wanted = [...walk.map(({ id }) => id), ...(body === 'pickup' ? ['bed-front'] : [])]
    expect([...drawn].sort()).toEqual([...wanted].sort())
  })

  it.each(Object.entries(conditionSets))('are sound at the usual dimensions, with %s', (_name, conditions) => {
    expect(usual(body, conditions).flatMap(faultsOf)).toEqual([])
  })

  it('are sound at any dimensions a record may give, under any conditions', () => {
    fc.assert(
      fc.property(anyFrame(body), fc.subarray(every), (frame, conditions) => {
        const sheets = innerSheets(frame, new Set(conditions), outsideOf(frame))
        expect(sheets.flatMap(faultsOf)).toEqual([])
      }),
      { numRuns: 200 },
    )
  }, 240_000)

  it('both sides of the openings have the same shapes', () => {
    const [openings] = usual(body, every)
    // Moved by whole millimetres, points may round differently by a micrometre: some square millimetres on a door.
    const sizes = (side: string) =>
      openings?.views[0]?.panels
        .filter(({ panelId }) => panelId.endsWith(side))
        .map(({ areaMm2 }) => Math.round(areaMm2 / 20))
    expect(sizes('.L')).toEqual(sizes('.R'))
  })

  it('are made anew quickly', () => {
    const frame = frameOf(drawnBody(body, dimensionsOf(body, {}), []).work)
    const outside = outsideOf(frame)
    const rounds = 30
    const start = performance.now()
    for (let round = 0; round < rounds; round++) innerSheets(frame, new Set(every), outside)
    console.log(`${body}: four inner sheets in ${((performance.now() - start) / rounds).toFixed(1)} ms`)
  })
})
