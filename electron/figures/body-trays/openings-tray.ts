import type { BodyFrame } from '../body-shape/body-frame.ts'
import { fitted } from './fitted.ts'
import { shifted } from './inset.ts'
import { doorRow, type Row } from './openings-doors.ts'
import { bonnetRow, tailRow } from './openings-lids.ts'
import type { OutsideShapes } from './outside-shapes.ts'
import { piece, type TrayDrawing } from './tray-drawing.ts'

const BETWEEN_MM = 190

/** Doors and lids open, laid flat. The right side is mirrored, nose to the left, as on the outside sheet. */
export function openingsTray(frame: BodyFrame, conditions: ReadonlySet<string>, outside: OutsideShapes): TrayDrawing {
  const left = doorRow(frame, outside)
  const right = { ...left, pieces: left.pieces.map((one) => ({ ...one, panelId: one.panelId.replace(/L$/, 'R') })) }
  const bonnet = bonnetRow(frame, outside)
  const tail = tailRow(outside, fitted(conditions, 'split-tail-door', null))
  const lids = left.widthMm + 210
  const column = bonnet.heightMm + (tail ? BETWEEN_MM + tail.heightMm : 0)
  const doors = Math.max(left.heightMm + BETWEEN_MM, column - right.heightMm)
  const placed = [
    at(left, 0, Math.max(0, (column - doors - right.heightMm) / 2)),
    at(right, 0, doors),
    at(bonnet, lids, tail ? 0 : (doors + right.heightMm - bonnet.heightMm) / 2),
    ...(tail ? [at(tail, lids, bonnet.heightMm + BETWEEN_MM)] : []),
  ]
  return {
    id: 'openings',
    sheetName: 'Openings',
    viewName: 'Doors and lids open, laid flat; the right side mirrored',
    pieces: placed.flatMap(({ pieces }) => pieces),
    open: [],
    silhouette: null,
    ink: placed.flatMap(({ ink }) => ink),
    margin: [100, 160],
  }
}

/** A row moved to its place; whole millimetres keep both sides alike. */
function at(row: Row, x: number, y: number): Pick<Row, 'pieces' | 'ink'> {
  const [du, dv] = [Math.round(x), Math.round(y)]
  return {
    pieces: row.pieces.map(({ panelId, path, within, cutouts }) =>
      piece(
        panelId,
        shifted(path, du, dv),
        within,
        cutouts.map((cutout) => shifted(cutout, du, dv)),
      ),
    ),
    ink: row.ink.map((one) => ({ ...one, curve: shifted(one.curve, du, dv) })),
  }
}
