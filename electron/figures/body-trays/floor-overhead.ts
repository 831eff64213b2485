import type { Point } from '../cubic-path.ts'
import type { Curve } from '../curve.ts'
import { ellipse, lines, smooth } from '../curve.ts'
import { block, bothDown, type InkCurve, line, loop } from '../ink-curve.ts'
import type { Cabin } from './floor-cabin.ts'
import { chain, edge, middleTile, openTile, roundedEdge, type Tile } from './tiles.ts'

const SCREEN_MM = 290
const RAIL_MM = 74

/** What is overhead, folded forward over the open windscreen: the tray of a sunroof or the frame of a folding roof. */
export interface Overhead {
  readonly tiles: readonly Tile[]
  readonly cutouts: Curve[]
  readonly ink: readonly InkCurve[]
  readonly frontMm: number
}

export function sunroofTray(cabin: Cabin): Overhead {
  const half = Math.min(cabin.faciaHalfMm - 90, 490)
  const long = 800
  const { tiles, rear, front } = overheadTiles('sunroof-tray', cabin, half, long)
  const tracks = [half - 60, half - 84].map((v) => lines([front + 60, v], [rear - 50, v]))
  const drains = [ellipse([front + 46, half - 40], 13), ellipse([rear - 40, half - 40], 13)]
  return {
    tiles,
    cutouts: [],
    ink: [
      ...loop('detail', block(front + 96, rear - 96, -half + 120, half - 120, 60)),
      ...line('form', ...bothDown(...tracks)),
      ...loop('detail', ...bothDown(...drains)),
      ...glassInk(cabin, rear, half),
    ],
    frontMm: front,
  }
}

export function foldingFrame(cabin: Cabin): Overhead {
  const half = cabin.faciaHalfMm - 70
  const long = 1060
  const { tiles, rear, front } = overheadTiles('folding-roof-frame', cabin, half, long)
  const step = (long - RAIL_MM) / 3
  const windows = [0, 1, 2].map((index) =>
    block(front + RAIL_MM + step * index, front + step * (index + 1), -half + RAIL_MM - 8, half - RAIL_MM + 8, 30),
  )
  const bows = [0, 1, 2].map((index) => front + step * (index + 1) + RAIL_MM / 2)
  const pivots = bows.slice(0, 2).flatMap((u) => [ellipse([u, half - 34], 20), ellipse([u, half - 34], 8)])
  return {
    tiles,
    cutouts: windows,
    ink: [
      ...line(
        'form',
        ...bows.slice(0, 2).map((u) =>
          smooth([
            [u, -half + 80],
            [u + 7, 0],
            [u, half - 80],
          ]),
        ),
      ),
      ...loop('detail', ...bothDown(...pivots)),
      ...line('form', lines([rear - RAIL_MM * 0.5, -half + 60], [rear - RAIL_MM * 0.5, half - 60])),
      ...loop('detail', ...bothDown(block(rear - 52, rear - 20, half * 0.46, half * 0.62, 8))),
      ...glassInk(cabin, rear, half),
    ],
    frontMm: front,
  }
}

function overheadTiles(name: string, cabin: Cabin, half: number, long: number) {
  const rear = cabin.faciaTopMm - SCREEN_MM
  const front = rear - long
  const corner: Point = [rear, half]
  const header = edge([[rear - 8, 0], [rear - 5, half * 0.6], corner], [0, 1])
  const foot = cabin.faciaTop.at(-1)?.[3] ?? corner
  const post = edge([foot, corner])
  const side = roundedEdge([corner, [front + 8, half - 14], [front, half * 0.5]], 90)
  const lead = edge(
    [
      [front, half * 0.5],
      [front - 4, 0],
    ],
    [0, -1],
    [0, -1],
  )
  const tiles = [openTile(cabin.faciaTop, post, header), middleTile(name, header, chain(side, lead))]
  return { tiles, rear, front }
}

/** Three strokes of light on the open windscreen. */
function glassInk(cabin: Cabin, rear: number, half: number): InkCurve[] {
  const [from, to] = [rear + 60, cabin.faciaTopMm - 40]
  return line('form', ...[0.2, 0.28, -0.46].map((share) => lines([from, half * share + 60], [to, half * share - 40])))
}
