import { ellipse, lines, smooth } from '../curve.ts'
import { block, bothDown, type InkCurve, line, loop } from '../ink-curve.ts'
import type { BootPlaces } from './floor-boot.ts'
import { spread } from './floor-ink.ts'
import type { Measures } from './measures.ts'
import { held } from './measures.ts'
import { bothSides, type Piece, piece } from './tray-drawing.ts'

/** Pressings of the rear half of a body with a boot, and the rear seat. */
export function bootInk(m: Measures, at: BootPlaces, well: Piece | null, soft: boolean): InkCurve[] {
  const { floorHalfMm: half, archInnerHalfMm: inner } = m
  const seat = [m.floorRearMm + 34, at.heelMm + 20] as const
  const archMiddle = (at.bootFrontMm + at.archRearMm) / 2
  const archHalf = (at.archRearMm - at.bootFrontMm) / 2 - 40
  const [wellU, wellV, wellR] = wellPlace(m, at)
  return [
    ...loop('form', ...bothDown(block(at.heelMm + 64, at.seatBackMm - 60, 56, half * 0.82, 70))),
    ...line(
      'form',
      ...bothDown(
        smooth([
          [seat[0], m.tunnelHalfMm + 50],
          [seat[0] - 4, half * 0.6],
          [seat[0] + 4, half - 60],
        ]),
      ),
    ),
    ...line('form', ...bothDown(lines([m.floorRearMm + 130, 60], [m.floorRearMm + 130, half - 60]))),
    ...(soft
      ? loop('form', block(at.seatBackMm + 60, at.shelfMm - 40, -half * 0.74, half * 0.74, 90))
      : loop(
          'form',
          ...bothDown(
            ellipse([at.seatBackMm + 150, half * 0.46], 96, 138),
            ellipse([at.seatBackMm + 150, half * 0.46], 20),
          ),
        )),
    ...line(
      'form',
      ...bothDown(
        smooth(
          [
            [archMiddle - archHalf, inner + 36],
            [archMiddle, inner + at.archHighMm * 0.62],
            [archMiddle + archHalf, inner + 36],
          ],
          [0.1, 1],
          [0.1, -1],
        ),
        smooth([
          [at.archRearMm + 60, inner + 60],
          [at.bootRearMm - 90, inner + 50],
        ]),
        smooth([
          [at.archRearMm + 60, inner + 130],
          [at.bootRearMm - 110, inner + 110],
        ]),
      ),
    ),
    ...(well
      ? [
          ...loop(
            'form',
            ellipse([wellU, wellV], wellR - 30),
            ellipse([wellU, wellV], wellR * 0.42),
            ellipse([wellU, wellV], wellR * 0.14),
          ),
          ...line('form', ...bothDown(lines([at.bootFrontMm + 70, inner - 60], [at.bootRearMm - 60, inner - 66]))),
        ]
      : bootRibs(m, at)),
  ]
}

function bootRibs(m: Measures, at: BootPlaces): InkCurve[] {
  const reach = m.archInnerHalfMm - 60
  return loop(
    'form',
    ...spread(-reach, reach, 7).map((v) => block(at.bootFrontMm + 90, at.bootRearMm - 80, v - 13, v + 13, 13)),
  )
}

function wellPlace(m: Measures, at: BootPlaces): readonly [number, number, number] {
  const long = at.bootRearMm - at.bootFrontMm
  const radius = held(m.archInnerHalfMm - 120, 210, Math.min(312, long / 2 - 90, m.archInnerHalfMm - 40))
  return [
    at.bootRearMm - radius - Math.min(150, (long - 2 * radius) / 2),
    (m.archInnerHalfMm - radius - 30) * 0.4,
    radius,
  ]
}

/** The pressed well of the spare wheel. */
export function spareWell(m: Measures, at: BootPlaces): Piece {
  const [u, v, radius] = wellPlace(m, at)
  return piece('spare-well', ellipse([u, v], radius), 'luggage-floor')
}

/** Crossmember under the front seats, from the tunnel to the sill. */
export function seatMounts(m: Measures, rearFloor: boolean): Piece[] {
  const middle = rearFloor
    ? m.floorFrontMm + (m.floorMiddleMm - m.floorFrontMm) * 0.62
    : m.floorFrontMm + (m.floorRearMm - m.floorFrontMm) * 0.56
  return bothSides(
    'seat-mount',
    block(middle - 56, middle + 56, m.tunnelHalfMm * 1.3, m.floorHalfMm - 16, 18),
    'front-floor',
  )
}
