import { describe, expect, test } from 'vitest'
import { bodyPlan } from '../../electron/figures/body-plan.ts'
import { planMarks } from '../../electron/figures/plan-marks.ts'
import { printedSheet } from '../../electron/report/drawing/printed-sheet.ts'
import { turnRecord } from '../../electron/report/drawing/turned.ts'
import { pageGeometry } from '../../electron/report/layout/page-geometry.ts'
import { panelList } from '../../electron/sheets/panel-list.ts'
import type { PlanSheet } from '../../shared-types/figure.ts'
import { planPage } from '../../shared-types/tokens.ts'
import { bodyStyle } from '../../shared-types/words.ts'
import { composed } from './composing.ts'
import { contentFixture, exhibitFixture, findingFixture, recordFixture } from './content-fixture.ts'
import { type Told, toldPages } from './told-pages.ts'

const sheetsOf = (body: (typeof bodyStyle.options)[number]): readonly PlanSheet[] => bodyPlan(body, 'uk', {}, []).sheets

describe.each(bodyStyle.options)('printed plan of the %s', (body) => {
  test('leaves the table its room and keeps a scale at which hatches can be told apart', () => {
    for (const whole of sheetsOf(body)) {
      const { sheet, scale, beside } = printedSheet(whole)
      const least = planPage.leastTableMm[whole.views.length === 1 ? 'oneView' : 'severalViews']
      const room = 170 - sheet.widthMm / scale
      expect(beside ? room - planPage.gutterMm : room, whole.id).toBeGreaterThanOrEqual(beside ? least : 0)
      // Only the four doors in a row are too long for a column.
      expect(beside || whole.id === 'openings', whole.id).toBe(true)
      expect(sheet.heightMm / scale, whole.id).toBeLessThanOrEqual(planPage.drawingHeightMm)
      expect(scale, whole.id).toBeLessThanOrEqual(60)
    }
  })

  test('views keep apart and on the sheet; sides and roof keep their stations', () => {
    for (const whole of sheetsOf(body)) {
      const { sheet } = printedSheet(whole)
      const boxes = sheet.views.map(({ at, box }) => ({ ...at, right: at.x + box.width, foot: at.y + box.height }))
      for (const [index, one] of boxes.entries()) {
        expect(one.right).toBeLessThanOrEqual(sheet.widthMm)
        expect(one.foot).toBeLessThanOrEqual(sheet.heightMm)
        for (const other of boxes.slice(index + 1)) {
          const overlaps = one.x < other.right && other.x < one.right && one.y < other.foot && other.y < one.foot
          expect(overlaps, `${whole.id} ${index}`).toBe(false)
        }
      }
      const stations = sheet.views.filter(({ id }) => id === 'left' || id === 'roof' || id === 'right')
      expect(new Set(stations.map(({ at, box }) => at.x - box.u)).size).toBeLessThanOrEqual(1)
    }
  })
})

/** Signed area and middle of the corners of a path, control points included. */
function measured(path: string): { area: number; u: number; v: number } {
  const values = [...path.matchAll(/-?\d+(?:\.\d+)?/g)].map(([text]) => Number(text))
  const corners = Array.from({ length: values.length / 2 }, (_, at) => [values[2 * at] ?? 0, values[2 * at + 1] ?? 0])
  const sum = corners.reduce(
    ({ area, u, v }, [x = 0, y = 0], index) => {
      const [nextX = 0, nextY = 0] = corners[(index + 1) % corners.length] ?? []
      return { area: area + (x * nextY - nextX * y) / 2, u: u + x, v: v + y }
    },
    { area: 0, u: 0, v: 0 },
  )
  return { area: sum.area, u: sum.u / corners.length, v: sum.v / corners.length }
}

