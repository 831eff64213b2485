import type { BodyFrame } from '../body-shape/body-frame.ts'
import type { Point } from '../cubic-path.ts'
import { type Curve, endOf, startOf } from '../curve.ts'
import type { Cabin } from './floor-cabin.ts'
import { held, type Measures } from './measures.ts'
import {
  chain,
  edge,
  ellipseEdge,
  middleTile,
  openTile,
  roundedEdge,
  sideTile,
  straightEdge,
  type Tile,
} from './tiles.ts'

const HEEL_MM = 192
/** Between the back of the cab and the front wall of the bed. */
const BEHIND_CAB_MM = 130

/** Where load floor or bed stand on the unfolded sheet, with their wheel arches and walls. */
export interface LoadPlaces {
  /** Front edge of the load floor, and of the bed's front wall where there is one. */
  readonly floorMm: number
  readonly wallFrontMm: number
  readonly archMm: readonly [number, number]
  readonly rearMm: number
  readonly halfMm: number
  readonly innerHalfMm: number
  readonly archHighMm: number
  readonly wallHighMm: number
}

export function loadPlaces(frame: BodyFrame, m: Measures): LoadPlaces {
  const { body, tailMm, rearAxleMm, roofHeightMm, floorHeightMm, beltHeightMm } = frame
  const deep = held(beltHeightMm - floorHeightMm - 120, 400, 540)
  const wallHighMm = body === 'van' ? held((roofHeightMm - floorHeightMm) * 0.48, 560, 800) : deep
  const behind = { estate: HEEL_MM, van: 0, pickup: BEHIND_CAB_MM + deep }[body as string] ?? 0
  const floorMm = m.floorRearMm + behind
  const station = m.floorRearMm + (body === 'pickup' ? 80 : 0)
  const long = Math.max(tailMm - station - 24, 1150)
  const radius = Math.min(frame.dimensions.archRadiusMm * 0.95, (long - 320) / 2)
  const from = floorMm + held(rearAxleMm - radius - station, 130, long - 2 * radius - 180)
  return {
    floorMm,
    wallFrontMm: floorMm - deep,
    archMm: [from, from + 2 * radius],
    rearMm: floorMm + long,
    halfMm: body === 'pickup' ? Math.max(m.bodyInnerHalfMm - 40, m.archInnerHalfMm + 90) : m.floorHalfMm,
    innerHalfMm: m.archInnerHalfMm,
    archHighMm: held(radius * 0.92, 200, wallHighMm - 110),
    wallHighMm,
  }
}

interface LoadEdges {
  readonly frontLimb: Curve
  readonly foot: Curve
  readonly rearLimb: Curve
  /** Dome of the arch in three: before the wall, along it, behind it. */
  readonly dome: readonly [Curve, Curve, Curve]
  readonly rear: Curve
}

const JOINED_FROM = 0.72

function loadEdges(at: LoadPlaces, rearHalf: number): LoadEdges {
  const [from, to] = at.archMm
  const middle: Point = [(from + to) / 2, at.halfMm]
  const dome = (start: number, end: number) => ellipseEdge(middle, (to - from) / 2, at.archHighMm, start, end)
  return {
    frontLimb: straightEdge([from, at.halfMm], [from, at.innerHalfMm]),
    foot: straightEdge([from, at.innerHalfMm], [to, at.innerHalfMm]),
    rearLimb: straightEdge([to, at.innerHalfMm], [to, at.halfMm]),
    dome: [
      dome(0, JOINED_FROM),
      chain(dome(JOINED_FROM, Math.PI / 2), dome(Math.PI / 2, Math.PI - JOINED_FROM)),
      dome(Math.PI - JOINED_FROM, Math.PI),
    ],
    rear: edge(
      [
        [at.rearMm + 14, 0],
        [at.rearMm + 11, rearHalf * 0.55],
        [at.rearMm, rearHalf],
      ],
      [0, 1],
    ),
  }
}

const archTile = ({ frontLimb, dome, rearLimb, foot }: LoadEdges): Tile =>
  sideTile('rear-arch-inner', frontLimb, ...dome, rearLimb, foot)

