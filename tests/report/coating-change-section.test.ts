import { describe, expect, it } from 'vitest'
import type { CoatingChange, ExtentChange } from '../../shared-types/coating-change.ts'
import { composed, has, textOf } from './composing.ts'
import { contentFixture, recordFixture } from './content-fixture.ts'

const extent = (words: string): ExtentChange['change'] => ({ low: 0, middle: 0, high: 0, coverage: 0.9, words })
const changed: CoatingChange = {
  correction: 2,
  panelId: 'front-door.L',
  panel: 'Left door',
  thresholdUm: 300,
  before: { spots: [4, 5, 6], from: '2026-11-03', to: '2026-11-03' },
  after: { spots: [30, 31, 32], from: '2026-11-14', to: '2026-11-15' },
  area: {
    before: extent('0.16 m² (0.13 to 0.2, 90 %).'),
    after: extent('0 m² (0 to 0.02, 90 %).'),
    change: extent('Narrowed by 0.16 m² (0.11 to 0.2 m², 90 %).'),
    verdict: 'less',
  },
  volume: {
    before: extent('131 cm³ (98 to 170, 90 %).'),
    after: extent('0 cm³ (0 to 9, 90 %).'),
    change: extent('Narrowed by 128 cm³ (90 to 168 cm³, 90 %).'),
    verdict: 'less',
  },
  notes: ['R 5 was amended since; computed from the readings as they were cited.'],
  problem: null,
  cannotTell: 'Two maps compare thickness, not work.',
}

describe.skipIf(!has('pdftotext'))('a correction that cites the coating, in the report', () => {
  const printedWith = async (coatingChanges: readonly CoatingChange[]) =>
    textOf((await composed(contentFixture(recordFixture(), { coatingChanges }))).path).replace(/\s+/g, ' ')

  it('prints readings, both maps and the difference with its interval, and what it cannot tell', async () => {
    const text = await printedWith([changed])
    expect(text).toMatch(/Left door; before: 3 spots between R 4 and R 6, read 3 November 2026/)
    expect(text).toMatch(/after: 3 spots between R 30 and R 32, read 14 November 2026 to 15 November 2026/)
    expect(text).toMatch(/Narrowed by 0.16 m² \(0.11 to 0.2 m², 90 %\)\. Before: 0.16 m²/)
    expect(text).toMatch(/Narrowed by 128 cm³/)
    expect(text).toMatch(/R 5 was amended since/)
    expect(text).toMatch(/Two maps compare thickness, not work/)
  })
  it('prints why nothing is told where it cannot be, and nothing where nothing is cited', async () => {
    const problem = 'No change can be told yet: cite the readings after the work as well.'
    const text = await printedWith([{ ...changed, after: null, area: null, volume: null, notes: [], problem }])
    expect(text).toMatch(/after: no reading cited/)
    expect(text).toMatch(/cite the readings after the work as well/)
    expect(text).not.toMatch(/Narrowed/)
    expect(await printedWith([])).not.toMatch(/no reading cited/)
  })
})
