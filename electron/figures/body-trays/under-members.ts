import type { BodyStyle } from '../../../shared-types/words.ts'
import type { Point } from '../cubic-path.ts'
import { type Curve, joined, lines, rounded, smooth } from '../curve.ts'
import { block } from '../ink-curve.ts'
import { fitted } from './fitted.ts'
import { bowed, railAlong, splash } from './member-shapes.ts'
import { bothSides, type Piece, piece } from './tray-drawing.ts'
import type { UnderPlaces } from './under-places.ts'

/** Members of the underside as they lie over its outline, none touching another. */
export function underMembers(at: UnderPlaces, body: BodyStyle, conditions: ReadonlySet<string>): Piece[] {
  return [
    ...frontMembers(at),
    ...middleMembers(at, conditions),
    ...rearMembers(at, body),
    ...(body === 'pickup' ? [bedBearer(at)] : []),
  ]
}

function frontMembers(at: UnderPlaces): Piece[] {
  const { frontAxleMm: axle, frontRailMm, frontRailAtMm: rail, railHalfMm: half } = at
  const [from] = frontRailMm
  const steering = Math.max(from + 30, axle - 316)
  const inner = rail - half - 10
  const shield = [axle + at.archRadiusMm + 26, at.outriggerMm[0] - 22] as const
  return [
    ...bothSides(
      'front-bumper-mount',
      rounded(
        [
          [at.noseMm + 16, rail - 62],
          [from - 10, rail - 48],
          [from - 10, rail + 48],
          [at.noseMm + 16, rail + 62],
        ],
        12,
      ),
    ),
    ...bothSides(
      'front-rail',
      railAlong(
        at.frontRailMm,
        [
          [0, rail],
          [0.34, rail],
          [0.62, rail + 4],
          [1, at.frontRailEndAtMm],
        ],
        half,
      ),
    ),
    piece('front-crossmember', bowed(axle - 150, axle + 44, inner, 26)),
    piece(
      'steering-mount',
      rounded(
        [
          [steering, -inner + 8],
          [steering + 118, -inner + 8],
          [steering + 108, -inner + 132],
          [steering + 16, -inner + 132],
        ],
        18,
      ),
    ),
    ...bothSides(
      'front-suspension-mount',
      rounded(
        [
          [axle - 124, rail + half + 12],
          [axle + 118, rail + half + 12],
          [axle + 80, at.tyreMm[0] - 36],
          [axle - 84, at.tyreMm[0] - 36],
        ],
        34,
      ),
    ),
    ...bothSides('front-splash-shield', splash(shield, railsOutMm(at) + 24, at.sillOuterMm)),
    ...bothSides('front-lift-point', liftPoint(at.outriggerMm[0] + 44, at)),
  ]
}

/** Outer face of the side members behind the front wheel; a separate frame swings out there. */
const railsOutMm = (at: UnderPlaces): number =>
  Math.max(at.frontRailAtMm + 4, at.frontRailEndAtMm, at.separateFrame ? at.frameAtMm : 0) + at.railHalfMm

function middleMembers(at: UnderPlaces, conditions: ReadonlySet<string>): Piece[] {
  const [from, to] = at.outriggerMm
  const root = railsOutMm(at) + 16
  const outrigger = rounded(
    [
      [from, root],
      [to, root],
      [to - 26, at.sillInnerMm - 8],
      [from + 22, at.sillInnerMm - 8],
    ],
    16,
  )
  const inner =
    (at.separateFrame ? Math.min(at.frontRailEndAtMm, at.rearRailAtMm) : at.frontRailEndAtMm + 90) - at.railHalfMm
  const floorHalf = at.separateFrame ? inner - 12 : at.sillInnerMm - 14
  return [
    ...bothSides('outrigger', outrigger).filter(({ panelId }) => fitted(conditions, 'outriggers', sideOf(panelId))),
    piece('mid-crossmember', bowed(...at.gearboxCrossMm, inner - 12, -16)),
    ...(fitted(conditions, 'floor-crossmember', null)
      ? [piece('floor-crossmember', bowed(...at.floorCrossMm, floorHalf, 8))]
      : []),
    ...[...frameSide(at), ...bodyMount(at)].filter(({ panelId }) =>
      fitted(conditions, 'separate-frame', sideOf(panelId)),
    ),
  ]
}

