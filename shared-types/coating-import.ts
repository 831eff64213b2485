import { z } from 'zod'
import type { PlanPoint, ViewId } from './finding.ts'
import type { PanelId } from './panel.ts'
import type { ReadingValue } from './reading.ts'
import { coatingUnit } from './units.ts'

/** What a column of pasted readings holds. Places count from the left and upper edge of the panel as drawn. */
export const columnRole = z.enum(['reading', 'across', 'down', 'where', 'left out'])
export type ColumnRole = z.infer<typeof columnRole>

/** How pasted text is to be read: nothing of it follows a maker's format. */
export const columnMapping = z.strictObject({
  separator: z.enum(['tab', 'semicolon', 'comma', 'spaces']),
  decimal: z.enum(['point', 'comma']),
  /** True when the first line names the columns. */
  headed: z.boolean(),
  columns: z.array(columnRole).min(1).max(40),
  unit: coatingUnit,
  placeUnit: z.enum(['mm', 'cm', 'in']),
})
export type ColumnMapping = z.infer<typeof columnMapping>

/** Text of columns: some tens of thousands of lines can be looked at, far fewer go in at once. */
export const pastedText = z.string().min(1).max(6_000_000)

/** One line of the text as it would go in: a spot with its values in the order they stand in. */
export interface PastedSpot {
  readonly line: number
  readonly at: PlanPoint | null
  readonly where: string
  readonly values: readonly ReadingValue[]
}

/** Pasted text as the mapping reads it, before anything goes in. */
export interface PastedColumns {
  readonly mapping: ColumnMapping
  /** Names of the columns, or their numbers, and the first lines as they stand. */
  readonly heads: readonly string[]
  readonly firstLines: readonly (readonly string[])[]
  readonly lines: number
  readonly spots: number
  readonly preview: readonly PastedSpot[]
  readonly refused: readonly { readonly line: number; readonly why: string }[]
  /** Lines refused beyond those named. */
  readonly moreRefused: number
  /** What is odd and goes in all the same. */
  readonly notes: readonly string[]
  /** Why nothing can go in; null when it can. */
  readonly problem: string | null
}

/** One place of the grid laid over a panel for walking, and the spot that was read there. */
export interface GridPlace {
  readonly at: PlanPoint
  /** Where it is, in words to be called out. */
  readonly words: string
  readonly spot: number | null
}

/** Places to read one after the other, row by row. */
export interface ReadingGrid {
  readonly panelId: PanelId
  readonly view: ViewId
  readonly apartMm: number
  readonly places: readonly GridPlace[]
}
