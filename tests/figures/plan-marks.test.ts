import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bodyPlan } from '../../electron/figures/body-plan.ts'
import { medianOf, planMarks } from '../../electron/figures/plan-marks.ts'
import { renderPlanSvg } from '../../electron/figures/render-plan-svg.ts'
import { panelList } from '../../electron/sheets/panel-list.ts'
import type { CalloutMark } from '../../shared-types/figure.ts'
import type { PanelState } from '../../shared-types/panel.ts'
import type { RecordView } from '../../shared-types/record.ts'
import { inspectionState, metalState } from '../../shared-types/words.ts'
import { sedge } from './sedge.ts'

const figure = bodyPlan('coupe', 'uk')
const definitions = panelList('coupe', 'with underneath', sedge).panels
const ids = definitions.map(({ id }) => id)

const state = (panelId: string, inspection: PanelState['inspection'], metal: PanelState['metal']): PanelState => ({
  panelId,
  inspection,
  reason: inspection === 'not accessible' ? 'covered by the carpet' : '',
  metal,
  paint: 'refinished',
  nothingFound: false,
  backSeen: false,
  magnetVoid: false,
  note: '',
  changedAt: '2026-05-14T10:42:07.000Z',
})

/** A record that holds no more than the registers a plan is drawn from. */
const recordOf = (panels: readonly PanelState[], more: Partial<RecordView> = {}): RecordView =>
  ({ panels, findings: [], exhibits: [], spots: [], ...more }) as unknown as RecordView

const marksOf = (id: string, panels: readonly PanelState[], pixelsPerMm = 0.138, inHand: string | null = null) => {
  const sheet = figure.sheets.find((one) => one.id === id)
  if (sheet === undefined) throw new Error(`No sheet ${id}`)
  return planMarks({ sheet, record: recordOf(panels), definitions, names: 'uk', pixelsPerMm, inHand })
}

interface Place {
  readonly x: number
  readonly y: number
}
function cross(a: Place, b: Place, c: Place, d: Place): boolean {
  const turn = (p: Place, q: Place, r: Place) => (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x)
  return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0
}
function crossingLeaders(callouts: readonly CalloutMark[]): string[] {
  const led = callouts.filter(({ leader }) => leader.length === 2)
  return led.flatMap((one, index) =>
    led.slice(index + 1).flatMap((other) => {
      const [a, b] = one.leader
      const [c, d] = other.leader
      return a && b && c && d && cross(a, b, c, d) ? [`${one.figure} and ${other.figure}`] : []
    }),
  )
}

describe('callouts', () => {
  const anyStates = fc.uniqueArray(
    fc.record({
      panelId: fc.constantFrom(...ids),
      inspection: fc.constantFrom(...inspectionState.options),
      metal: fc.constantFrom(...metalState.options),
    }),
    { selector: ({ panelId }) => panelId, maxLength: ids.length },
  )

  it('leaders never cross and rings never touch, whatever was found, on every sheet at every scale', () => {
    fc.assert(
      fc.property(
        anyStates,
        fc.constantFrom('outside', 'openings', 'bay', 'floor', 'under'),
        fc.double({ min: 0.08, max: 0.4, noNaN: true }),
        fc.option(fc.constantFrom(...ids)),
        (found, sheet, pixelsPerMm, inHand) => {
          const panels = found.map(({ panelId, inspection, metal }) => state(panelId, inspection, metal))
          const { callouts } = marksOf(sheet, panels, pixelsPerMm, inHand)
          expect(crossingLeaders(callouts)).toEqual([])
          const rings = callouts.map(({ ring }) => ring)
          rings.forEach((ring, index) => {
            for (const other of rings.slice(index + 1)) {
              expect(Math.hypot(ring.x - other.x, ring.y - other.y) * pixelsPerMm).toBeGreaterThan(16)
            }
          })
        },
      ),
      { numRuns: 300, seed: 1960 },
    )
  })

  it('a view calls out six panels at most, the panel in hand first', () => {
    const { callouts } = marksOf('outside', [], 0.138, 'lower-rail-outer.L')
    for (const view of ['left', 'roof', 'right', 'front', 'rear']) {
      expect(callouts.filter((callout) => callout.view === view).length).toBeLessThanOrEqual(6)
    }
    expect(callouts.some(({ panelId }) => panelId === 'lower-rail-outer.L')).toBe(true)
  })

  it('under 0.11 px/mm only rings are left', () => {
    for (const { name, word } of marksOf('outside', [], 0.087).callouts) expect([name, word]).toEqual(['', ''])
    expect(marksOf('outside', [], 0.138).callouts.every(({ name, word }) => name !== '' && word !== '')).toBe(true)
  })

  it('the check finds leaders that do cross', () => {
    const callout = (figureText: string, leader: readonly Place[]) => ({ figure: figureText, leader }) as CalloutMark
    const crossed = [
      callout('1', [
        { x: 0, y: 0 },
        { x: 10, y: 10 },
      ]),
      callout('2', [
        { x: 10, y: 0 },
        { x: 0, y: 10 },
      ]),
    ]
    expect(crossingLeaders(crossed)).toEqual(['1 and 2'])
  })
})

