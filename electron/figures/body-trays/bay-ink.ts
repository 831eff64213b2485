import type { BodyFrame } from '../body-shape/body-frame.ts'
import { ellipse, lines, rounded, roundedBox, smooth } from '../curve.ts'
import { block, bothDown, type InkCurve, line, loop, solid } from '../ink-curve.ts'
import { type BayPlaces, towerPlace } from './bay-places.ts'
import { engineInk } from './engine-ink.ts'
import { fitted } from './fitted.ts'
import { spread } from './floor-ink.ts'

/** What stands in the engine bay: radiator, engine, pressings of the panels, and the fittings on the bulkhead. */
export function bayInk(frame: BodyFrame, at: BayPlaces, conditions: ReadonlySet<string>): InkCurve[] {
  return [
    ...pressings(at),
    ...radiator(at),
    ...engineInk(frame, at),
    ...bulkheadFittings(at),
    ...(['L', 'R'] as const).flatMap((side) =>
      fitted(conditions, 'front-spring-tower', side) ? turret(at, side) : [],
    ),
    ...line('centre', lines([at.radiatorTopMm - 90, 0], [at.bulkheadTopMm + 90, 0])),
  ]
}

function pressings(at: BayPlaces): InkCurve[] {
  const { radiatorMm: front, bulkheadMm: rear, wingHalfMm: wing } = at
  const [[archU]] = towerPlace(at)
  return [
    ...line(
      'form',
      ...bothDown(
        smooth([
          [front + 130, wing - 130],
          [front + 320, wing - 66],
          [rear - 240, wing - 34],
          [rear - 30, wing - 28],
        ]),
        smooth([
          [archU - 214, at.rearHalfMm + 74],
          [archU - 150, at.rearHalfMm + 46],
          [archU + 150, at.rearHalfMm + 40],
          [archU + 214, at.rearHalfMm + 66],
        ]),
        lines([front + 66, at.frontHalfMm + 24], [rear - 40, at.rearHalfMm + 22]),
      ),
    ),
    ...loop('form', ...bothDown(roundedBox([rear - 96, at.rearHalfMm + 190], 60, 150, 24))),
    ...line(
      'form',
      ...bothDown(
        smooth([
          [rear + 60, 60],
          [rear + 74, at.rearHalfMm * 0.5],
          [rear + 60, at.rearHalfMm - 20],
        ]),
        smooth([
          [at.bulkheadTopMm - 52, 0],
          [at.bulkheadTopMm - 60, wing * 0.4],
          [at.bulkheadTopMm - 86, wing - 240],
        ]),
      ),
    ),
    ...loop('form', ...bothDown(block(at.radiatorTopMm + 60, front - 44, 70, at.frontHalfMm * 0.78, 34))),
    ...loop('detail', ...bothDown(ellipse([at.radiatorTopMm + 78, at.frontHalfMm + 26], 22))),
    ...loop('detail', roundedBox([at.radiatorTopMm + 32, 0], 28, 66, 10)),
  ]
}

function radiator(at: BayPlaces): InkCurve[] {
  const half = at.frontHalfMm * 0.72
  const from = at.radiatorMm + 22
  return [
    ...solid('detail', block(from, from + 74, -half, half, 16)),
    ...line('form', ...[16, 30, 44, 58].map((du) => lines([from + du, -half + 14], [from + du, half - 14]))),
    ...solid('detail', block(from + 8, from + 66, -58, 58, 14)),
    ...solid('detail', ellipse([from + 37, 0], 21)),
    ...loop('form', ellipse([from + 37, 0], 13)),
  ]
}

/** Wiper motor, heater, fluid reservoirs, coil and the holes where cables pass. */
function bulkheadFittings(at: BayPlaces): InkCurve[] {
  const rear = at.bulkheadMm
  const side = at.rearHalfMm
  const [low, high] = [-side - 172, -side + 78]
  return [
    ...loop('form', block(rear + 100, rear + 266, low, high, 12)),
    ...line('form', lines([rear + 183, low + 26], [rear + 183, high - 26])),
    ...loop('form', ellipse([rear + 140, low + 34], 13), ellipse([rear + 140, high - 34], 13)),
    ...loop('detail', ellipse([rear + 184, side * 0.62], 46), ellipse([rear + 184, side * 0.62], 34)),
    ...loop('detail', ellipse([rear + 184, side * 0.62 + 122], 34), ellipse([rear + 184, side * 0.62 + 122], 24)),
    ...loop('detail', roundedBox([rear + 214, 0], 150, side * 0.62, 30)),
    ...line(
      'form',
      ...spread(-0.2, 0.2, 5).map((share) => lines([rear + 164, share * side], [rear + 264, share * side])),
    ),
    ...loop(
      'detail',
      rounded(
        [
          [rear + 330, side * 0.1],
          [rear + 396, side * 0.1],
          [rear + 396, side * 0.62],
          [rear + 330, side * 0.5],
        ],
        18,
      ),
    ),
    ...loop('form', ellipse([rear + 363, side * 0.46], 20)),
    ...loop('form', ...bothDown(ellipse([rear + 96, side * 0.28], 15), ellipse([rear + 322, side + 190], 18))),
    ...loop('form', roundedBox([rear + 362, -side * 0.5], 70, 170, 12)),
  ]
}

/** Rings and studs on a suspension turret. */
function turret(at: BayPlaces, side: 'L' | 'R'): InkCurve[] {
  const [[u, v], radius] = towerPlace(at)
  const middle = side === 'L' ? v : -v
  const studs = [0, 1, 2].map((index) => {
    const angle = (index * 2 * Math.PI) / 3 + 0.5
    return ellipse([u + Math.cos(angle) * radius * 0.5, middle + Math.sin(angle) * radius * 0.5], 10)
  })
  return [
    ...loop('form', ellipse([u, middle], radius * 0.74), ellipse([u, middle], radius * 0.22)),
    ...loop('detail', ...studs),
  ]
}
