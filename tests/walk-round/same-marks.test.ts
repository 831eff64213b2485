import { describe, expect, it } from 'vitest'
import { sameMarks } from '../../renderer/places/walk-round/same-marks.ts'
import type { PanelMark, PlanMarks } from '../../shared-types/figure.ts'

const panel = (stop: number, word: string): PanelMark => ({
  panelId: `panel-${'abc'.charAt(stop)}`,
  stop,
  name: 'A panel',
  inspection: 'inspected',
  metal: 'original metal',
  paint: 'refinished',
  hatch: 'clean',
  edge: 'solid',
  crossed: false,
  word,
})
const marks = (...words: readonly string[]): PlanMarks => ({
  panels: words.map((word, stop) => panel(stop, word)),
  extents: [],
  callouts: [],
  places: [],
  captions: [],
  table: [],
  legend: [],
})

describe('marks that come in anew', () => {
  it('are the old ones where nothing changed, so that nothing is drawn again', () => {
    const before = marks('original metal', 'original metal')
    expect(sameMarks(before, marks('original metal', 'original metal')).panels).toBe(before.panels)
  })

  it('change only the panel that changed', () => {
    const before = marks('original metal', 'original metal')
    const after = sameMarks(before, marks('original metal', 'patch panel'))
    expect(after.panels[0]).toBe(before.panels[0])
    expect(after.panels[1]?.word).toBe('patch panel')
  })

  it('follow a list that grew or shrank', () => {
    const before = marks('original metal', 'original metal')
    expect(sameMarks(before, marks('original metal')).panels).toHaveLength(1)
    expect(sameMarks(marks('original metal'), before).panels).toHaveLength(2)
  })
})
