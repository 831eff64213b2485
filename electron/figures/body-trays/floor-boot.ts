import type { BodyFrame } from '../body-shape/body-frame.ts'
import type { Point } from '../cubic-path.ts'
import type { Curve } from '../curve.ts'
import type { Cabin } from './floor-cabin.ts'
import { held, type Measures } from './measures.ts'
import { edge, middleTile, openTile, sideTile, straightEdge, type Tile } from './tiles.ts'

const HEEL_MM = 192
/** Between shelf and boot floor, which do not touch: the seat back stands between them. */
const OPEN_MM = 86

/** Where the panels behind the cabin of a body with a boot stand on the unfolded sheet. */
export interface BootPlaces {
  readonly heelMm: number
  readonly seatBackMm: number
  readonly shelfMm: number
  readonly bootFrontMm: number
  readonly archRearMm: number
  readonly bootRearMm: number
  readonly archHighMm: number
}

export function bootPlaces(frame: BodyFrame, m: Measures): BootPlaces {
  const heelMm = m.floorRearMm + HEEL_MM
  const seatBackMm = heelMm + held(frame.beltHeightMm - frame.floorHeightMm - HEEL_MM - 40, 330, 470)
  const shelfMm = seatBackMm + (frame.body === 'convertible' ? 350 : 310)
  const bootFrontMm = shelfMm + OPEN_MM
  const long = held(frame.tailMm - frame.cabinRearMm + 50, 940, 1600)
  const archR = frame.dimensions.archRadiusMm + 40
  const behindWall = frame.rearAxleMm + archR - frame.cabinRearMm
  return {
    heelMm,
    seatBackMm,
    shelfMm,
    bootFrontMm,
    archRearMm: bootFrontMm + held(behindWall, long * 0.42, long * 0.62),
    bootRearMm: bootFrontMm + long,
    archHighMm: held(archR * 1.4, 420, 560),
  }
}

/** Heel board, seat back, shelf or hood well, boot floor with its sides, wheel arches and quarter panels. */
export function bootTiles(frame: BodyFrame, m: Measures, cabin: Cabin, at: BootPlaces): readonly Tile[] {
  const { floorHalfMm: half, archInnerHalfMm: inner } = m
  const heelHalf = half - 8
  const backHalf = half - 30
  const shelfHalf = Math.max(half - 86, inner + 20)
  const heelBack = edge(
    [
      [at.heelMm, 0],
      [at.heelMm + 3, half * 0.5],
      [at.heelMm, heelHalf],
    ],
    [0, 1],
  )
  const heelSide = straightEdge([m.floorRearMm, half], [at.heelMm, heelHalf])
  const backSide = edge(
    [
      [at.heelMm, heelHalf],
      [at.seatBackMm, backHalf],
    ],
    [1, -0.01],
    [1, -0.14],
  )
  const backTop = edge(
    [
      [at.seatBackMm, 0],
      [at.seatBackMm - 4, half * 0.5],
      [at.seatBackMm, backHalf],
    ],
    [0, 1],
  )
  const shelfSide = edge(
    [
      [at.seatBackMm, backHalf],
      [at.shelfMm, shelfHalf],
    ],
    [1, -0.14],
    [1, -0.3],
  )
  const shelfBack = edge(
    [
      [at.shelfMm + 28, 0],
      [at.shelfMm + 22, shelfHalf * 0.5],
      [at.shelfMm, shelfHalf],
    ],
    [0, 1],
  )
  const bootFront = edge(
    [
      [at.bootFrontMm + 28, 0],
      [at.bootFrontMm + 22, inner * 0.55],
      [at.bootFrontMm, inner],
    ],
    [0, 1],
  )
  const arch = archEdges(at, shelfHalf, inner, m)
  const sideRear = at.bootRearMm - 34
  const sideHalf = arch.rearHalf - 26
  const sideFront = straightEdge([at.archRearMm, inner], [at.archRearMm, arch.rearHalf])
  const sideJoint = edge(
    [
      [at.archRearMm, inner],
      [at.bootRearMm, inner - 6],
    ],
    [1, 0.05],
    [1, -0.06],
  )
  const sideOuter = edge(
    [
      [at.archRearMm, arch.rearHalf],
      [(at.archRearMm + sideRear) / 2, arch.rearHalf + 14],
      [sideRear, sideHalf],
    ],
    [1, 0.2],
    [0.8, -0.6],
  )
  const sideBack = straightEdge([sideRear, sideHalf], [at.bootRearMm, inner - 6])
  const bootRear = edge(
    [
      [at.bootRearMm + 26, 0],
      [at.bootRearMm + 20, inner * 0.55],
      [at.bootRearMm, inner - 6],
    ],
    [0, 1],
  )
  const shelf = frame.body === 'convertible' ? 'folding-roof-well' : 'rear-shelf'
  return [
    middleTile('heel-board', cabin.tunnelEnd, cabin.floorEnd, heelSide, heelBack),
    middleTile('rear-bulkhead', heelBack, backSide, backTop),
    middleTile(shelf, backTop, shelfSide, shelfBack),
    openTile(shelfBack, arch.front, bootFront),
    middleTile('luggage-floor', bootFront, arch.foot, sideJoint, bootRear),
    sideTile('luggage-side-floor', sideFront, sideOuter, sideBack, sideJoint),
    sideTile('rear-arch-inner', arch.front, arch.domeFront, arch.domeRear, sideFront, arch.foot),
    sideTile('rear-side-inner', shelfSide, arch.domeFront, quarterEdge(frame, at, half, arch.apex, backHalf)),
  ]
}

/** The wheel arch laid out flat: foot along the boot floor, dome outwards. */
function archEdges(at: BootPlaces, shelfHalf: number, inner: number, m: Measures) {
  const rearHalf = Math.max(inner + 130, m.bodyInnerHalfMm - 10)
  const middle = (at.shelfMm + at.archRearMm) / 2 + 20
  const apex: Point = [middle, Math.max(inner + at.archHighMm, rearHalf + 110)]
  return {
    rearHalf,
    apex,
    front: edge(
      [
        [at.shelfMm, shelfHalf],
        [at.bootFrontMm, inner],
      ],
      [0.5, -1],
      [1, -0.5],
    ),
    domeFront: edge([[at.shelfMm, shelfHalf], apex], [0.1, 1], [1, 0]),
    domeRear: edge([apex, [at.archRearMm, rearHalf]], [1, 0], [0.05, -1]),
    foot: straightEdge([at.bootFrontMm, inner], [at.archRearMm, inner]),
  }
}

/** Free edge of the quarter panel, from the wheel arch round to the shelf. */
function quarterEdge({ body }: BodyFrame, at: BootPlaces, half: number, apex: Point, backHalf: number): Curve {
  const doorFour = body === 'saloon4'
  const front = doorFour ? at.seatBackMm - 210 : at.heelMm + 70
  const top = apex[1] + 176
  return edge(
    [
      apex,
      [apex[0] - 8, apex[1] + 80],
      [apex[0] - 74, top],
      [(front + apex[0]) / 2, top + 34],
      [front + 150, top],
      [front + 30, top - 130],
      [front + (doorFour ? 30 : 0), half + 190],
      [front + 44, half + 84],
      [at.seatBackMm - 130, half + 46],
      [at.seatBackMm, backHalf],
    ],
    [0, 1],
    [0.6, -1],
  )
}
