import type { Point } from '../../electron/figures/cubic-path.ts'
import type { InkLine } from '../../shared-types/figure.ts'
import type { ViewId } from '../../shared-types/finding.ts'
import type { Curve } from './curve.ts'

/** A line of ink before it becomes path text. */
export interface InkCurve {
  readonly weight: InkLine['weight']
  readonly curve: Curve
  readonly closed: boolean
  readonly occlude: boolean
}

/** A panel that lies in another one, or stands on a sheet by itself: drawn by its own closed curve. */
export interface SetInPanel {
  readonly panelId: string
  readonly curve: Curve
  /** The panel it is cut out of; its area is taken off there. */
  readonly within: string | null
}

/**
 * One view as the draughtsman gives it: curves that cut the body into faces, and a point in each face saying which
 * panel it is. A point named `open …` marks a hole (glass seen past the edge of the body).
 */
export interface ViewDrawing {
  readonly id: ViewId
  readonly name: string
  readonly box: { readonly u: number; readonly v: number; readonly width: number; readonly height: number }
  readonly at: { readonly x: number; readonly y: number }
  /**
   * `none`: the curves are the whole view. `u` or `v`: they are the half where that axis is positive, and the other
   * half is its mirror image; panels whose name ends in `.L` or `.R` change sides, others are joined at the middle.
   */
  readonly mirror: 'none' | 'u' | 'v'
  readonly curves: readonly Curve[]
  readonly faces: Readonly<Record<string, Point>>
  readonly setIn: readonly SetInPanel[]
  /** Glass and openings: they hide the panel under them, and are no part of its area. */
  readonly cutouts: readonly { readonly panelId: string; readonly curve: Curve; readonly weight: InkLine['weight'] }[]
  /** The silhouette where the panels stand loose on the sheet; otherwise it is the edge of all faces. */
  readonly silhouette: Curve | null
  readonly ink: readonly InkCurve[]
}

export const line = (weight: InkLine['weight'], ...curves: Curve[]): InkCurve[] =>
  curves.map((curve) => ({ weight, curve, closed: false, occlude: false }))
export const loop = (weight: InkLine['weight'], ...curves: Curve[]): InkCurve[] =>
  curves.map((curve) => ({ weight, curve, closed: true, occlude: false }))
/** A closed part that hides what is under it. */
export const solid = (weight: InkLine['weight'], ...curves: Curve[]): InkCurve[] =>
  curves.map((curve) => ({ weight, curve, closed: true, occlude: true }))
