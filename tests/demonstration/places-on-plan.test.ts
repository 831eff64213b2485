import { describe, expect, it } from 'vitest'
import { bodyPlan } from '../../electron/figures/body-plan.ts'
import { distanceToEdge, flattened, isInside, type Point } from '../../electron/figures/cubic-path.ts'
import { readOutline } from '../../electron/figures/path-text.ts'
import { readDemonstration } from '../../electron/use-cases/demonstration-record.ts'
import type { PlanPoint } from '../../shared-types/finding.ts'

const plan = bodyPlan('coupe', 'uk')
const views = plan.sheets.flatMap((sheet) => sheet.views)
const { steps } = readDemonstration()

function outline(panelId: string, view: string): readonly Point[] {
  const panel = views.find((one) => one.id === view)?.panels.find((one) => one.panelId === panelId)
  return panel === undefined ? [] : flattened(readOutline(panel.outline), 24)
}

/** Distance in millimetres by which a place lies off its panel; 0 when it lies on it. */
function off(panelId: string, view: string, { u, v }: PlanPoint): number {
  const polygon = outline(panelId, view)
  if (polygon.length === 0) return Number.POSITIVE_INFINITY
  return isInside(polygon, [u, v]) ? 0 : distanceToEdge(polygon, [u, v])
}

describe('places of the demonstration', () => {
  it('lie on their own panel of the body plan: every extent, reading and exhibit', () => {
    const wrong: string[] = []
    const look = (what: string, panelId: string, view: string, points: readonly PlanPoint[]) => {
      for (const point of points) {
        const distance = off(panelId, view, point)
        if (distance > 1) wrong.push(`${what} ${panelId} ${view} ${point.u} ${point.v}: ${distance.toFixed(0)} mm off`)
      }
    }
    for (const { request, input } of steps) {
      if (request === 'finding.add' && input.draft.extent !== null) {
        look('finding', input.draft.panelId, input.draft.extent.view, input.draft.extent.points)
      }
      if (request === 'spot.add' && input.draft.at !== null) {
        look('spot', input.draft.panelId, input.draft.view, [input.draft.at])
      }
      if (request === 'exhibit.describe' && input.words.at !== null) {
        look('exhibit', input.words.panelId ?? '', input.words.view ?? '', [input.words.at])
      }
    }
    expect(wrong).toEqual([])
  })

  it('have the dimensions of the plan: the measured length, wheelbase and height differ from it by less than 3 u', () => {
    const drawn = plan.dimensions
    const expected = new Map([
      ['Length over bumpers', drawn.lengthMm],
      ['Wheelbase, left', drawn.wheelbaseMm],
      ['Wheelbase, right', drawn.wheelbaseMm],
      ['Height', drawn.heightMm],
    ])
    for (const { request, input } of steps) {
      if (request !== 'exhibit.add' || input.draft.measurement === null) continue
      const { what, value, uncertainty } = input.draft.measurement
      const wanted = expected.get(what)
      if (wanted === undefined) continue
      expect(Math.abs(value - wanted), what).toBeLessThan((3 * (uncertainty ?? 0)) / 2)
      expected.delete(what)
    }
    expect([...expected.keys()]).toEqual([])
  })
})
