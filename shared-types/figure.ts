import type { PlanPoint, ViewId } from './finding.ts'
import type { PanelId } from './panel.ts'
import type { InspectionState, MetalState, PaintState, WalkLayer } from './words.ts'

/**
 * Axes. Every view has `u` to the right and `v` downwards, in millimetres of the car:
 * left and right: u = station behind the front datum, v = minus the height above ground
 * (the right side is drawn mirrored, nose to the left, so that stations agree);
 * roof and under: u = station, v = distance from the centre line, positive to the driver's left;
 * front: u = distance from the centre line, positive to the driver's left, v = minus the height;
 * rear: u = distance from the centre line, positive to the driver's right, v = minus the height;
 * openings, bay and floor: unfolded sheets with axes of their own, stated in the plan.
 */
export interface PlanView {
  readonly id: ViewId
  readonly name: string
  /** Left upper corner in view millimetres, and size. */
  readonly box: { readonly u: number; readonly v: number; readonly width: number; readonly height: number }
  /** Where the left upper corner stands on the sheet, mm. */
  readonly at: { readonly x: number; readonly y: number }
  readonly panels: readonly PlanPanel[]
  /** Lines that are no panel outline, drawn over the hatches in this order. */
  readonly ink: readonly InkLine[]
  /** The outer silhouette, one closed path; empty where the pieces lie loose on the sheet. */
  readonly silhouette: string
}

/** Path text: absolute M, L, C and Z only, view millimetres, at most three decimals. */
export interface PlanPanel {
  readonly panelId: PanelId
  readonly outline: string
  /** A point well inside the outline. */
  readonly label: PlanPoint
  readonly areaMm2: number
}

/** Weight names of `tokens.ts`; `occlude` is filled with the sheet colour before it is stroked. */
export interface InkLine {
  readonly weight: 'silhouette' | 'shut' | 'detail' | 'form' | 'centre' | 'station'
  readonly path: string
  readonly occlude: boolean
}

/** One page of the body plan: outside, openings, engine bay, inside, underneath. */
export interface PlanSheet {
  readonly id: 'outside' | 'openings' | 'bay' | 'floor' | 'under'
  readonly name: string
  readonly widthMm: number
  readonly heightMm: number
  readonly views: readonly PlanView[]
}

/** The body plan of one body style: what does not change while walking. */
export interface PlanFigure {
  readonly body: string
  readonly title: string
  readonly sheets: readonly PlanSheet[]
  /** Length over all, wheelbase, width, height, mm, as drawn. */
  readonly dimensions: {
    readonly lengthMm: number
    readonly wheelbaseMm: number
    readonly widthMm: number
    readonly heightMm: number
  }
  readonly textAlternative: string
}

/** Hatch names; angles and pitches are in `tokens.ts`. */
export type HatchName =
  | 'clean'
  | 'repaired'
  | 'patch'
  | 'skin'
  | 'replacement'
  | 'filler-over'
  | 'filler-through'
  | 'undetermined'
  | 'rusted-through'

/** How one panel is to be drawn now. */
export interface PanelMark {
  readonly panelId: PanelId
  readonly stop: number
  readonly name: string
  readonly inspection: InspectionState
  readonly metal: MetalState
  readonly paint: PaintState
  readonly hatch: HatchName
  /** Dotted while nobody has looked; both diagonals when it could not be reached. */
  readonly edge: 'solid' | 'dotted'
  readonly crossed: boolean
  /** The word that stands under the name: "replacement panel", "not inspected". */
  readonly word: string
}

/** A finding's extent as drawn: `path` is closed for an area, open for a line, a dot for a point. */
export interface ExtentMark {
  readonly finding: number
  readonly panelId: PanelId
  readonly view: ViewId
  readonly shape: 'point' | 'line' | 'area'
  readonly points: readonly PlanPoint[]
  readonly hatch: HatchName | null
}

/** A numbered ring with its leader. Positions are sheet millimetres. */
export interface CalloutMark {
  readonly figure: string
  readonly panelId: PanelId
  readonly view: ViewId
  readonly ring: { readonly x: number; readonly y: number }
  readonly leader: readonly { readonly x: number; readonly y: number }[]
  /** Text beside the ring; empty where the scale leaves room for the ring only. */
  readonly name: string
  readonly word: string
  readonly textSide: 'left' | 'right'
}

/** A small mark where an exhibit or a reading stands. */
export interface PlaceMark {
  readonly kind: 'exhibit' | 'spot'
  readonly number: number
  readonly panelId: PanelId
  readonly view: ViewId
  readonly at: PlanPoint
  /** Median of a spot in µm, or null. */
  readonly medianUm: number | null
}

/** Name of a view, set where it touches no line. `at` is the left end of its baseline, sheet millimetres. */
export interface ViewCaption {
  readonly view: ViewId
  readonly text: string
  readonly at: { readonly x: number; readonly y: number }
}

/** One row of the table that says the same as the drawing. */
export interface PlanTableRow {
  readonly stop: number
  readonly panelId: PanelId
  readonly name: string
  readonly layer: WalkLayer
  readonly inspection: InspectionState
  readonly metal: MetalState
  readonly paint: PaintState
  readonly findings: readonly string[]
  readonly exhibits: readonly string[]
}

/** Everything on the plan that follows the record. */
export interface PlanMarks {
  readonly panels: readonly PanelMark[]
  readonly extents: readonly ExtentMark[]
  readonly callouts: readonly CalloutMark[]
  readonly places: readonly PlaceMark[]
  readonly captions: readonly ViewCaption[]
  readonly table: readonly PlanTableRow[]
  /** Hatches in use, with their words, in legend order. */
  readonly legend: readonly {
    readonly hatch: HatchName
    readonly edge: 'solid' | 'dotted'
    readonly crossed: boolean
    readonly word: string
  }[]
}
