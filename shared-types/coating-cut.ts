import type { PlanPoint } from './finding.ts'
import type { PanelId } from './panel.ts'

/** A place of a figure: shares of its width from the left and of its height from the foot. */
export interface FigurePlace {
  readonly x: number
  readonly y: number
}

/** A mark of an axis: its place, and its figure in the record's unit with so many decimals. */
export interface AxisMark {
  readonly at: number
  readonly value: number
  readonly decimals: number
}

/** Thickness along a line as plain geometry: drawn on screen and on the page. */
export interface CutFigure {
  /** Stretches that were assessed: the band as a closed ring, and the middle line. */
  readonly stretches: readonly { readonly band: readonly FigurePlace[]; readonly middle: readonly FigurePlace[] }[]
  /** What was not assessed, from and to. */
  readonly blanks: readonly { readonly from: number; readonly to: number }[]
  /** Heights of paint alone: its median, and between what it lies at nine places of ten. */
  readonly paint: { readonly low: number; readonly middle: number; readonly high: number }
  /** Height from which the coating counts as filler. */
  readonly threshold: number
  readonly readings: readonly (FigurePlace & { readonly spot: number; readonly orMore: boolean })[]
  readonly along: readonly AxisMark[]
  readonly up: readonly AxisMark[]
  readonly lengthUnit: 'mm' | 'in'
  readonly thicknessUnit: 'µm' | 'mil'
  readonly textAlternative: string
}

/** A straight line across a panel, view millimetres. */
export interface CutLine {
  readonly from: PlanPoint
  readonly to: PlanPoint
}

/** A panel cut along a line. `problem` says why nothing is drawn, and what would help. */
export interface CoatingCut extends CutLine {
  readonly panelId: PanelId
  readonly figure: CutFigure | null
  /** What is drawn, in words, with how near the readings shown lie. */
  readonly words: readonly string[]
  readonly problem: string | null
}
