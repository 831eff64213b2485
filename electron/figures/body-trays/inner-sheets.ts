import type { BodyFrame } from '../body-shape/body-frame.ts'
import type { PlanSheetFile } from '../plan-sheet-file.ts'
import { bayTray } from './bay-tray.ts'
import { floorTray } from './floor-tray.ts'
import { openingsTray } from './openings-tray.ts'
import type { OutsideShapes } from './outside-shapes.ts'
import { sheetOf } from './tray-drawing.ts'
import { underTray } from './under-tray.ts'

/**
 * The four sheets behind the outside one: openings, engine bay, inside, underneath, each with one view. They show
 * every panel of phases 2 to 4 that the body has under the record's conditions, and the front wall of a pickup's bed,
 * which is seen from inside the bed alone. Bay and inside are tilings of their silhouettes; on openings and underside
 * the pieces lie apart. Millimetres throughout; axes of each view as stated with `PlanView`.
 */
export function innerSheets(
  frame: BodyFrame,
  conditions: ReadonlySet<string>,
  outside: OutsideShapes,
): PlanSheetFile[] {
  return [
    sheetOf(openingsTray(frame, conditions, outside)),
    sheetOf(bayTray(frame, conditions)),
    sheetOf(floorTray(frame, conditions)),
    sheetOf(underTray(frame, conditions, outside)),
  ]
}
