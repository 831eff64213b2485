import type { BodyStyle } from '../../../shared-types/words.ts'
import { ellipse, lines, mirroredDown, rounded, smooth } from '../curve.ts'
import { block, bothDown, type InkCurve, line, loop, solid, tube } from '../ink-curve.ts'
import { spread } from './floor-ink.ts'
import { frontSuspension, rearAxle, rearSprings, wheels } from './running-gear-ink.ts'
import type { UnderPlaces } from './under-places.ts'

/** What hangs under the body: wheels, springs, engine and gearbox, shaft, axle, exhaust, pipes and cables. */
export function underInk(at: UnderPlaces, body: BodyStyle): InkCurve[] {
  return [
    ...pressings(at, body),
    ...frontSuspension(at),
    ...rearSprings(at),
    ...engine(at),
    ...exhaust(at),
    ...rearAxle(at),
    ...wheels(at),
    ...cables(at),
    ...line('centre', lines([at.noseMm - 130, 0], [at.tailMm + 130, 0])),
  ]
}

function pressings(at: UnderPlaces, body: BodyStyle): InkCurve[] {
  const sill = [at.outriggerMm[0] - 20, at.rearLiftMm[1] + 90] as const
  const [tankFrom, tankTo] = at.tankMm
  const tank = at.rearRailAtMm - at.railHalfMm - 24
  const ribFrom = at.gearboxCrossMm[1] + 40
  const ribTo = at.floorCrossMm[0] - 40
  const behind = at.floorCrossMm[1] + 40
  const ends = (body === 'pickup' ? at.bearerMm[0] : at.rearRailMm[0]) - 30
  const outer = Math.max(at.frontRailEndAtMm, at.frameAtMm) + at.railHalfMm + 24
  const ribs = at.separateFrame
    ? spread(outer, at.sillInnerMm - 30, 2)
    : spread(at.frontRailEndAtMm - 40, at.sillInnerMm - 50, 4)
  return [
    ...loop('form', ...bothDown(block(sill[0], sill[1], at.sillInnerMm + 4, at.sillOuterMm, 26))),
    ...(ribTo - ribFrom > 80 ? line('form', ...bothDown(...ribs.map((v) => lines([ribFrom, v], [ribTo, v])))) : []),
    ...(ends - behind > 80 ? line('form', ...bothDown(...ribs.map((v) => lines([behind, v], [ends, v])))) : []),
    ...loop('form', block(tankFrom + 34, tankTo - 34, -tank + 34, tank - 34, 44)),
    ...line('form', ...[-0.42, 0.42].map((share) => lines([tankFrom, tank * share], [tankTo, tank * share]))),
    ...line('form', ...[-0.36, 0.36].map((share) => lines([tankFrom, tank * share], [tankTo, tank * share]))),
    ...loop('detail', ellipse([(tankFrom + tankTo) / 2, tank * 0.12], 30), ellipse([tankTo - 60, -tank * 0.16], 11)),
    ...loop('form', ...bothDown(...[0.3, 0.55, 0.8].map((share) => railHole(at, share)))),
    ...(body === 'pickup' ? bearers(at) : []),
  ]
}

const railHole = (at: UnderPlaces, share: number) => {
  const [from, to] = at.rearRailMm
  return ellipse([from + (to - from) * share, at.rearRailAtMm - 4], 14, 11)
}

/** Further bearers of the load bed, seen between and outside the side members. */
function bearers(at: UnderPlaces): InkCurve[] {
  const inner = at.rearRailAtMm - at.railHalfMm - 16
  const outer = at.rearRailAtMm + at.railHalfMm + 16
  const places = [at.rearAxleMm - at.archRadiusMm * 0.5, at.rearAxleMm + at.archRadiusMm * 0.5]
  return loop(
    'form',
    ...places.map((u) => block(u - 38, u + 38, -inner, inner, 8)),
    ...bothDown(
      ...[at.rearAxleMm + at.archRadiusMm + 60, at.rearCrossMm[0] - 90].map((u) =>
        block(u - 38, u + 38, outer, at.sillOuterMm - 26, 8),
      ),
    ),
  )
}

