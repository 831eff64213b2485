import { describe, expect, it } from 'vitest'
import { bodyPlan } from '../../electron/figures/body-plan.ts'
import { isInside, type Point } from '../../electron/figures/cubic-path.ts'
import { mapBands } from '../../electron/figures/map-bands.ts'
import { middleOf, panelGrid } from '../../electron/figures/panel-grid.ts'
import type { PlanPanel, PlanView } from '../../shared-types/figure.ts'

const square = (left: number, top: number, side: number): string =>
  `M${left} ${top}L${left + side} ${top}L${left + side} ${top + side}L${left} ${top + side}Z`
const panel = (panelId: string, outline: string, areaMm2: number): PlanPanel => ({
  panelId,
  outline,
  label: { u: 0, v: 0 },
  areaMm2,
})
const door = panel('front-door.L', square(0, 0, 1280), 1280 ** 2)
const flap = panel('filler-flap.L', square(400, 400, 200), 200 ** 2)
const view = { panels: [door, flap], ink: [] } as unknown as PlanView

/** Number of rings of a path round a point; odd is inside. */
const covers = (path: string, at: Point): boolean =>
  path
    .split('Z')
    .filter((ring) => ring !== '')
    .map((ring) => [...ring.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(([, u, v]): Point => [Number(u), Number(v)]))
    .filter((ring) => isInside(ring, at)).length %
    2 ===
  1

describe('cells over a panel', () => {
  it('lie on the panel and not on what is let into it', () => {
    const grid = panelGrid(view, door)
    const area = grid.onPanel.length * grid.cellMm ** 2
    expect(area / (1280 ** 2 - 200 ** 2)).toBeCloseTo(1, 2)
    for (const cell of grid.onPanel) {
      const { u, v } = middleOf(grid, cell)
      expect(u > 400 && u < 600 && v > 400 && v < 600).toBe(false)
    }
  })

  it('fill every panel of the sides and the roof to its drawn area, but for what a bumper or a lamp stands before', () => {
    const plan = bodyPlan('coupe', 'uk', {}, ['pillared'])
    for (const own of plan.sheets[0]?.views.filter(({ id }) => id === 'left' || id === 'right' || id === 'roof') ??
      []) {
      for (const one of own.panels.filter(({ areaMm2 }) => areaMm2 > 150_000)) {
        const grid = panelGrid(own, one)
        const share = (grid.onPanel.length * grid.cellMm ** 2) / one.areaMm2
        expect([own.id, one.panelId, share > 0.85 && share < 1.03, share]).toEqual([own.id, one.panelId, true, share])
      }
    }
  })
})

describe('bands of a map', () => {
  const grid = panelGrid(view, door)

  it('hold each cell in the band its value belongs to, with the limit where the values cross it', () => {
    // A slope: the value is the distance from the left edge, so that a limit is a straight line at its own figure.
    const values = grid.onPanel.map((cell) => middleOf(grid, cell).u)
    const bands = mapBands(grid, values, [300, 700])
    expect(bands.map(({ from, level }) => [from, level])).toEqual([
      [0, 0],
      [300, 1],
      [700, 2],
    ])
    for (const u of [20, 280, 320, 680, 720, 1270]) {
      const found = bands.filter(({ path }) => covers(path, [u, 900])).map(({ from }) => from)
      expect(found, `${u}`).toEqual([0, 300, 700].filter((limit) => u >= limit))
    }
  })

  it('reach past the edge of the panel, so that none ends short of the outline', () => {
    const [, band] = mapBands(
      grid,
      grid.onPanel.map(() => 500),
      [300],
    )
    for (const corner of [
      [1, 1],
      [1279, 1],
      [1, 1279],
      [1279, 1279],
    ] as const)
      expect(covers(band?.path ?? '', corner)).toBe(true)
  })

  it('are left out where nothing reaches them, and keep their number', () => {
    expect(
      mapBands(
        grid,
        grid.onPanel.map(() => 500),
        [100, 400, 600],
      ).map(({ level }) => level),
    ).toEqual([0, 1, 2])
  })
})
