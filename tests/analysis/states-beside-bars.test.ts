import { describe, expect, it } from 'vitest'
import { originality } from '../../electron/analysis/originality/originality.ts'
import type { WeighedPanel } from '../../shared-types/computations.ts'
import { statesBesideBars } from '../../shared-types/states-beside-bars.ts'
import type { MetalState } from '../../shared-types/words.ts'

const panel = (id: string, metal: MetalState, paint: WeighedPanel['paint'] = 'refinished'): WeighedPanel => ({
  id,
  label: id,
  layer: 'outer',
  bodyArea: 'left side',
  areaM2: 1,
  areaIsMeasured: true,
  walked: true,
  inspection: 'inspected',
  reason: '',
  metal,
  paint,
  backSeen: false,
  findings: [],
})
const whole = (...panels: WeighedPanel[]) => originality({ panels, parts: [] }).whole

describe('one name with two figures', () => {
  const filled = whole(panel('a', 'original metal'), panel('b', 'filler over metal'), panel('c', 'patch panel'))

  it('stands so where metal lies under filler, and the reason is said', () => {
    const [share] = filled.metal
    expect(share).toMatchObject({ state: 'original metal', lowPercent: 100 / 3, highPercent: 100 / 3 })
    expect(filled.originalMetal.highPercent).toBeCloseTo(200 / 3, 9)
    expect(statesBesideBars(filled, false)).toMatch(/^The bar of original metal leaves filler over metal open/)
  })

  it('needs no reason where both figures are the same, or one of them does not stand there', () => {
    expect(statesBesideBars(whole(panel('a', 'original metal'), panel('b', 'not determined')), false)).toBe('')
    expect(statesBesideBars(whole(panel('b', 'filler over metal')), false)).toBe('')
  })

  it('stands so where the user set weights, and that is said too', () => {
    const weights = [{ weighs: 'panel/a', factor: 3, reason: '', setBy: '', setAt: '2026-05-14T10:00:00.000Z' }]
    const panels = [panel('a', 'original metal'), panel('b', 'patch panel', 'factory finish')]
    const weighed = originality({ panels, parts: [], weights }).whole
    expect(weighed.originalMetal.lowPercent).toBe(75)
    expect(statesBesideBars(weighed, true)).toBe('The bars count with the weights set; the table counts by area alone.')
  })
})