describe('panel marks', () => {
  it('a panel without a row is not inspected: clean with a dotted edge', () => {
    const mark = marksOf('outside', []).panels[0]
    expect(mark).toMatchObject({
      inspection: 'not inspected',
      hatch: 'clean',
      edge: 'dotted',
      crossed: false,
      word: 'not inspected',
    })
  })

  it('not accessible is dotted and crossed, and is not the same as original metal', () => {
    const { panels, legend } = marksOf('floor', [state('front-floor.L', 'not accessible', 'not inspected')])
    expect(panels.find(({ panelId }) => panelId === 'front-floor.L')).toMatchObject({ edge: 'dotted', crossed: true })
    expect(legend.map(({ word }) => word)).toEqual(['not inspected', 'not accessible'])
  })

  it('each state of metal has a hatch of its own, but original metal and not inspected, told apart by their edge', () => {
    const hatches = metalState.options.map(
      (metal) => marksOf('outside', [state('front-side.L', 'inspected', metal)]).panels[0]?.hatch,
    )
    const drawn = hatches.filter((hatch) => hatch !== 'clean')
    expect(new Set(drawn).size).toBe(drawn.length)
    expect(drawn).toHaveLength(metalState.options.length - 2)
  })

  it('looked at without a verdict on the metal says so', () => {
    expect(marksOf('outside', [state('front-side.L', 'inspected', 'not inspected')]).panels[0]?.word).toBe(
      'looked at, metal not entered',
    )
  })

  it('the table has the same panels in walking order', () => {
    const { table, panels } = marksOf('outside', [])
    expect(table.map(({ panelId }) => panelId)).toEqual(panels.map(({ panelId }) => panelId))
    expect(table.map(({ stop }) => stop)).toEqual([...table.map(({ stop }) => stop)].sort((a, b) => a - b))
  })
})

describe('median of a spot', () => {
  const value = (um: number) => ({ kind: 'value', um }) as const
  it('is the middle value, or the mean of the two middle ones', () => {
    expect(medianOf({ values: [value(300), value(100), value(200)] })).toBe(200)
    expect(medianOf({ values: [value(100), value(200)] })).toBe(150)
  })
  it('is no value where it falls on a reading beyond the range, or where nothing was read', () => {
    expect(
      medianOf({ values: [value(100), { kind: 'more than', um: 2000 }, { kind: 'more than', um: 2000 }] }),
    ).toBeNull()
    expect(medianOf({ values: [{ kind: 'no reading' }] })).toBeNull()
  })
})

describe('reference pictures', () => {
  const seen: readonly (readonly [string, PanelState['metal']])[] = [
    ['front-side.L', 'replacement panel'],
    ['lower-rail-outer.R', 'filler in place of metal'],
    ['rear-side.R', 'repaired metal'],
    ['rear-apron', 'patch panel'],
    ['tail-panel', 'filler over metal'],
    ['front-door.R', 'replacement skin'],
    ['front-apron', 'not determined'],
    ['front-door.L', 'original metal'],
    ['rear-side.L', 'original metal'],
    ['front-lid', 'original metal'],
    ['nose-panel', 'original metal'],
    ['front-side.R', 'original metal'],
  ]
  const panels = [
    ...seen.map(([id, metal]) => state(id, 'inspected', metal)),
    state('front-floor.L', 'not accessible', 'not inspected'),
  ]
  for (const sheet of figure.sheets) {
    for (const look of ['paper', 'night'] as const) {
      if (look === 'night' && sheet.id !== 'outside') continue
      it(`${sheet.name}, ${look}, looks as reviewed`, async () => {
        const pixelsPerMm = sheet.id === 'outside' ? 0.138 : 0.2
        const marks = marksOf(sheet.id, panels, pixelsPerMm, 'front-side.L')
        const svg = renderPlanSvg({ sheet, marks, look, pixelsPerMm, inHand: 'front-side.L' })
        await expect(svg).toMatchFileSnapshot(`reference/${sheet.id}-${look}.svg`)
      })
    }
  }
})
