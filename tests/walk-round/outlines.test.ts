import { describe, expect, it } from 'vitest'
import { boxOf, liesInside, lineLengthMm, outlinePoints, polygonAreaMm2 } from '../../renderer/drawing/outline-shape.ts'
import { labelBox, spotLabels } from '../../renderer/drawing/spot-labels.ts'

describe('outlines', () => {
  it('reads a square path, its box, its area and what lies in it', () => {
    const square = outlinePoints('M 0 0 L 100 0 L 100 50 L 0 50 Z')
    expect(boxOf(square)).toEqual({ u: 0, v: 0, width: 100, height: 50 })
    expect(polygonAreaMm2(square)).toBe(5000)
    expect(liesInside(square, { u: 50, v: 25 })).toBe(true)
    expect(liesInside(square, { u: 150, v: 25 })).toBe(false)
  })

  it('follows a quarter circle drawn as one cubic to within three thousandths of its area (π r² / 4)', () => {
    const k = 0.5522847498
    const quarter = outlinePoints(`M 0 0 L 100 0 C 100 ${100 * k} ${100 * k} 100 0 100 Z`)
    const exact = (Math.PI * 100 ** 2) / 4
    expect(Math.abs(polygonAreaMm2(quarter) - exact) / exact).toBeLessThan(0.003)
  })

  it('adds up the pieces of a line', () => {
    expect(
      lineLengthMm([
        { u: 0, v: 0 },
        { u: 3, v: 4 },
        { u: 3, v: 14 },
      ]),
    ).toBe(15)
  })

  it('labels of spots that stand close never cover each other, and none is lost: its letter or its dot stays', () => {
    const spots = Array.from({ length: 12 }, (_, index) => ({
      letter: String.fromCharCode(97 + index),
      figure: '1 640',
      at: { u: 100 + (index % 4) * 9, v: 40 + Math.floor(index / 4) * 9 },
    }))
    const labels = spotLabels(spots, ({ u, v }) => ({ x: u, y: v }), 284)
    expect(labels).toHaveLength(12)
    const boxes = labels
      .filter(({ text }) => text !== '')
      .map(({ text, textX, textY }) => ({ left: textX, right: textX + text.length * 7, top: textY - 9, foot: textY }))
    for (const [at, one] of boxes.entries()) {
      for (const other of boxes.slice(at + 1)) {
        const meets = one.left < other.right && other.left < one.right && one.top < other.foot && other.top < one.foot
        expect(meets).toBe(false)
      }
    }
  })

  it('sets no label where the drawing ends, above or below', () => {
    const HEIGHT_PX = 60
    const over = { left: 0, right: 284, top: 0, foot: 50 }
    const set = (v: number, besides: (typeof over)[], heightPx?: number) =>
      spotLabels(
        [{ letter: '7', figure: '', at: { u: 100, v } }],
        ({ u, v: y }) => ({ x: u, y }),
        284,
        1,
        besides,
        heightPx,
      )
    const [above] = set(3, [])
    const [under] = set(51, [over])
    expect(above?.textY).toBeLessThan(9)
    expect(under?.textY).toBeGreaterThan(HEIGHT_PX - 2)
    const [within] = set(3, [], HEIGHT_PX)
    expect(within).toMatchObject({ text: '7' })
    expect(within?.textY).toBeGreaterThanOrEqual(9)
    expect(set(51, [over], HEIGHT_PX)).toMatchObject([{ text: '' }])
  })

  it('a spot that is not named is drawn as a point, and makes room for the words of others', () => {
    const at = { u: 100, v: 40 }
    const beside = { u: 112, v: 40 }
    const spots = [
      { letter: 'a', figure: '120', at, named: false },
      { letter: 'b', figure: '1 640', at: beside },
    ]
    const [point, named] = spotLabels(spots, ({ u, v }) => ({ x: u, y: v }), 284)
    expect(point).toMatchObject({ letter: 'a', x: 100, text: '' })
    expect(named).toMatchObject({ letter: 'b', text: 'b 1 640' })
    // The room of the words reaches from the letter to the last figure, so that no line passes for a minus between.
    expect(named).toBeDefined()
    if (named !== undefined)
      expect(labelBox(named, 1)).toMatchObject({ left: named.textX, right: named.textX + 7 * 'b 1 640'.length })
  })
})