test('a turned plan is turned, not mirrored, and what was marked on it turns with it', () => {
  const record = recordFixture({
    findings: [
      findingFixture(1, 'floor-pan', {
        extent: { view: 'under', shape: 'point', points: [{ u: 1000, v: 300 }] },
      }),
      findingFixture(2, 'front-side.L', { extent: { view: 'left', shape: 'point', points: [{ u: 500, v: -600 }] } }),
    ],
    exhibits: [exhibitFixture(1, { view: 'under', at: { u: 1200, v: -200 } })],
  })
  const whole = sheetsOf('coupe').find(({ id }) => id === 'under')
  if (whole === undefined) throw new Error('no underside')
  const { sheet } = printedSheet(whole)
  for (const [index, view] of sheet.views.entries()) {
    for (const [at, panel] of view.panels.entries()) {
      const before = measured(whole.views[index]?.panels[at]?.outline ?? '')
      const after = measured(panel.outline)
      expect(after.area).toBeCloseTo(before.area, 3)
      expect([after.u, after.v]).toEqual([expect.closeTo(-before.v, 6), expect.closeTo(before.u, 6)])
    }
  }
  const turned = turnRecord(record)
  expect(turned.findings[0]?.extent?.points).toEqual([{ u: -300, v: 1000 }])
  expect(turned.findings[1]).toEqual(record.findings[1])
  expect(turned.exhibits[0]?.at).toEqual({ u: 200, v: 1200 })
  const marks = planMarks({
    sheet,
    record: turned,
    definitions: panelList('coupe', 'with underneath', []).panels,
    names: 'uk',
    pixelsPerMm: 0.1,
    inHand: null,
  })
  const [left, top] = [sheet.views[0]?.box.u ?? 0, sheet.views[0]?.box.v ?? 0]
  expect(marks.extents).toHaveLength(1)
  for (const { points } of marks.extents) expect(points[0]?.u ?? 0).toBeGreaterThan(left)
  for (const { points } of marks.extents) expect(points[0]?.v ?? 0).toBeGreaterThan(top)
})

const textOfPage = (told: readonly Told[]) => told.map(({ text }) => text)

test('figure and table stand side by side; what does not fit runs on under the same heads', async () => {
  const record = recordFixture()
  const content = contentFixture(record)
  const outside = content.marks.outside
  if (outside === undefined) throw new Error('no marks')
  const row = outside.table[0]
  if (row === undefined) throw new Error('no rows')
  const table = Array.from({ length: 60 }, (_, index) => ({
    ...row,
    stop: index + 1,
    name: `Panel of row ${index + 1}`,
  }))
  const { bytes } = await composed({ ...content, marks: { outside: { ...outside, table } } })
  const pages = await toldPages(bytes)
  const first = pages.find((told) => textOfPage(told).some((text) => text.includes('Outside, 1 : ')))
  const next = pages[pages.indexOf(first ?? []) + 1]
  if (first === undefined || next === undefined) throw new Error('no plan')
  const figure = first.filter(({ role }) => role === 'Figure')
  const cells = first.filter(({ role }) => role === 'TD' || role === 'TH')
  expect(figure.length).toBeGreaterThan(5)
  const figureRight = Math.max(...figure.map(({ x }) => x))
  expect(Math.min(...cells.map(({ x }) => x))).toBeGreaterThan(figureRight)
  expect(Math.max(...cells.map(({ y }) => y))).toBeGreaterThan(Math.min(...figure.map(({ y }) => y)))
  const heads = (told: readonly Told[]) => told.filter(({ role }) => role === 'TH').map(({ text }) => text)
  expect(heads(first)).toEqual(['panel; metal; paint', 'see'])
  expect(heads(next)).toEqual(['panel', 'inspection', 'metal', 'paint', 'findings', 'exhibits'])
  const left = (pageGeometry('A4').leftMm * 72) / 25.4
  expect(Math.min(...next.filter(({ role }) => role === 'TD').map(({ x }) => x))).toBeCloseTo(left, 1)
  const names = [...first, ...next].flatMap(({ text }) => /^Panel of row \d+$/.exec(text) ?? [])
  expect(names).toEqual(table.map(({ name }) => name))
})