const sideOf = (panelId: string): 'L' | 'R' => (panelId.endsWith('.L') ? 'L' : 'R')

function frameEnds(at: UnderPlaces): readonly [number, number] {
  return [at.frontRailMm[1] + 10, at.frameEndMm - 10]
}

function frameSide(at: UnderPlaces): Piece[] {
  const swing: Point[] = [
    [0, at.frontRailEndAtMm],
    [0.4, at.frameAtMm],
    [0.8, at.frameAtMm],
    [1, at.rearRailAtMm],
  ]
  return bothSides('frame-side', railAlong(frameEnds(at), swing, at.railHalfMm))
}

/** Rubber mounting on its bracket outside the side member. */
function bodyMount(at: UnderPlaces): Piece[] {
  const [from, to] = frameEnds(at)
  const middle = from + (to - from) * 0.62
  const root = at.frameAtMm + at.railHalfMm + 12
  return bothSides(
    'body-mount',
    rounded(
      [
        [middle - 66, root],
        [middle + 66, root],
        [middle + 42, root + 96],
        [middle - 42, root + 96],
      ],
      30,
    ),
  )
}

function rearMembers(at: UnderPlaces, body: BodyStyle): Piece[] {
  const { rearAxleMm: axle, railHalfMm: half, rearRailAtMm: rail, archRadiusMm: radius } = at
  const [crossFrom, crossTo] = at.rearCrossMm
  const reach = Math.min(rail + half + 52, at.sillOuterMm * 0.7)
  const arch = archOuter(axle, radius, at)
  return [
    ...bothSides('rear-lift-point', liftPoint(at.rearLiftMm[0], at)),
    ...bothSides('rear-spring-mount', springMount(at)),
    ...bothSides(
      'rear-rail',
      railAlong(
        at.rearRailMm,
        [
          [0, rail],
          [0.3, rail],
          [0.55, rail - 10],
          [1, rail - 6],
        ],
        half,
      ),
    ),
    ...(body === 'pickup' ? [] : bothSides('rear-arch-outer', arch)),
    piece('tank-area', block(...at.tankMm, -(rail - half - 24), rail - half - 24, 64)),
    piece('rear-crossmember', bowed(crossFrom, crossTo, reach, -12)),
    ...bothSides(
      'rear-bumper-mount',
      rounded(
        [
          [crossTo + 8, rail - 96],
          [at.tailMm - 8, rail - 82],
          [at.tailMm - 8, rail + 20],
          [crossTo + 8, rail + 34],
        ],
        10,
      ),
    ),
  ]
}

function springMount(at: UnderPlaces): Curve {
  const [from, to] = at.springMountMm
  const root = at.rearRailAtMm + at.railHalfMm + 14
  const end = Math.min(root + 134, at.sillOuterMm - 30)
  return rounded(
    [
      [from, root],
      [to, root],
      [to - 8, end - 26],
      [to - 52, end],
      [from + 30, end],
    ],
    24,
  )
}

/** The outer half of the wheel housing, open downwards: a bow round the tyre. */
function archOuter(axle: number, radius: number, at: UnderPlaces): Curve {
  const edge = at.archOuterMm
  const deep = Math.max(at.rearRailAtMm + at.railHalfMm + 26, edge - 290)
  const span = radius - 8
  return joined(
    smooth(
      [
        [axle - span, edge],
        [axle - span * 0.84, edge - (edge - deep) * 0.56],
        [axle - span * 0.44, edge - (edge - deep) * 0.93],
        [axle, deep],
        [axle + span * 0.44, edge - (edge - deep) * 0.93],
        [axle + span * 0.84, edge - (edge - deep) * 0.56],
        [axle + span, edge],
      ],
      [0, -1],
      [0, 1],
    ),
    lines([axle + span, edge], [axle - span, edge]),
  )
}

function bedBearer(at: UnderPlaces): Piece {
  return piece('bed-cross-rail', bowed(...at.bearerMm, at.sillOuterMm - 26, 0))
}

const liftPoint = (from: number, at: UnderPlaces): Curve =>
  block(from, from + 92, at.sillInnerMm + 12, Math.min(at.sillInnerMm + 100, at.sillOuterMm - 8), 18)
