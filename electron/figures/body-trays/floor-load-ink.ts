import type { BodyFrame } from '../body-shape/body-frame.ts'
import { ellipse, lines, mirroredDown, roundedBox, smooth } from '../curve.ts'
import { block, bothDown, type InkCurve, line, loop } from '../ink-curve.ts'
import { fitted } from './fitted.ts'
import { spread } from './floor-ink.ts'
import type { LoadPlaces } from './floor-load.ts'
import { held, type Measures } from './measures.ts'
import { type Piece, piece } from './tray-drawing.ts'

/** Ribs of a load floor or bed, pressings of arches and walls. */
export function loadInk(frame: BodyFrame, m: Measures, at: LoadPlaces, conditions: ReadonlySet<string>): InkCurve[] {
  const { body } = frame
  return [
    ...floorRibs(at, body === 'estate' ? 2 : 4, body === 'estate' && fitted(conditions, 'spare-well', null)),
    ...archPressing(at),
    ...(body === 'pickup' ? bedWalls(at) : wallPressings(frame, at, conditions)),
    ...(body === 'estate' ? heelInk(m, at) : []),
    ...(body === 'pickup' ? cabBack(m, at) : []),
  ]
}

/** Ribs between the arches run through; those outside them stop before the arch and begin again behind it. */
function floorRibs(at: LoadPlaces, outside: number, well: boolean): InkCurve[] {
  const [from, to] = [at.floorMm + 60, at.rearMm - 60]
  const end = well ? at.archMm[1] - 110 : to
  const rib = (start: number, stop: number, v: number) =>
    stop - start < 70 ? [] : [block(start, stop, v - 13, v + 13, 13)]
  const inner = spread(-at.innerHalfMm + 62, at.innerHalfMm - 62, 10).flatMap((v) => rib(from, end, v))
  const free = at.halfMm - at.innerHalfMm - 50
  const outer =
    free < 20 ? [] : spread(at.innerHalfMm + 30, at.halfMm - 40, outside > 2 && free > 110 ? 2 : 1 + Number(free > 110))
  const before = outer.flatMap((v) => rib(from, at.archMm[0] - 34, v))
  const behind = outside > 2 ? outer.flatMap((v) => rib(at.archMm[1] + 34, to, v)) : []
  return loop('form', ...inner, ...bothDown(...before, ...behind))
}

function archPressing(at: LoadPlaces): InkCurve[] {
  const [from, to] = at.archMm
  const middle = (from + to) / 2
  const reach = (to - from) / 2 - 44
  return line(
    'form',
    ...bothDown(
      smooth(
        [
          [middle - reach, at.innerHalfMm + 20],
          [middle - reach, at.halfMm],
          [middle, at.halfMm + at.archHighMm - 58],
          [middle + reach, at.halfMm],
          [middle + reach, at.innerHalfMm + 20],
        ],
        [0, 1],
        [0, -1],
      ),
    ),
  )
}

function bedWalls(at: LoadPlaces): InkCurve[] {
  const top = at.halfMm + at.wallHighMm
  const stakes = [at.floorMm + 90, (at.archMm[1] + at.rearMm) / 2 + 10]
  return [
    ...line('form', ...bothDown(lines([at.floorMm + 30, top - 46], [at.rearMm - 30, top - 46]))),
    ...loop(
      'form',
      ...bothDown(
        ...stakes.map((u) => roundedBox([u, at.halfMm + (at.wallHighMm - 50) / 2], 62, at.wallHighMm - 130, 22)),
      ),
    ),
    ...loop('detail', ...bothDown(...stakes.map((u) => roundedBox([u, top - 22], 54, 24, 6)))),
    ...loop(
      'form',
      ...bothDown(
        block(at.wallFrontMm + 70, at.floorMm - 60, 46, at.halfMm * 0.44, 26),
        block(at.wallFrontMm + 70, at.floorMm - 60, at.halfMm * 0.52, at.halfMm - 76, 26),
      ),
    ),
    ...line('form', lines([at.wallFrontMm + 34, -at.halfMm + 56], [at.wallFrontMm + 34, at.halfMm - 56])),
  ]
}

/** The back of the cab stands in the open space: its foot, drawn lightly. */
function cabBack(m: Measures, at: LoadPlaces): InkCurve[] {
  const u = (m.floorRearMm + at.wallFrontMm) / 2
  return line(
    'form',
    smooth([
      [u - 8, -m.floorHalfMm + 24],
      [u + 8, 0],
      [u - 8, m.floorHalfMm - 24],
    ]),
  )
}

function wallPressings({ body }: BodyFrame, at: LoadPlaces, conditions: ReadonlySet<string>): InkCurve[] {
  const top = at.halfMm + at.wallHighMm
  const low = at.halfMm + at.archHighMm + 46
  const front = at.floorMm + 90
  const bays = body === 'van' ? 3 : 2
  const step = (at.rearMm - 60 - front) / bays
  const upper = (side: 'L' | 'R') =>
    Array.from({ length: bays }, (_, index) => {
      const opens = index === 0 && body === 'van' && fitted(conditions, 'side-loading-door', side)
      const bay = block(front + step * index + 16, front + step * (index + 1) - 16, low, top - 46, 34)
      const door = block(front - 20, front + step - 16, at.halfMm + 258, top - 34, 40)
      const curve = opens ? door : bay
      return {
        weight: opens ? ('detail' as const) : ('form' as const),
        curve: side === 'L' ? curve : mirroredDown(curve),
      }
    })
  if (top - 46 - low < 60) return []
  return (['L', 'R'] as const).flatMap(upper).flatMap(({ weight, curve }) => loop(weight, curve))
}

function heelInk(m: Measures, at: LoadPlaces): InkCurve[] {
  return line(
    'form',
    ...bothDown(
      smooth([
        [m.floorRearMm + 40, m.tunnelHalfMm + 50],
        [m.floorRearMm + 36, m.floorHalfMm * 0.6],
        [m.floorRearMm + 42, m.floorHalfMm - 60],
      ]),
      lines([at.floorMm - 44, 60], [at.floorMm - 44, m.floorHalfMm - 60]),
    ),
  )
}

/** The pressed well of the spare wheel in a load floor, with the rings seen in it. */
export function loadWell(at: LoadPlaces): { readonly piece: Piece; readonly ink: readonly InkCurve[] } {
  const radius = held(at.innerHalfMm - 110, 200, 312)
  const middle = [at.rearMm - radius - 60, 0] as const
  return {
    piece: piece('spare-well', ellipse(middle, radius), 'load-floor'),
    ink: loop('form', ellipse(middle, radius - 30), ellipse(middle, radius * 0.42), ellipse(middle, radius * 0.14)),
  }
}
