import { describe, expect, it } from 'vitest'
import { bodyPlan } from '../../electron/figures/body-plan.ts'
import { medianOf, planMarks } from '../../electron/figures/plan-marks.ts'
import { renderPlanSvg } from '../../electron/figures/render-plan-svg.ts'
import { panelList } from '../../electron/sheets/panel-list.ts'
import type { PanelState } from '../../shared-types/panel.ts'
import type { RecordView } from '../../shared-types/record.ts'
import { metalState } from '../../shared-types/words.ts'
import { sedge } from './sedge.ts'

const figure = bodyPlan('coupe', 'uk')
const definitions = panelList('coupe', 'with underneath', sedge).panels

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

describe('callouts', () => {
  it('a view calls out six panels at most, and the panel in hand whatever its rank', () => {
    const { callouts } = marksOf('outside', [], 0.138, 'lower-rail-outer.L')
    for (const view of ['left', 'roof', 'right', 'front', 'rear']) {
      const here = callouts.filter((callout) => callout.view === view && callout.panelId !== 'lower-rail-outer.L')
      expect(here.length).toBeLessThanOrEqual(6)
    }
    expect(callouts.some(({ panelId }) => panelId === 'lower-rail-outer.L')).toBe(true)
  })

  it('under 0.11 px/mm only rings are left', () => {
    for (const { name, word } of marksOf('outside', [], 0.087).callouts) expect([name, word]).toEqual(['', ''])
    const named = marksOf('outside', [], 0.138).callouts.filter(({ name, word }) => name !== '' && word !== '')
    expect(named.length).toBeGreaterThan(10)
  })
})

describe('findings on the plan', () => {
  const finding = (number: number, kind: string, severity: string, u: number) =>
    ({
      ...{ number, kind, severity, panelId: 'rear-side.R' },
      extent: {
        view: 'right',
        shape: 'area',
        points: [
          { u, v: -620 },
          { u: u + 60, v: -620 },
          { u: u + 60, v: -560 },
        ],
      },
    }) as unknown as RecordView['findings'][number]
  const found = () => {
    const outside = figure.sheets.find(({ id }) => id === 'outside')
    if (outside === undefined) throw new Error('no outside')
    const record = recordOf([state('rear-side.R', 'inspected', 'filler in place of metal')], {
      findings: [finding(3, 'filler', 'slight', 2620), finding(7, 'perforation', 'severe', 2760)],
    })
    return planMarks({ sheet: outside, record, definitions, names: 'uk', pixelsPerMm: 0.3, inHand: null })
  }

  it('a callout tells the numbers of its findings and points at the gravest that is drawn', () => {
    const called = found().callouts.find(({ panelId }) => panelId === 'rear-side.R')
    expect(called?.view).toBe('right')
    expect([called?.name, called?.word]).toEqual(['Rear wing F\u202f3, F\u202f7', 'filler in place of metal'])
    const right = figure.sheets.flatMap(({ views }) => views).find(({ id }) => id === 'right')
    const end = called?.leader.at(-1)
    expect((end?.x ?? 0) - (right?.at.x ?? 0)).toBeCloseTo(2800, 3)
  })

  it('perforation is solid ink, filler has the hatch its panel has, and both stand in the list of marks', () => {
    const { extents, legend } = found()
    expect(extents.map(({ hatch }) => hatch)).toEqual(['filler-through', 'rusted-through'])
    expect(legend.map(({ word }) => word)).toContain('rusted through')
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
