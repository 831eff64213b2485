import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { originality } from '../../electron/analysis/originality/originality.ts'
import { type CountedPart, computations, type WeighedPanel } from '../../shared-types/computations.ts'
import type { OwnWeight } from '../../shared-types/own-weight.ts'
import { metalState, partState } from '../../shared-types/words.ts'

const panel = (id: string, over: Partial<WeighedPanel>): WeighedPanel => ({
  id,
  label: id,
  bodyArea: 'left side',
  layer: 'outer',
  walked: true,
  areaM2: 1,
  areaIsMeasured: true,
  inspection: 'inspected',
  reason: '',
  metal: 'original metal',
  paint: 'refinished',
  backSeen: false,
  findings: [],
  ...over,
})
const part = (id: string, over: Partial<CountedPart>): CountedPart => ({
  id,
  label: id,
  group: 'lamps',
  groupLabel: 'Lamps',
  state: 'not seen',
  leftOut: null,
  learned: null,
  exhibits: [],
  ...over,
})
const weight = (weighs: string, factor: number, reason = ''): OwnWeight => ({
  weighs,
  factor,
  reason,
  setBy: 'Ada Quill',
  setAt: '2026-05-14T10:00:00.000Z',
})

// 1 m² original on the left, 1 m² replaced on the right, 2 m² of roof not seen.
const panels = [
  panel('left-wing', {}),
  panel('right-wing', { bodyArea: 'right side', metal: 'replacement panel' }),
  panel('roof', { bodyArea: 'roof', areaM2: 2, inspection: 'not inspected' }),
]
const parts = [
  part('lamp', { state: 'factory fitted' }),
  part('lens', { state: 'reproduction' }),
  part('clock', { group: 'dials', groupLabel: 'Dials' }),
]
const judge = (...weights: OwnWeight[]) => originality({ panels, parts, weights })
const bounds = ({ lowPercent, highPercent }: { lowPercent: number; highPercent: number }) => [lowPercent, highPercent]

describe('weights of the user’s own', () => {
  it('are none unless set, and then a panel counts by area and a part by one: 25 to 75 and 33 to 67', () => {
    const plain = originality({ panels, parts })
    expect(bounds(plain.whole.originalMetal)).toEqual([25, 75])
    expect(plain).toMatchObject({ weightsSet: [], unweighed: null })
    expect(plain.parts[0]?.lowPercent).toBeCloseTo(100 / 3, 9)
  })

  it('make an area count so many times, worked by hand: the left side thrice is 3 of 6, 50 to 83', () => {
    const judged = judge(weight('body area/left side', 3, 'what the owner asks about'))
    expect(judged.whole.originalMetal.lowPercent).toBeCloseTo(50, 9)
    expect(judged.whole.originalMetal.highPercent).toBeCloseTo((100 * 5) / 6, 9)
    expect(bounds(judged.areas[0]?.originalMetal ?? { lowPercent: 0, highPercent: 0 })).toEqual([100, 100])
    expect(judged.whole.areaM2).toBe(4)
    expect(judged.whole.originalMetal.basis).toBe('by area, weighed, 4.00 m² as 6.00')
    expect(judged.unweighed).toMatchObject({ originalMetal: { lowPercent: 25, highPercent: 75 } })
    const line = judged.whole.originalMetal.because.find(({ text }) => text.startsWith('left-wing'))
    expect(line?.text).toBe('left-wing, 1.00 m² × 3: original metal; counts as original.')
    expect(line?.source).toBe('weight 3 set by Ada Quill, 14 May 2026: what the owner asks about')
  })

  it('are multiplied for an area and a layer, and one of the panel itself stands alone', () => {
    const both = judge(weight('body area/left side', 3), weight('layer/outer', 2))
    expect(both.whole.originalMetal.lowPercent).toBeCloseTo((100 * 6) / (6 + 2 + 4), 9)
    const alone = judge(weight('body area/left side', 3), weight('layer/outer', 2), weight('panel/left-wing', 1))
    expect(alone.whole.originalMetal.lowPercent).toBeCloseTo((100 * 1) / (1 + 2 + 4), 9)
    expect(alone.weightsSet.map(({ label, things }) => [label, things])).toEqual([
      ['Left side', 0],
      ['Panels, outer', 2],
      ['left-wing', 1],
    ])
  })

  it('weigh parts by group, and a part against its group: 4 of 7 and 0.5', () => {
    const judged = judge(weight('group of parts/lamps', 4))
    expect(judged.parts[0]?.lowPercent).toBeCloseTo((100 * 4) / 9, 9)
    expect(judged.parts[0]?.highPercent).toBeCloseTo((100 * 5) / 9, 9)
    const [all, lamps] = judge(weight('group of parts/lamps', 4), weight('part/lens', 0)).parts
    expect(bounds(lamps ?? { lowPercent: 0, highPercent: 0 })).toEqual([100, 100])
    expect(all?.lowPercent).toBeCloseTo(80, 9)
    expect(all?.because.find(({ text }) => text.startsWith('lens'))?.text).toBe('lens × 0: reproduction.')
  })

  it('of nothing at all leave a share at 0 to 100: nothing weighed is nothing known', () => {
    const judged = judge(weight('layer/outer', 0), weight('group of parts/lamps', 0), weight('group of parts/dials', 0))
    expect(bounds(judged.whole.originalMetal)).toEqual([0, 100])
    expect(bounds(judged.parts[0] ?? { lowPercent: 0, highPercent: 0 })).toEqual([0, 100])
  })

  it('lead what would narrow most', () => {
    expect(judge().wouldNarrow.map(({ label }) => label)).toEqual(['roof', 'clock'])
    const judged = judge(weight('body area/roof', 0.1), weight('group of parts/dials', 8))
    expect(judged.wouldNarrow.map(({ label }) => label)).toEqual(['clock', 'roof'])
    const [clock] = judged.wouldNarrow
    expect(clock?.mostPoints).toBeCloseTo(80, 9)
    expect(judged.weights).toMatch(/each times what the user set/)
    expect(judged.weights).toMatch(/Charter of Turin/)
  })

  it('are all the same when all are the same, whatever they are', () => {
    const any = fc.record({
      panels: fc.array(
        fc.record({
          areaM2: fc.double({ min: 0.01, max: 3, noNaN: true }),
          metal: fc.constantFrom(...metalState.options),
        }),
        { minLength: 1, maxLength: 12 },
      ),
      states: fc.array(fc.constantFrom(...partState.options), { maxLength: 12 }),
      factor: fc.double({ min: 0.01, max: 1000, noNaN: true }),
    })
    fc.assert(
      fc.property(any, ({ panels: some, states, factor }) => {
        const input = {
          panels: some.map((over, at) => panel(`panel-${at}`, over)),
          parts: states.map((state, at) => part(`part-${at}`, { state })),
        }
        const weights = [weight('layer/outer', factor), weight('group of parts/lamps', factor)]
        const [plain, weighed] = [originality(input), originality({ ...input, weights })]
        expect(computations.originality.output.safeParse(weighed).error).toBeUndefined()
        const both = [
          [plain.whole.originalMetal, weighed.whole.originalMetal],
          ...plain.parts.map((range, at) => [range, weighed.parts[at]]),
        ]
        for (const [one, other] of both) {
          expect(other?.lowPercent).toBeCloseTo(one?.lowPercent ?? Number.NaN, 7)
          expect(other?.highPercent).toBeCloseTo(one?.highPercent ?? Number.NaN, 7)
        }
      }),
    )
  })
})
