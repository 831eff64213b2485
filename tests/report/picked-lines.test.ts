import { expect, it } from 'vitest'
import { PageCanvas } from '../../electron/report/document/page-canvas.ts'
import { drawPicked } from '../../electron/report/drawing/picked-lines.ts'
import type { PickedGeometry } from '../../shared-types/exhibit.ts'

class RememberedLines extends PageCanvas {
  readonly lines: (readonly [number, number, number, number])[] = []
  override line(x1: number, y1: number, x2: number, y2: number): void {
    this.lines.push([x1, y1, x2, y2])
  }
}

const picked: PickedGeometry = {
  photograph: 1,
  plane: { kind: 'scale bar', bar: { from: { x: 0, y: 0 }, to: { x: 1600, y: 0 }, lengthMm: 500, uMm: 0.5 } },
  wanted: {
    kind: 'distance',
    points: [
      { x: 800, y: 500 },
      { x: 1600, y: 1000 },
    ],
  },
  pickPx: 1,
  distortionPx: null,
  offPlane: null,
}

it('draws what was picked where it lies on the printed photograph: a twentieth of a millimetre to each pixel', () => {
  const page = new RememberedLines(0, 210, 297, () => expect.fail('nothing is stored'), true)
  drawPicked(page, picked, { left: 20, top: 30, width: 80, height: 50, widthPx: 1600, heightPx: 1000 })
  const once = [
    [20, 30, 100, 30],
    [60, 55, 100, 80],
  ]
  // Each line is drawn twice: paper first, then ink.
  expect(page.lines).toEqual([once[0], once[0], once[1], once[1]])
})
