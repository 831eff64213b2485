import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { openQuestions } from '../../electron/analysis/originality/open-questions.ts'
import { originality } from '../../electron/analysis/originality/originality.ts'
import { type CountedPart, computations, type WeighedPanel } from '../../shared-types/computations.ts'
import type { AreaJudgement, NarrowedRange, ShareRange } from '../../shared-types/judgement.ts'
import { inspectionState, metalState, paintState, partState } from '../../shared-types/words.ts'

const plain: WeighedPanel = {
  id: 'roof-skin',
  label: 'Roof panel',
  bodyArea: 'roof',
  layer: 'outer',
  walked: true,
  areaM2: 1,
  areaIsMeasured: true,
  inspection: 'not inspected',
  reason: '',
  metal: 'not inspected',
  paint: 'not inspected',
  backSeen: false,
  findings: [],
}
const panel = (over: Partial<WeighedPanel>): WeighedPanel => ({ ...plain, ...over })
const seen = (metal: WeighedPanel['metal'], over: Partial<WeighedPanel> = {}) =>
  panel({ inspection: 'inspected', metal, paint: 'factory finish', ...over })
const judge = (panels: readonly WeighedPanel[], parts: readonly CountedPart[] = []) => originality({ panels, parts })
const part = (over: Partial<CountedPart>): CountedPart => ({
  id: 'horns',
  label: 'Horns',
  group: 'lamps',
  groupLabel: 'Lamps',
  state: 'not seen',
  leftOut: null,
  learned: 'seen',
  exhibits: [],
  ...over,
})

const anyPanel = fc
  .record({
    areaM2: fc.double({ min: 0.01, max: 3, noNaN: true }),
    inspection: fc.constantFrom(...inspectionState.options),
    metal: fc.constantFrom(...metalState.options),
    paint: fc.constantFrom(...paintState.options),
    bodyArea: fc.constantFrom('roof', 'front', 'rear'),
    layer: fc.constantFrom('outer', 'inner', 'under'),
  } as const)
  .map((over) => panel(over))
const anyPanels = fc.array(anyPanel, { minLength: 1, maxLength: 25 })
const width = (area: AreaJudgement, which: 'originalMetal' | 'factoryPaint') =>
  area[which].highPercent - area[which].lowPercent
const TINY = 1e-9

describe('shares as bounds', () => {
  it('a car nobody has looked at may be anything: 0 to 100', () => {
    expect(judge([plain, panel({ areaM2: 4 })]).whole.originalMetal).toMatchObject({ lowPercent: 0, highPercent: 100 })
  })

  it('weighs by area, worked by hand: 1 m² original, 2 m² replaced, 1 m² unseen is 25 to 50', () => {
    const { whole } = judge([seen('original metal'), seen('replacement panel', { areaM2: 2 }), plain])
    expect(whole.originalMetal).toMatchObject({
      lowPercent: 25,
      highPercent: 50,
      seenYesPercent: 25,
      seenNoPercent: 50,
      notSeenPercent: 25,
    })
    expect(whole).toMatchObject({ areaM2: 4, seenAreaM2: 3, panels: 3, panelsSeen: 2 })
    expect(whole.metal).toEqual([
      { state: 'original metal', lowPercent: 25, highPercent: 50, areaM2: 1 },
      { state: 'replacement panel', lowPercent: 50, highPercent: 75, areaM2: 2 },
      { state: 'not inspected', lowPercent: 25, highPercent: 25, areaM2: 1 },
    ])
  })

  it('filler over metal and what is not determined keep the range open', () => {
    for (const metal of ['filler over metal', 'not determined'] as const) {
      expect(judge([seen(metal)]).whole.originalMetal).toMatchObject({ lowPercent: 0, highPercent: 100 })
    }
  })

  it('a state left in the row of a panel that is not accessible counts for nothing', () => {
    const { whole } = judge([panel({ inspection: 'not accessible', reason: 'wall', metal: 'original metal' })])
    expect(whole.originalMetal).toMatchObject({ lowPercent: 0, highPercent: 100 })
    expect(whole.metal).toMatchObject([{ state: 'not inspected' }])
  })

  it('low never passes high, all lie in 0 to 100 and the three parts make the whole', () => {
    fc.assert(
      fc.property(anyPanels, (panels) => {
        const found = judge(panels)
        for (const area of [found.whole, ...found.areas, ...found.panels]) {
          for (const range of [area.originalMetal, area.factoryPaint]) {
            expect(range.lowPercent).toBeLessThanOrEqual(range.highPercent)
            expect(range.lowPercent).toBeGreaterThanOrEqual(0)
            expect(range.highPercent).toBeLessThanOrEqual(100)
            expect(range.seenYesPercent + range.notSeenPercent + range.seenNoPercent).toBeCloseTo(100, 9)
          }
          for (const state of [...area.metal, ...area.paint]) {
            expect(state.lowPercent).toBeLessThanOrEqual(state.highPercent)
          }
        }
        expect(computations.originality.output.safeParse(found).error).toBeUndefined()
      }),
    )
  })

  it('looking at one more panel never widens a range, nor lets it leave the one before', () => {
    const looks = fc.record({
      metal: fc.constantFrom(...metalState.options),
      paint: fc.constantFrom(...paintState.options),
    })
    fc.assert(
      fc.property(anyPanels, fc.nat(), looks, (panels, which, look) => {
        const at = which % panels.length
        const before = panels.map((one, index) =>
          index === at ? { ...one, inspection: 'not inspected' as const } : one,
        )
        const after = before.map((one, index) =>
          index === at ? { ...one, ...look, inspection: 'inspected' as const } : one,
        )
        const [less, more] = [judge(before).whole, judge(after).whole]
        for (const which of ['originalMetal', 'factoryPaint'] as const) {
          expect(width(more, which)).toBeLessThanOrEqual(width(less, which) + TINY)
          expect(more[which].lowPercent).toBeGreaterThanOrEqual(less[which].lowPercent - TINY)
          expect(more[which].highPercent).toBeLessThanOrEqual(less[which].highPercent + TINY)
        }
      }),
    )
  })

  it('what is unseen never adds to the low end', () => {
    fc.assert(
      fc.property(anyPanels, (panels) => {
        const unseen = panels.map((one) => ({ ...one, inspection: 'not inspected' as const }))
        expect(judge(unseen).whole.originalMetal.lowPercent).toBe(0)
        expect(judge(unseen).whole.factoryPaint.lowPercent).toBe(0)
      }),
    )
  })

  it('areas and panels add up to the whole', () => {
    fc.assert(
      fc.property(anyPanels, (panels) => {
        const { whole, areas } = judge(panels)
        const yes = areas.reduce((sum, area) => sum + (area.originalMetal.seenYesPercent * area.areaM2) / 100, 0)
        expect(yes).toBeCloseTo((whole.originalMetal.seenYesPercent * whole.areaM2) / 100, 9)
      }),
    )
  })
})