function engine(at: UnderPlaces): InkCurve[] {
  const from = at.frontAxleMm + 62
  const end = at.gearboxCrossMm[0] - 16
  const bell = from + (end - from) * 0.48
  const box = from + (end - from) * 0.62
  return [
    ...solid('detail', block(from, bell, -138, 138, 46)),
    ...loop('form', block(from + 26, bell - 26, -112, 112, 34)),
    ...loop('detail', ellipse([from + 58, 0], 14)),
    ...solid(
      'detail',
      rounded(
        [
          [bell - 6, -178],
          [bell - 6, 178],
          [bell + 26, 172],
          [box, 104],
          [box, -104],
          [bell + 26, -172],
        ],
        22,
      ),
    ),
    ...line(
      'form',
      smooth([
        [bell + 28, -168],
        [bell + 34, 0],
        [bell + 28, 168],
      ]),
    ),
    ...solid(
      'detail',
      rounded(
        [
          [box - 4, -102],
          [box - 4, 102],
          [end - 110, 78],
          [end, 50],
          [end, -50],
          [end - 110, -78],
        ],
        20,
      ),
    ),
    ...line(
      'form',
      ...[0.2, 0.4, 0.6].map((share) => lines([box + (end - box) * share, -84], [box + (end - box) * share, 84])),
    ),
    ...loop('detail', ellipse([box + (end - box) * 0.3, 0], 13)),
  ]
}

function exhaust(at: UnderPlaces): InkCurve[] {
  const start = at.frontAxleMm + 190
  const [crossFrom] = at.gearboxCrossMm
  const axle = at.rearAxleMm
  const from = at.floorCrossMm[1] + 60
  const to = Math.min(from + 520, axle - 260)
  const boxAt = -236
  const silencer = to - from > 200 ? solid('detail', block(from, to, boxAt - 70, boxAt + 70, 58)) : []
  const tail = at.rearRailAtMm - at.railHalfMm - 52
  const pipe = tube(
    [
      [start, -158],
      [start + 150, -206],
      [crossFrom, -232],
      [from + 20, boxAt],
    ],
    20,
  )
  const over = tube(
    [
      [to - 20, boxAt],
      [axle - 170, boxAt - 16],
      [axle, -tail + 6],
      [axle + 150, -tail],
      [at.tailMm - 200, -tail],
      [at.tailMm + 22, -tail - 10],
    ],
    19,
  )
  return [
    ...solid('detail', pipe, over),
    ...silencer,
    ...(to - from > 200
      ? line('form', ...[46, to - from - 46].map((du) => lines([from + du, boxAt - 69], [from + du, boxAt + 69])))
      : []),
  ]
}

/** Brake pipe along the right member, and the cable of the hand brake to both rear wheels. */
function cables(at: UnderPlaces): InkCurve[] {
  const { rearAxleMm: u } = at
  const yoke = Math.max(at.floorCrossMm[1] + 40, u - 700)
  const cable = smooth(
    [
      [yoke, 70],
      [yoke + 240, 190],
      [u - 130, at.tyreMm[0] - 14],
    ],
    [1, 0],
  )
  const pipe = [at.frontRailMm[0] + 120, at.frontRailEndAtMm + at.railHalfMm + 8] as const
  return [
    ...line('form', lines([at.gearboxCrossMm[1] + 30, 70], [yoke, 70]), cable, mirroredDown(cable)),
    ...line('form', lines([yoke, -70], [yoke, 70])),
    ...line(
      'form',
      smooth(
        [
          [pipe[0], at.frontRailAtMm - 20],
          [at.frontRailMm[1], at.frontRailEndAtMm - 20],
          [at.floorCrossMm[0], at.rearRailAtMm - 80],
          [u - 60, 120],
        ],
        [1, 0],
      ),
    ),
  ]
}
