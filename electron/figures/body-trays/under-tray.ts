import type { BodyFrame } from '../body-shape/body-frame.ts'
import { fitted } from './fitted.ts'
import type { OutsideShapes } from './outside-shapes.ts'
import { settled } from './tiles.ts'
import type { TrayDrawing } from './tray-drawing.ts'
import { underInk } from './under-ink.ts'
import { underMembers } from './under-members.ts'
import { underPlaces } from './under-places.ts'

/** The underside as seen through the car from above: axes of the roof view. */
export function underTray(frame: BodyFrame, conditions: ReadonlySet<string>, outside: OutsideShapes): TrayDrawing {
  const framed = (['L', 'R'] as const).some((side) => fitted(conditions, 'separate-frame', side))
  const at = underPlaces(frame, outside.roofEdge, framed)
  return {
    id: 'under',
    sheetName: 'Underneath',
    viewName: 'Underside, seen through the car from above',
    pieces: underMembers(at, frame.body, conditions),
    open: [],
    silhouette: settled(outside.roofEdge),
    ink: underInk(at, frame.body),
    margin: [100, 160],
  }
}