describe('because', () => {
  it('leads from the share over the panel and its findings to the exhibits', () => {
    const findings = [{ number: 3, text: 'F 3', learned: 'measured', filler: false, exhibits: [12, 14] }] as const
    const { because } = judge([seen('patch panel', { findings })]).whole.originalMetal
    expect(because.flatMap((line) => line.references)).toEqual([
      { kind: 'panel', key: 'roof-skin' },
      { kind: 'finding', key: '3' },
      { kind: 'exhibit', key: '12' },
      { kind: 'exhibit', key: '14' },
    ])
    expect(because[0]?.text).toBe(
      'Of 1.00 m², 0.00 m² count as original, 1.00 m² as not original and 0.00 m² may be either.',
    )
  })

  it('says when the weight of a panel was not measured', () => {
    const { originalMetal } = judge([seen('original metal', { areaIsMeasured: false })]).whole
    expect(originalMetal.basis).toBe('by area, 1.00 m², 1 of 1 areas not measured')
    expect(originalMetal.because[1]?.source).toMatch(/recalled/)
  })
})

describe('parts', () => {
  it('are counted over all and by group, unseen ones as the width', () => {
    const parts = [
      part({ id: 'a', state: 'factory fitted' }),
      part({ id: 'b', state: 'reproduction' }),
      part({ id: 'c' }),
      part({ id: 'd', group: 'glass', groupLabel: 'Glass', state: 'factory fitted' }),
    ]
    const [all, lamps, glass] = judge([plain], parts).parts
    expect(all).toMatchObject({ basis: '3 of 4 parts seen', lowPercent: 50, highPercent: 75 })
    expect(lamps?.label).toBe('Lamps')
    expect(glass).toMatchObject({ lowPercent: 100, highPercent: 100 })
  })

  it('added since or renewed by plan are told and not counted', () => {
    const parts = [
      part({ state: 'factory fitted' }),
      part({ id: 'roof-rack', state: 'later fitment', leftOut: 'added since' }),
    ]
    const [all] = judge([plain], parts).parts
    expect(all).toMatchObject({ basis: '1 of 1 parts seen', lowPercent: 100 })
    expect(all?.because.at(-1)?.text).toMatch(/added since, so not counted/)
  })

  it('of no state leave the range at 0 to 100', () => {
    for (const state of partState.options.filter((one) => one === 'not seen' || one === 'not determined')) {
      expect(judge([plain], [part({ state })]).parts[0]).toMatchObject({ lowPercent: 0, highPercent: 100 })
    }
  })
})

