import { type Curve, ellipse, lines, roundedBox } from '../curve.ts'
import { block, type InkCurve, line, loop } from '../ink-curve.ts'
import { extentOf, inset, polygonOf, reachAt } from './inset.ts'
import type { DoorShape } from './outside-shapes.ts'

/** What shows inside a door with its trim off: access holes, regulator, lock, hinges, check strap and drain holes. */
export function doorInk({ outline }: DoorShape, beltMm: number, place: (curve: Curve) => Curve): InkCurve[] {
  const polygon = polygonOf(outline)
  const foot = extentOf(outline).bottom
  const [top, low] = [-beltMm + 92, foot - 96]
  const reaches = [0, 0.2, 0.4, 0.6, 0.8].map((share) => reachAt(polygon, 1, top + (low - top) * share) ?? [0, 0])
  const from = Math.max(...reaches.map(([least]) => least)) + 84
  const to = Math.min(...reaches.map(([, most]) => most)) - 96
  if (to - from < 240 || low - top < 160) return loop('form', place(inset(outline, 40)))
  const split = from + (to - from) * 0.56
  const height = (top + low) / 2
  const tall = low - top
  const shapes = {
    large: block(from, split - 26, top + 16, low - 30, 56),
    small: block(split + 26, to, top + 30, low - 44, 50),
    regulator: roundedBox([split, height + tall * 0.08], 40, 76, 12),
    winder: ellipse([from + (split - from) * 0.5, height], 52),
    shaft: ellipse([from + (split - from) * 0.5, height], 12),
    lock: roundedBox([to + 46, height - tall * 0.1], 44, 112, 10),
    latch: ellipse([to + 46, height - tall * 0.1], 12),
  }
  const hinges = [top + tall * 0.14, top + tall * 0.84].map((v) => roundedBox([from - 44, v], 46, 84, 10))
  const drains = [0.2, 0.5, 0.8].map((share) => roundedBox([from + (to - from) * share, foot - 34], 56, 15, 7))
  return [
    ...loop('form', ...[shapes.large, shapes.small].map(place)),
    ...loop('detail', ...[shapes.regulator, shapes.shaft, shapes.lock, shapes.latch, ...hinges].map(place)),
    ...loop('form', place(shapes.winder), ...drains.map(place)),
    ...line(
      'form',
      place(lines([from - 20, height + 6], [from - 62, height + 6])),
      place(lines([from - 40, top - 34], [to + 40, top - 34])),
    ),
  ]
}
