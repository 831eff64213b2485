import { describe, expect, it } from 'vitest'
import { cutFigure } from '../../electron/figures/cut-figure.ts'
import { cutThroughThickest } from '../../electron/figures/cut-line.ts'
import { evenMarks } from '../../electron/figures/even-marks.ts'

const um = (low: number, middle: number, high: number) => ({ low, middle, high })
const section = {
  lengthMm: 400,
  nearMm: 50,
  places: [
    { alongMm: 0, um: um(100, 120, 140) },
    { alongMm: 100, um: um(300, 500, 900) },
    { alongMm: 200, um: null },
    { alongMm: 300, um: um(100, 120, 140) },
    { alongMm: 400, um: um(100, 120, 140) },
  ],
  paintUm: um(100, 120, 140),
  readings: [{ reading: 1, alongMm: 100, besideMm: 10, um: 1000, orMore: true }],
  words: '',
}
const drawn = { spots: [7, 9], thresholdUm: 300, lengthUnit: 'mm', coatingUnit: 'µm' } as const

describe('the figure of a cut', () => {
  const figure = cutFigure(section, drawn)
  it('draws each assessed stretch as a closed band with its middle, and leaves the rest blank', () => {
    expect(figure.stretches).toHaveLength(2)
    expect(figure.stretches[0]?.middle.map(({ x }) => x)).toEqual([0, 0.25])
    expect(figure.stretches[0]?.band.map(({ x }) => x)).toEqual([0, 0.25, 0.25, 0])
    expect(figure.blanks).toEqual([{ from: 0.25, to: 0.75 }])
  })
  it('keeps everything within the box, in the proportions of the thicknesses', () => {
    const heights = figure.stretches.flatMap(({ band }) => band.map(({ y }) => y))
    expect(Math.max(...heights)).toBeLessThan(1)
    expect(figure.threshold / figure.paint.middle).toBeCloseTo(300 / 120, 3)
    expect(figure.readings).toEqual([{ spot: 9, x: 0.25, y: expect.closeTo(1000 / 1120, 4), orMore: true }])
  })
  it('marks its axes in the units of the record', () => {
    expect(figure.along.map(({ value }) => value)).toEqual([0, 50, 100, 150, 200, 250, 300, 350, 400])
    expect(figure.up.map(({ value }) => value)).toEqual([0, 500, 1000])
    const inches = cutFigure(section, { ...drawn, lengthUnit: 'in', coatingUnit: 'mil' })
    // 400 mm are 15.75 in, 1,120 µm 44.1 mil.
    expect(inches.along.map(({ value }) => value)).toEqual([0, 2, 4, 6, 8, 10, 12, 14])
    expect(inches.along[1]?.at).toBeCloseTo((2 * 25.4) / 400, 9)
    expect(inches.up.map(({ value }) => value)).toEqual([0, 10, 20, 30, 40])
  })
})

describe('marks of an axis', () => {
  it('are round, begin at nought and never pass its end', () => {
    expect(evenMarks(7, 5).map(({ value }) => value)).toEqual([0, 2, 4, 6])
    expect(evenMarks(0.7, 5).map(({ value, decimals }) => value.toFixed(decimals))).toEqual([
      '0.0',
      '0.2',
      '0.4',
      '0.6',
    ])
    expect(evenMarks(1, 5).map(({ at }) => at)).toEqual([0, 0.2, 0.4, expect.closeTo(0.6, 9), 0.8, 1])
  })
})

describe('the line through the thickest place', () => {
  const grid = { u: 100, v: -200, cellMm: 10, columns: 4, rows: 2, onPanel: [0, 1, 2, 4, 5, 6, 7] }
  it('runs along the longer side from edge to edge of the panel there', () => {
    const line = cutThroughThickest(grid, [1, 2, 3, 4, 400, 6, 7], 300)
    expect(line).toMatchObject({ from: { u: 100, v: -185 }, to: { u: 140, v: -185 } })
    expect(line?.rule).toMatch(/thickest/)
    const upright = { ...grid, columns: 2, rows: 4, onPanel: [0, 1, 2, 3, 5] }
    expect(cutThroughThickest(upright, [1, 2, 3, 4, 500], 300)).toMatchObject({
      from: { u: 115, v: -200 },
      to: { u: 115, v: -170 },
    })
  })
  it('is not drawn where nothing counts as filler', () => {
    expect(cutThroughThickest(grid, [1, 2, 3, 4, 300, 6, 7], 300)).toBeNull()
  })
})