/** Heel board, load floor with its sides, wheel arches and quarter panels of an estate. */
export function estateTiles(m: Measures, cabin: Cabin, at: LoadPlaces): readonly Tile[] {
  const corner: Point = [at.rearMm, at.innerHalfMm + 6]
  const edges = loadEdges(at, corner[1])
  const heelHalf = m.floorHalfMm - 8
  const heelBack = edge(
    [
      [at.floorMm, 0],
      [at.floorMm + 3, heelHalf * 0.5],
      [at.floorMm, heelHalf],
    ],
    [0, 1],
  )
  const heelSide = straightEdge([m.floorRearMm, m.floorHalfMm], [at.floorMm, heelHalf])
  const side = straightEdge([at.floorMm, heelHalf], [at.archMm[0], at.halfMm])
  const joint = edge([[at.archMm[1], at.innerHalfMm], corner], [1, 0.02], [1, 0.02])
  const sideEnd: Point = [at.rearMm - 26, at.halfMm - 22]
  const outer = edge([[at.archMm[1], at.halfMm], sideEnd], [1, 0.12], [0.9, -0.4])
  const back = straightEdge(sideEnd, corner)
  return [
    middleTile('heel-board', cabin.tunnelEnd, cabin.floorEnd, heelSide, heelBack),
    middleTile('load-floor', heelBack, side, edges.frontLimb, edges.foot, joint, edges.rear),
    sideTile('luggage-side-floor', edges.rearLimb, outer, back, joint),
    archTile(edges),
    wallTile(at, edges, at.floorMm + 26, at.halfMm + 84),
  ]
}

/** Load floor, wheel arches and side walls of a van. */
export function vanTiles(cabin: Cabin, at: LoadPlaces, sillDeep: number): readonly Tile[] {
  const corner: Point = [at.rearMm, at.halfMm - 18]
  const edges = loadEdges(at, corner[1])
  const side = edge([[at.archMm[1], at.halfMm], corner], [1, 0.01], [1, -0.08])
  return [
    middleTile(
      'load-floor',
      cabin.tunnelEnd,
      cabin.floorEnd,
      cabin.sillBehind ?? [],
      edges.frontLimb,
      edges.foot,
      edges.rearLimb,
      side,
      edges.rear,
    ),
    archTile(edges),
    wallTile(at, edges, at.floorMm + 40, at.halfMm + sillDeep + 70),
  ]
}

/** A side wall that stands on the wheel arch; its other edges are free. */
function wallTile(at: LoadPlaces, edges: LoadEdges, frontMm: number, lowMm: number): Tile {
  const from = startOf(edges.dome[1])
  const to = endOf(edges.dome[1])
  const top = at.halfMm + at.wallHighMm
  const rear = at.rearMm - 30
  const free = roundedEdge(
    [
      to,
      [rear, to[1] - 44],
      [rear + 8, top - 34],
      [(at.archMm[1] + rear) / 2, top],
      [frontMm + 34, top],
      [frontMm, Math.max(lowMm, from[1] - 44)],
      from,
    ],
    52,
  )
  return sideTile('rear-side-inner', edges.dome[1], free)
}

/** Front wall, floor, wheel arches and sides of a bed, behind the open space at the back of the cab. */
export function bedTiles(m: Measures, cabin: Cabin, at: LoadPlaces): readonly Tile[] {
  const half = at.halfMm
  const edges = loadEdges(at, half)
  const [from, to] = at.archMm
  const top: Point = [at.wallFrontMm, half - 30]
  const frontTop = edge([[at.wallFrontMm, 0], [at.wallFrontMm - 2, half * 0.5], top], [0, 1])
  const frontSide = straightEdge(top, [at.floorMm, half])
  const frontFoot = straightEdge([at.floorMm, 0], [at.floorMm, half])
  const cabSide = straightEdge([m.floorRearMm, m.floorHalfMm], top)
  const sideFront = straightEdge([at.floorMm, half], [from, half])
  const sideRear = straightEdge([to, half], [at.rearMm, half])
  const wall = half + at.wallHighMm
  const free = roundedEdge(
    [
      [at.rearMm, half],
      [at.rearMm + 16, wall - 34],
      [at.rearMm - 40, wall],
      [at.floorMm + 26, wall],
      [at.floorMm - 6, wall - 40],
      [at.floorMm, half],
    ],
    36,
  )
  return [
    openTile(cabin.tunnelEnd, cabin.floorEnd, cabSide, frontTop),
    middleTile('bed-front', frontTop, frontSide, frontFoot),
    middleTile('bed-floor', frontFoot, sideFront, edges.frontLimb, edges.foot, edges.rearLimb, sideRear, edges.rear),
    archTile(edges),
    sideTile('bed-side-inner', sideFront, ...edges.dome, sideRear, free),
  ]
}
