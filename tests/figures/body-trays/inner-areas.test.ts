import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { drawnBody } from '../../../electron/figures/plan-sheets.ts'
import { resourcePath } from '../../../electron/places-on-disk.ts'
import { dimensionsOf } from '../../../electron/sheets/dimension-list.ts'
import type { BodyStyle } from '../../../shared-types/words.ts'
import { bodies } from './test-frames.ts'

interface Entry {
  readonly id: string
  readonly areaM2: { readonly [B in BodyStyle]?: readonly [number, number] }
}
// Plausible areas of the panel list: recalled trade practice, no source.
const list = JSON.parse(readFileSync(resourcePath('lists', 'panels.json'), 'utf8')) as { panels: readonly Entry[] }
const ranges = new Map(list.panels.map(({ id, areaM2 }) => [id, areaM2]))

const conditions = ['front-spring-tower', 'spare-well', 'sunroof', 'split-tail-door', 'outriggers']

describe.each(bodies)('areas of the unfolded panels of the body %s', (body) => {
  const { sheets } = drawnBody(body, dimensionsOf(body, {}), conditions)
  const unfolded = sheets.filter(({ id }) => id === 'openings' || id === 'bay' || id === 'floor')
  // Lids and doors keep the outline of their skin, which the outside view foreshortens: no area of these sheets.
  const panels = unfolded
    .flatMap(({ views }) => views.flatMap((view) => view.panels))
    .filter(({ panelId }) => !/^(front-lid|rear-lid|tail-door|rear-cargo-door)-inner/.test(panelId))

  it.each(panels.map(({ panelId, areaMm2 }) => [panelId, areaMm2 / 1e6] as const))('%s, %f m2', (panelId, areaM2) => {
    const [least, most] = ranges.get(panelId.replace(/\.[LR]$/, ''))?.[body] ?? [1, 0]
    expect(areaM2).toBeGreaterThanOrEqual(least)
    expect(areaM2).toBeLessThanOrEqual(most)
  })
})
