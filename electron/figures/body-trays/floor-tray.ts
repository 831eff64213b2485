import type { BodyFrame } from '../body-shape/body-frame.ts'
import { lines } from './curve.ts'
import { fitted } from './fitted.ts'
import { bootPlaces, bootTiles } from './floor-boot.ts'
import { bootInk, seatMounts, spareWell } from './floor-boot-ink.ts'
import { cabinTiles } from './floor-cabin.ts'
import { cabinInk } from './floor-ink.ts'
import { measuresOf } from './measures.ts'
import { type TrayDrawing, tiled } from './tray-drawing.ts'
import { line } from './tray-ink.ts'

/** The inside with its upright panels folded down: stations hold from the toe board to the end of the cabin floor. */
export function floorTray(frame: BodyFrame, conditions: ReadonlySet<string>): TrayDrawing {
  const m = measuresOf(frame)
  const cabin = cabinTiles(m, true, m.floorRearMm)
  const at = bootPlaces(frame, m)
  const tiles = tiled([...cabin.tiles, ...bootTiles(frame, m, cabin, at)])
  const well = fitted(conditions, 'spare-well', null) ? spareWell(m, at) : null
  const set = [...seatMounts(m, true), ...(well ? [well] : [])]
  return {
    ...tiles,
    id: 'floor',
    sheetName: 'Inside',
    viewName: 'Inside, unfolded: stations hold from toe board to heel board, upright panels are folded flat',
    pieces: [...tiles.pieces, ...set],
    ink: [
      ...cabinInk(m, cabin, true),
      ...bootInk(m, at, well, frame.body === 'convertible'),
      ...line('centre', lines([cabin.faciaTopMm - 80, 0], [at.bootRearMm + 110, 0])),
    ],
    margin: [100, 140],
  }
}
