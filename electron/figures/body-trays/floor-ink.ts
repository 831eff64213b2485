import { ellipse, lines, roundedBox, smooth } from '../curve.ts'
import { block, bothDown, type InkCurve, line, loop } from '../ink-curve.ts'
import type { Cabin } from './floor-cabin.ts'
import type { Measures } from './measures.ts'

/** Instruments, glove box and ribs of the footwells, and the seats where they stand. */
export function cabinInk(m: Measures, cabin: Cabin, rearSeat: boolean): InkCurve[] {
  const { floorFrontMm: front, floorMiddleMm: middle, floorHalfMm: half } = m
  const dial = cabin.faciaTopMm + 142
  const place = half * 0.52
  const seatFrom = rearSeat ? front + (middle - front) * 0.42 : front + (m.floorRearMm - front) * 0.4
  const seatTo = rearSeat ? middle + 60 : m.floorRearMm - 70
  const seatMiddle = (m.tunnelHalfMm + half) / 2 + 6
  const seatHalf = (half - m.tunnelHalfMm) / 2 - 34
  const ribs = spread(m.bellHalfMm + 34, half - 60, 4)
  return [
    ...loop('detail', ...bothDown(ellipse([dial, 84], 58), ellipse([dial, 84], 50))),
    ...loop('form', ...bothDown(ellipse([dial - 22, 176], 24), ellipse([dial + 40, 172], 15))),
    ...loop('form', ellipse([dial - 34, 0], 12), ellipse([dial + 44, 0], 12)),
    ...loop('detail', ...bothDown(roundedBox([dial + 4, place + 44], 118, half * 0.42, 24))),
    ...loop('form', ...bothDown(ellipse([dial + 40, place + 44], 9))),
    ...line(
      'form',
      smooth([
        [cabin.faciaTopMm + 46, -half * 0.8],
        [cabin.faciaTopMm + 26, 0],
        [cabin.faciaTopMm + 46, half * 0.8],
      ]),
    ),
    ...line('form', ...bothDown(...ribs.map((v) => lines([front + 36, v], [seatFrom - 30, v])))),
    ...seat(seatFrom, seatTo, seatMiddle, seatHalf),
    ...(rearSeat ? rearRibs(m) : []),
    ...loop(
      'form',
      ...bothDown(ellipse([m.toeMm + 96, half * 0.48], 26, 40), ellipse([m.toeMm + 104, half * 0.72], 22, 34)),
    ),
    ...line('form', ...bothDown(lines([m.toeMm + 160, m.bellHalfMm + 40], [m.toeMm + 160, half - 40]))),
    ...loop('form', ...bothDown(...plugHoles(m, rearSeat))),
  ]
}

/** Front seat from above: cushion with two pipings, back rest behind it. */
function seat(from: number, to: number, middle: number, half: number): InkCurve[] {
  const back = to - 118
  return [
    ...loop('form', ...bothDown(block(from, back, middle - half, middle + half, 66))),
    ...line(
      'form',
      ...bothDown(
        ...[-0.34, 0.34].map((share) =>
          smooth([
            [from + 26, middle + share * half * 1.5],
            [back - 24, middle + share * half * 1.3],
          ]),
        ),
      ),
    ),
    ...loop('form', ...bothDown(block(back + 8, to, middle - half - 6, middle + half + 6, 44))),
  ]
}

function rearRibs(m: Measures): InkCurve[] {
  const from = m.floorMiddleMm + 100
  const to = m.floorRearMm - 46
  if (to - from < 80) return []
  return line(
    'form',
    ...bothDown(...spread(m.tunnelHalfMm + 50, m.floorHalfMm - 60, 4).map((v) => lines([from, v], [to, v]))),
  )
}

/** Drain plugs in the corners of the footwells. */
function plugHoles(m: Measures, rearSeat: boolean) {
  const end = rearSeat ? m.floorMiddleMm : m.floorRearMm
  return [ellipse([m.floorFrontMm + 46, m.floorHalfMm - 34], 14), ellipse([end - 34, m.tunnelHalfMm + 44], 14)]
}

/** Evenly spread distances between two limits, both included; the middle for a single one. */
export const spread = (from: number, to: number, count: number): number[] =>
  count < 2
    ? [(from + to) / 2]
    : Array.from({ length: count }, (_, index) => from + ((to - from) * index) / (count - 1))
