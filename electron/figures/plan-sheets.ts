import type { BodyDimensions } from '../../shared-types/body-dimensions.ts'
import type { ViewId } from '../../shared-types/finding.ts'
import type { BodyStyle } from '../../shared-types/words.ts'
import { describedBody } from './body-shape/body-description.ts'
import { frameOf } from './body-shape/frame.ts'
import { outsideSheet, outsideWork } from './body-shape/outside-sheet.ts'
import type { OutsideWork } from './body-shape/outside-work.ts'
import { innerSheets } from './body-trays/inner-sheets.ts'
import type { DoorShape, OutsideShapes } from './body-trays/outside-shapes.ts'
import { boundsOf, type Cubic, flattened, isInside } from './cubic-path.ts'
import { readOutline } from './path-text.ts'
import type { PlanSheetFile, PlanViewFile } from './plan-sheet-file.ts'

/** The sheets of a body plan, and the body in three dimensions they were drawn from. */
export interface DrawnBody {
  readonly title: string
  readonly dimensions: BodyDimensions
  readonly sheets: readonly PlanSheetFile[]
  readonly work: OutsideWork
}

const KEPT = 24
const drawn = new Map<string, DrawnBody>()

/** Draws a body of given dimensions and conditions; the last two dozen are kept. */
export function drawnBody(body: BodyStyle, dimensions: BodyDimensions, conditions: readonly string[]): DrawnBody {
  const key = JSON.stringify([body, Object.entries(dimensions).sort(), conditions.toSorted()])
  const known = drawn.get(key)
  if (known) return known
  const description = describedBody(body)
  const has = new Set(conditions)
  const work = outsideWork(description, dimensions, has)
  const outside = outsideSheet(work)
  const sheets = [outside, ...innerSheets(frameOf(work), has, outsideShapes(outside))]
  const made = { title: `${description.title}, unfolded`, dimensions, sheets, work }
  for (const oldest of drawn.keys()) {
    if (drawn.size < KEPT) break
    drawn.delete(oldest)
  }
  drawn.set(key, made)
  return made
}

/** What the inner sheets take over from the outside one: doors, lids and the edge of the plan. */
function outsideShapes({ views }: PlanSheetFile): OutsideShapes {
  const view = (id: ViewId): PlanViewFile => {
    const found = views.find((one) => one.id === id)
    if (!found) throw new Error(`The outside sheet has no ${id} view.`)
    return found
  }
  const outline = (id: ViewId, panelId: string): readonly Cubic[] | null => {
    const panel = view(id).panels.find((one) => one.panelId === panelId)
    return panel ? readOutline(panel.outline) : null
  }
  const door = (id: ViewId, panelId: string): DoorShape | null => {
    const path = outline(id, panelId)
    if (!path) return null
    const polygon = flattened(path, 8)
    const glass = view(id).ink.find(({ occlude, weight, path: pane }) => {
      if (!occlude || weight !== 'shut') return false
      const box = boundsOf(flattened(readOutline(pane), 6))
      const middle = isInside(polygon, [box.u + box.width / 2, box.v + box.height / 2])
      return middle && flattened(readOutline(pane), 6).every((point) => isInside(polygon, point))
    })
    return { outline: path, glass: glass ? readOutline(glass.path) : null }
  }
  const needed = <T>(value: T | null, name: string): T => {
    if (value === null) throw new Error(`The outside sheet lacks ${name}.`)
    return value
  }
  return {
    frontDoor: needed(door('left', 'front-door.L'), 'the front door'),
    rearDoor: door('left', 'rear-door.L'),
    bonnet: needed(outline('roof', 'front-lid'), 'the bonnet'),
    bootLid: outline('roof', 'rear-lid'),
    tailDoor: door('rear', 'tail-door'),
    cargoDoor: door('rear', 'rear-cargo-door.L'),
    roofEdge: readOutline(view('roof').silhouette),
  }
}
