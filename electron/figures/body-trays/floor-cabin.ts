import type { Point } from '../cubic-path.ts'
import type { Curve } from '../curve.ts'
import type { Measures } from './measures.ts'
import { chain, edge, middleTile, openTile, sideTile, straightEdge, type Tile } from './tiles.ts'

/** The cabin from the facia to the end of its floor, and the edges that what lies behind it is joined to. */
export interface Cabin {
  readonly tiles: readonly Tile[]
  /** Upper edge of the facia, from the centre line outwards. */
  readonly faciaTop: Curve
  readonly faciaTopMm: number
  readonly faciaHalfMm: number
  /** End of the floor: across the tunnel, and across the footwell out to the sill. */
  readonly tunnelEnd: Curve
  readonly floorEnd: Curve
  /** Foot of the inner sill behind the end of the floor; none where the sill ends with it. */
  readonly sillBehind: Curve | null
}

const FACIA_HIGH_MM = 318
const OPEN_MM = 64

/**
 * Facia, toe board, tunnel, floors and inner sills of the driver's left. With `rearFloor` the floor is in two;
 * `sillEndMm` is where the inner sill ends.
 */
export function cabinTiles(m: Measures, rearFloor: boolean, sillEndMm: number): Cabin {
  const { toeMm: toe, floorFrontMm: front, floorRearMm: rear, floorHalfMm: half } = m
  const middle = rearFloor ? m.floorMiddleMm : rear
  const [bell, tunnel] = [m.bellHalfMm, m.tunnelHalfMm]
  const end = tunnel * 0.94
  const facia = { top: toe - OPEN_MM - FACIA_HIGH_MM, foot: toe - OPEN_MM, half: half - 6 }
  const corner: Point = [facia.top + 62, facia.half - 48]
  const knee: Point = [facia.foot - 34, facia.half - 26]

  const faciaTop = edge(
    [[facia.top, 0], [facia.top + 4, facia.half * 0.42], [facia.top + 22, facia.half * 0.74], corner],
    [0, 1],
    [0.9, 1],
  )
  const faciaSide = edge([corner, [facia.top + 150, facia.half], knee], [0.6, 1], [1, -0.4])
  const faciaFoot = edge(
    [
      knee,
      [facia.foot - 14, facia.half * 0.8],
      [facia.foot - 10, facia.half * 0.5],
      [facia.foot, facia.half * 0.2],
      [facia.foot, 0],
    ],
    undefined,
    [0, -1],
  )
  const underFacia = straightEdge(knee, [toe, half])
  const toeFront = edge(
    [
      [toe, 0],
      [toe + 3, half * 0.5],
      [toe, half],
    ],
    [0, 1],
  )
  const toeSide = straightEdge([toe, half], [front, half])
  const toeRear = straightEdge([front, half], [front, bell * 0.86])
  const bellNose = edge(
    [
      [toe + 46, 0],
      [toe + 58, bell * 0.6],
      [toe + 104, bell * 0.94],
      [front, bell * 0.86],
    ],
    [0, 1],
    [1, -0.22],
  )
  const tunnelFront = edge(
    [
      [front, bell * 0.86],
      [front + (middle - front) * 0.3, tunnel * 1.12],
      [middle, rearFloor ? tunnel : end],
    ],
    [1, -0.22],
    [1, rearFloor ? -0.015 : 0],
  )
  const middleJoint = rearFloor ? straightEdge([middle, tunnel], [middle, half]) : null
  const tunnelRear = rearFloor
    ? edge(
        [
          [middle, tunnel],
          [rear, end],
        ],
        [1, -0.015],
        [1, 0],
      )
    : null
  const tunnelEnd = straightEdge([rear, 0], [rear, end])
  const floorEnd = straightEdge([rear, end], [rear, half])
  const sillStops = [front, ...(rearFloor ? [middle] : []), rear, ...(sillEndMm > rear ? [sillEndMm] : [])]
  const sillInner = sillStops.slice(1).map((stop, index) => straightEdge([sillStops[index] ?? 0, half], [stop, half]))
  const sillOuter = sillEdge(front, sillEndMm, half, m.sillDeepMm)
  const frontSill = sillInner[0] ?? []

  return {
    faciaTop,
    faciaTopMm: facia.top,
    faciaHalfMm: facia.half,
    tunnelEnd,
    floorEnd,
    sillBehind: sillEndMm > rear ? (sillInner.at(-1) ?? null) : null,
    tiles: [
      middleTile('instrument-panel', faciaTop, faciaSide, faciaFoot),
      openTile(faciaFoot, underFacia, toeFront),
      middleTile('toe-board', toeFront, toeSide, toeRear, bellNose),
      middleTile('tunnel', bellNose, tunnelFront, ...(tunnelRear ? [tunnelRear] : []), tunnelEnd),
      ...(middleJoint && tunnelRear
        ? [
            sideTile('front-floor', tunnelFront, middleJoint, frontSill, toeRear),
            sideTile('rear-floor', tunnelRear, floorEnd, sillInner[1] ?? [], middleJoint),
          ]
        : [sideTile('front-floor', tunnelFront, floorEnd, frontSill, toeRear)]),
      sideTile('lower-rail-inner', chain(...sillInner), sillOuter),
    ],
  }
}

/** Upper edge of the inner sill with its two rounded ends. */
function sillEdge(from: number, to: number, half: number, deep: number): Curve {
  const round = 54
  return chain(
    edge(
      [
        [from, half],
        [from + 10, half + deep - round],
        [from + round + 10, half + deep],
      ],
      [0.1, 1],
      [1, 0],
    ),
    straightEdge([from + round + 10, half + deep], [to - round - 10, half + deep]),
    edge(
      [
        [to - round - 10, half + deep],
        [to - 10, half + deep - round],
        [to, half],
      ],
      [1, 0],
      [0.1, -1],
    ),
  )
}
