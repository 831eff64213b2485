import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { isInside, type Point } from '../../electron/figures/cubic-path.ts'
import { mapBands } from '../../electron/figures/map-bands.ts'
import { middleOf, panelGrid } from '../../electron/figures/panel-grid.ts'
import { contourFigures, crossBoxes, endBoxes } from '../../renderer/drawing/contour-figures.ts'
import {
  type Box,
  FIGURE_PX,
  LINE_PX,
  labelBox,
  meets,
  spotBox,
  spotLabels,
} from '../../renderer/drawing/spot-labels.ts'
import type { MapLayer } from '../../shared-types/coating-map.ts'
import type { PlanPanel, PlanView } from '../../shared-types/figure.ts'
import type { PlanPoint } from '../../shared-types/finding.ts'

const SIDE_MM = 1280
const outline: Point[] = [
  [0, 0],
  [SIDE_MM, 0],
  [SIDE_MM, SIDE_MM],
  [0, SIDE_MM],
]
const door: PlanPanel = {
  panelId: 'front-door.L',
  outline: `M0 0L${SIDE_MM} 0L${SIDE_MM} ${SIDE_MM}L0 ${SIDE_MM}Z`,
  label: { u: 0, v: 0 },
  areaMm2: SIDE_MM ** 2,
}
const grid = panelGrid({ panels: [door], ink: [] } as unknown as PlanView, door)
/** A hill at a point of the panel, so that contours are circles about it. */
const hill = (u: number, v: number): number[] =>
  grid.onPanel.map((cell) => {
    const at = middleOf(grid, cell)
    return 2000 - 3 * Math.hypot(at.u - u, at.v - v)
  })
const limits = [300, 500, 1000, 1600]
const hillLayer = (u: number, v: number): MapLayer => ({
  id: 'thickness',
  title: 'Thickness',
  limits,
  printed: { unit: 'mil', limits: ['11.8', '19.7', '39.4', '63.0'] },
  colours: [],
  bands: mapBands(grid, hill(u, v), limits),
})

const WIDTH_PX = 400
const place = ({ u, v }: PlanPoint) => ({ x: (u / SIDE_MM) * WIDTH_PX, y: (v / SIDE_MM) * WIDTH_PX })
const point = fc.record({ u: fc.integer({ min: 0, max: SIDE_MM }), v: fc.integer({ min: 0, max: SIDE_MM }) })

const figureBox = ({ x, y, text }: { x: number; y: number; text: string }): Box => ({
  left: x - (text.length * FIGURE_PX) / 2,
  right: x + (text.length * FIGURE_PX) / 2,
  top: y - LINE_PX / 2,
  foot: y + LINE_PX / 2,
})

describe('places for the figure of a contour', () => {
  it('lie on the contour and on the panel, all about it', () => {
    for (const { from, places } of hillLayer(600, 700).bands) {
      if (from === 0) continue
      expect(places.length).toBeGreaterThan(8)
      for (const { u, v } of places) {
        expect(Math.abs(Math.hypot(u - 600, v - 700) - (2000 - from) / 3)).toBeLessThan(2 * grid.cellMm)
        expect(isInside(outline, [u, v])).toBe(true)
      }
      const towards = new Set(places.map(({ u, v }) => `${u > 600} ${v > 700}`))
      expect(towards.size).toBe(4)
    }
  })

  it('are none for a speck, and first those well inside the panel', () => {
    const [, , , , top] = mapBands(grid, hill(600, 700), [300, 500, 1000, 1990])
    expect(top?.places ?? []).toEqual([])
    const [, band] = hillLayer(0, 640).bands
    const depth = ({ u, v }: PlanPoint) => Math.min(u, v, SIDE_MM - u, SIDE_MM - v)
    expect(depth(band?.places[0] ?? { u: 0, v: 0 })).toBeGreaterThan(grid.cellMm)
  })
})

describe('figures of contours', () => {
  it('cover no spot, no label, no cross, no end of the cut and no other figure, wherever these stand', () => {
    let set = 0
    let beside = 0
    fc.assert(
      fc.property(
        point,
        fc.array(point, { maxLength: 60 }),
        fc.array(point, { maxLength: 3 }),
        fc.option(fc.record({ from: point, to: point }), { nil: null }),
        fc.constantFrom(1, 1.3),
        (top, spots, next, line, letters) => {
          const layer = hillLayer(top.u, top.v)
          const crosses = crossBoxes(
            next.map((at) => ({ at, words: '' })),
            place,
            letters,
          )
          const besides = [...crosses, ...endBoxes(line, place, letters)]
          const named = spots.map((at, index) => ({ letter: `R${index + 1}`, at, figure: '19.2' }))
          const labels = spotLabels(named, place, WIDTH_PX, letters, crosses)
          const figures = contourFigures(layer, labels, place, WIDTH_PX, letters, besides)
          const words = labels.filter(({ text }) => text !== '').map((label) => labelBox(label, letters))
          for (const word of words) expect(crosses.some((cross) => meets(cross, word))).toBe(false)
          const boxes = figures.map(figureBox)
          for (const [at, box] of boxes.entries())
            for (const other of [...boxes.slice(at + 1), ...labels.map(spotBox), ...words, ...besides])
              expect(meets(box, other)).toBe(false)
          set += figures.length
          const firsts = layer.bands.flatMap(({ places }) => places.slice(0, 1)).map(place)
          beside += figures.filter(({ x, y }) => !firsts.some((first) => first.x === x && first.y === y)).length
        },
      ),
      { numRuns: 200 },
    )
    expect(set).toBeGreaterThan(300)
    // Where the best place is taken another is found.
    expect(beside).toBeGreaterThan(50)
  })

  it('are left out where no place on the contour is free', () => {
    const layer = hillLayer(640, 640)
    const [, lowest] = layer.bands
    const crowd = (lowest?.places ?? [])
      .map(place)
      .map(({ x, y }) => ({ left: x - 9, right: x + 9, top: y - 9, foot: y + 9 }))
    const levels = contourFigures(layer, [], place, WIDTH_PX, 1, crowd).map(({ level }) => level)
    expect(levels).not.toContain(1)
    expect(contourFigures(layer, [], place, WIDTH_PX).map(({ level }) => level)).toEqual([1, 2, 3, 4])
  })

  it('are set for a panel full of readings within a fourth of a frame', () => {
    const layer = hillLayer(500, 600)
    const spots = Array.from({ length: 200 }, (_, index) => ({
      letter: `R${index}`,
      at: { u: 60 + (index % 15) * 80, v: 60 + Math.floor(index / 15) * 80 },
      figure: '19.2',
    }))
    const labels = spotLabels(spots, place, WIDTH_PX)
    const times = Array.from({ length: 20 }, () => {
      const began = performance.now()
      contourFigures(layer, labels, place, WIDTH_PX)
      return performance.now() - began
    }).sort((one, other) => one - other)
    expect(times[10]).toBeLessThan(4)
  })
})