describe('what to do next', () => {
  it('names the greatest unseen surface first, then filler nobody has seen the back of', () => {
    const panels = [
      panel({ id: 'a', label: 'Small', areaM2: 0.2 }),
      panel({ id: 'b', label: 'Large', areaM2: 2 }),
      seen('filler over metal', { id: 'c', label: 'Filled' }),
      panel({ id: 'd', label: 'Beyond the level', areaM2: 5, walked: false }),
      seen('filler over metal', { id: 'e', label: 'Seen behind', backSeen: true }),
    ]
    expect(judge(panels).lookNext.map((next) => next.what)).toEqual([
      'Large',
      'Small',
      'Filled, from behind',
      'Beyond the level',
    ])
  })

  it('counts coverage by layer, and keeps not accessible apart', () => {
    const panels = [
      seen('original metal'),
      panel({ inspection: 'not accessible', reason: 'x' }),
      panel({ walked: false }),
    ]
    expect(judge(panels).coverage[0]).toEqual({ layer: 'outer', seen: 1, notAccessible: 1, walked: 2, all: 3 })
  })

  it('lists what is open with what would settle it', () => {
    const panels = [
      seen('filler over metal', { label: 'Filled' }),
      seen('not determined', { label: 'Doubtful', paint: 'not determined' }),
      panel({ label: 'Walled', inspection: 'not accessible', reason: 'against the wall' }),
    ]
    const questions = openQuestions({
      panels,
      parts: [part({ state: 'not determined' })],
      claims: [],
      carNumbers: [],
      strayPanels: ['bed-floor'],
    })
    expect(questions).toHaveLength(6)
    for (const question of questions) {
      expect(question.wouldSettle.length).toBeGreaterThan(10)
      expect(question.references.length).toBeGreaterThan(0)
    }
  })
})

describe('what would narrow the ranges', () => {
  const anyPart = fc.constantFrom(...partState.options).map((state) => part({ state }))
  const named = <Thing extends { readonly id: string }>(things: readonly Thing[], word: string): Thing[] =>
    things.map((thing, at) => ({ ...thing, id: `${word}-${at}` }))

  it('is for each thing just what settling it does, both ways, judged anew', () => {
    fc.assert(
      fc.property(anyPanels, fc.array(anyPart, { maxLength: 12 }), (somePanels, someParts) => {
        const panels = named(somePanels, 'panel')
        const parts = named(someParts, 'part')
        const found = judge(panels, parts)
        for (const { reference, narrows } of found.wouldNarrow) {
          for (const { range, points, now, ifYes, ifNo } of narrows) {
            const settled = (yes: boolean) => {
              const as: Partial<WeighedPanel> =
                range === 'original metal'
                  ? { metal: yes ? 'original metal' : 'replacement panel' }
                  : { paint: yes ? 'factory finish' : 'refinished' }
              const anew = judge(
                panels.map((each) => (each.id === reference.key ? { ...each, ...as, inspection: 'inspected' } : each)),
                parts.map((each) =>
                  each.id === reference.key ? { ...each, state: yes ? 'factory fitted' : 'reproduction' } : each,
                ),
              )
              return rangeOf(anew, range)
            }
            expect(now).toEqual(boundsOf(rangeOf(found, range)))
            for (const [told, anew] of [
              [ifYes, settled(true)],
              [ifNo, settled(false)],
            ] as const) {
              expect(told.lowPercent).toBeCloseTo(anew.lowPercent, 9)
              expect(told.highPercent).toBeCloseTo(anew.highPercent, 9)
              expect(now.highPercent - now.lowPercent - points).toBeCloseTo(anew.highPercent - anew.lowPercent, 9)
            }
          }
        }
      }),
      { numRuns: 60 },
    )
  })

  it('names the greatest first, worked by hand: of 10 m² a roof of 2 m² and a door of 1 m² are open', () => {
    const panels = [
      panel({ id: 'front-door.L', label: 'Left door', areaM2: 1 }),
      panel({ id: 'roof-skin', label: 'Roof panel', areaM2: 2 }),
      seen('original metal', { id: 'rear', areaM2: 7 }),
    ]
    const found = judge(panels, [part({ id: 'horns' }), part({ id: 'lamp', state: 'factory fitted' })]).wouldNarrow
    expect(found.map(({ label, mostPoints }) => [label, Math.round(mostPoints)])).toEqual([
      ['Horns', 50],
      ['Roof panel', 20],
      ['Left door', 10],
    ])
    expect(found[1]?.narrows[0]).toMatchObject({
      range: 'original metal',
      now: { lowPercent: 70, highPercent: 100 },
      ifYes: { lowPercent: 90, highPercent: 100 },
      ifNo: { lowPercent: 70, highPercent: 80 },
    })
  })

  it('says nothing of what is settled or left out', () => {
    const parts = [part({ leftOut: 'renewed by plan' }), part({ id: 'lamp', state: 'reproduction' })]
    expect(judge([seen('original metal')], parts).wouldNarrow).toEqual([])
  })
})

const boundsOf = ({ lowPercent, highPercent }: ShareRange) => ({ lowPercent, highPercent })

function rangeOf(judged: ReturnType<typeof judge>, range: NarrowedRange['range']): ShareRange {
  const all = judged.parts[0] ?? judged.whole.originalMetal
  if (range === 'parts') return all
  return range === 'original metal' ? judged.whole.originalMetal : judged.whole.factoryPaint
}
