import type { BodyFrame } from '../body-shape/body-frame.ts'
import { lines } from '../curve.ts'
import { type InkCurve, line } from '../ink-curve.ts'
import { fitted } from './fitted.ts'
import { bootPlaces, bootTiles } from './floor-boot.ts'
import { bootInk, seatMounts, spareWell } from './floor-boot-ink.ts'
import { type Cabin, cabinTiles } from './floor-cabin.ts'
import { cabinInk } from './floor-ink.ts'
import { bedTiles, estateTiles, type LoadPlaces, loadPlaces, vanTiles } from './floor-load.ts'
import { loadInk, loadWell } from './floor-load-ink.ts'
import { foldingFrame, type Overhead, sunroofTray } from './floor-overhead.ts'
import { hasRearSeat, type Measures, measuresOf } from './measures.ts'
import type { Tile } from './tiles.ts'
import { type Piece, type TrayDrawing, tiled } from './tray-drawing.ts'

/** What lies behind the cabin floor. */
interface Behind {
  readonly tiles: readonly Tile[]
  readonly set: readonly Piece[]
  readonly ink: readonly InkCurve[]
  readonly rearMm: number
}

/** The inside with its upright panels folded down: stations hold from the toe board to the end of the cabin floor. */
export function floorTray(frame: BodyFrame, conditions: ReadonlySet<string>): TrayDrawing {
  const m = measuresOf(frame)
  const rearSeat = hasRearSeat(frame)
  const load = frame.body === 'estate' || !rearSeat ? loadPlaces(frame, m) : null
  const cabin = cabinTiles(m, rearSeat, frame.body === 'van' && load ? load.archMm[0] : m.floorRearMm)
  const behind = load ? behindLoad(frame, m, cabin, load, conditions) : behindBoot(frame, m, cabin, conditions)
  const overhead = overheadOf(frame, cabin, conditions)
  const tiles = tiled([...(overhead?.tiles ?? []), ...cabin.tiles, ...behind.tiles])
  const pieces = tiles.pieces.map((piece) =>
    piece.panelId === 'folding-roof-frame' ? { ...piece, cutouts: overhead?.cutouts ?? [] } : piece,
  )
  return {
    ...tiles,
    id: 'floor',
    sheetName: 'Inside',
    viewName: rearSeat
      ? 'Inside, unfolded: stations hold from toe board to heel board, upright panels are folded flat'
      : 'Inside, unfolded: stations hold from toe board to the back of the cab, upright panels are folded flat',
    pieces: [...pieces, ...seatMounts(m, rearSeat), ...behind.set],
    ink: [
      ...(overhead?.ink ?? []),
      ...cabinInk(m, cabin, rearSeat),
      ...behind.ink,
      ...line('centre', lines([(overhead?.frontMm ?? cabin.faciaTopMm) - 80, 0], [behind.rearMm + 110, 0])),
    ],
    margin: [100, 140],
  }
}

function overheadOf({ body }: BodyFrame, cabin: Cabin, conditions: ReadonlySet<string>): Overhead | null {
  if (body === 'convertible') return foldingFrame(cabin)
  return fitted(conditions, 'sunroof', null) ? sunroofTray(cabin) : null
}

function behindBoot(frame: BodyFrame, m: Measures, cabin: Cabin, conditions: ReadonlySet<string>): Behind {
  const at = bootPlaces(frame, m)
  const well = fitted(conditions, 'spare-well', null) ? spareWell(m, at) : null
  return {
    tiles: bootTiles(frame, m, cabin, at),
    set: well ? [well] : [],
    ink: bootInk(m, at, well, frame.body === 'convertible'),
    rearMm: at.bootRearMm,
  }
}

function behindLoad(
  frame: BodyFrame,
  m: Measures,
  cabin: Cabin,
  at: LoadPlaces,
  conditions: ReadonlySet<string>,
): Behind {
  const well = frame.body === 'estate' && fitted(conditions, 'spare-well', null) ? loadWell(at) : null
  const tiles = {
    estate: () => estateTiles(m, cabin, at),
    van: () => vanTiles(cabin, at, m.sillDeepMm),
    pickup: () => bedTiles(m, cabin, at),
  }[frame.body as 'estate' | 'van' | 'pickup']
  return {
    tiles: tiles(),
    set: well ? [well.piece] : [],
    ink: [...loadInk(frame, m, at, conditions), ...(well?.ink ?? [])],
    rearMm: at.rearMm,
  }
}
