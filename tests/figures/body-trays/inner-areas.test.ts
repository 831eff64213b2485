import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { innerSheets } from '../../../electron/figures/body-trays/inner-sheets.ts'
import { resourcePath } from '../../../electron/places-on-disk.ts'
import { dimensionsOf } from '../../../electron/sheets/dimension-list.ts'
import type { BodyStyle } from '../../../shared-types/words.ts'
import { bodies, frameOf } from './test-frames.ts'
import { outsideOf } from './test-outside.ts'

interface Entry {
  readonly id: string
  readonly areaM2: { readonly [B in BodyStyle]?: readonly [number, number] }
}
// Plausible areas of the panel list: recalled trade practice, no source.
const list = JSON.parse(readFileSync(resourcePath('lists', 'panels.json'), 'utf8')) as { panels: readonly Entry[] }
const ranges = new Map(list.panels.map(({ id, areaM2 }) => [id, areaM2]))

const conditions = ['front-spring-tower', 'spare-well', 'sunroof', 'split-tail-door', 'outriggers']

describe.each(bodies)('areas of the unfolded panels of the body %s', (body) => {
  const frame = frameOf(body, dimensionsOf(body, {}))
  const sheets = innerSheets(frame, new Set(conditions), outsideOf(frame)).filter(({ id }) => id !== 'under')
  const panels = sheets.flatMap(({ views }) => views.flatMap((view) => view.panels))
  // What comes from an outline of the outside sheet is judged with that sheet; here it is a stand-in.
  const ours = panels.filter(({ panelId }) => !/^(front|rear)-lid-inner|door-inner/.test(panelId))

  it.each(ours.map(({ panelId, areaMm2 }) => [panelId, areaMm2 / 1e6] as const))('%s, %f m2', (panelId, areaM2) => {
    const [least, most] = ranges.get(panelId.replace(/\.[LR]$/, ''))?.[body] ?? [1, 0]
    expect(areaM2).toBeGreaterThanOrEqual(least)
    expect(areaM2).toBeLessThanOrEqual(most)
  })
})
