import { z } from 'zod'
import type { sampleBound, sampleSize } from './sampling.ts'
import { lineText, requiredLine } from './units.ts'

const MOST_FASTENINGS = 10_000
const howMany = z.number().int().min(0).max(MOST_FASTENINGS)

/** Alike fastenings of which some were looked at, and what one would like to be able to say of all of them. */
export const fasteningSample = z.strictObject({
  /** Such as `fastenings with a wrong head`. */
  what: requiredLine,
  ofHowMany: z.number().int().min(1, 'How many are there? At least one.').max(MOST_FASTENINGS),
  looked: howMany,
  wrong: howMany,
  confidencePercent: z.number().min(50).max(99.9),
  /** The statement wanted: at most so many of them are wrong, when none looked at is. */
  wantedAtMost: howMany,
  /** Names of the positions, in order; empty for 1, 2, 3... */
  positions: z.array(lineText).max(MOST_FASTENINGS),
  /** Any text; the same text draws the same positions again. */
  seed: z.string().max(100),
})
export type FasteningSample = z.infer<typeof fasteningSample>

export interface FasteningAnswer {
  /** What those looked at say of all; null while none was looked at. */
  readonly bound: z.infer<typeof sampleBound.output> | null
  /** How many to look at for the statement wanted; null when the statement says nothing about fewer than all. */
  readonly size: z.infer<typeof sampleSize.output> | null
  /** Positions to look at, in their order on the car. */
  readonly positions: readonly string[]
  readonly drawnBy: string
}
