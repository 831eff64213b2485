import { z } from 'zod'
import { coatingFieldInput, extentInterval } from './coating.ts'
import type { MappedExtent } from './coating-map.ts'
import type { PanelId } from './panel.ts'

/** Two maps of one panel, on readings of their own. */
export const coatingChangeInput = z.strictObject({
  before: coatingFieldInput,
  after: coatingFieldInput,
  seed: z.string().max(100).default('coating change'),
})
export type CoatingChangeInput = z.infer<typeof coatingChangeInput>

/** An extent of filler before and after, and later less earlier. */
const extentChange = z.strictObject({
  before: extentInterval,
  after: extentInterval,
  change: extentInterval,
  /** `less` and `more` only where the whole interval lies on that side of nought and holds the truth nine times in ten at least. */
  verdict: z.enum(['less', 'more', 'not told']),
})
export const coatingChangeAnswer = z.strictObject({ areaM2: extentChange, volumeCm3: extentChange })
export type CoatingChangeAnswer = z.infer<typeof coatingChangeAnswer>

/** The readings one side of a change rests on: how many spots, and the days they were read from and to. */
export interface ReadingsCited {
  readonly spots: readonly number[]
  readonly from: string
  readonly to: string
}

/** One extent of filler before and after the work. */
export interface ExtentChange {
  readonly before: MappedExtent
  readonly after: MappedExtent
  readonly change: MappedExtent
  readonly verdict: 'less' | 'more' | 'not told'
}

/** What the readings a correction cites say of the filler before and after it. `problem` says why nothing is computed. */
export interface CoatingChange {
  readonly correction: number
  readonly panelId: PanelId
  readonly panel: string
  readonly thresholdUm: number
  readonly before: ReadingsCited | null
  readonly after: ReadingsCited | null
  readonly area: ExtentChange | null
  readonly volume: ExtentChange | null
  /** Cited spots that were amended since; the change is of the readings as they were cited. */
  readonly notes: readonly string[]
  readonly problem: string | null
  readonly cannotTell: string
}
