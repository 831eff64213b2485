import type { Cubic } from '../cubic-path.ts'

/** A door or tail door as drawn outside, with its window; glass null where no window lies in it. */
export interface DoorShape {
  readonly outline: readonly Cubic[]
  readonly glass: readonly Cubic[] | null
}

/** Outlines of the outside sheet that the inner sheets are drawn from, in the millimetres of their view. */
export interface OutsideShapes {
  /** Left view: station, minus the height. */
  readonly frontDoor: DoorShape
  readonly rearDoor: DoorShape | null
  /** Roof view, both halves: station, distance from the centre line. */
  readonly bonnet: readonly Cubic[]
  readonly bootLid: readonly Cubic[] | null
  /** Rear view: distance from the centre line, positive to the driver's right; minus the height. */
  readonly tailDoor: DoorShape | null
  /** The left one of a pair, rear view. */
  readonly cargoDoor: DoorShape | null
  /** Silhouette of the roof view. */
  readonly roofEdge: readonly Cubic[]
}
