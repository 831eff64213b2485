import { z } from 'zod'
import type { sampleBound, sampleSize } from './sampling.ts'
import { lineText, requiredLine } from './units.ts'

const MOST_FASTENINGS = 10_000
const howMany = z.number().int().min(0).max(MOST_FASTENINGS)

/** What is asked of alike fastenings before any of them is looked at. */
const fasteningPlan = z.strictObject({
  /** Such as `fastenings with a wrong head`. */
  what: requiredLine,
  ofHowMany: z.number().int().min(1, 'How many are there? At least one.').max(MOST_FASTENINGS),
  confidencePercent: z.number().min(50).max(99.9),
  /** The statement wanted: at most so many of them are wrong, when none looked at is. */
  wantedAtMost: howMany,
  /** Names of the positions, in order; empty for 1, 2, 3... */
  positions: z.array(lineText).max(MOST_FASTENINGS),
  /** Any text; the same text draws the same positions again. */
  seed: z.string().max(100),
})

/** Alike fastenings of which some were looked at, and what one would like to be able to say of all of them. */
export const fasteningSample = fasteningPlan.extend({ looked: howMany, wrong: howMany })
export type FasteningSample = z.infer<typeof fasteningSample>

/** A sample as it was drawn and looked at, position by position; kept with its exhibit, so that anybody can draw it again. */
export const sampleTaken = fasteningPlan.extend({
  seen: z
    .array(z.strictObject({ position: requiredLine, wrong: z.boolean() }))
    .min(1, 'Look at one of the positions at least, and say what it is.')
    .max(MOST_FASTENINGS),
})
export type SampleTaken = z.infer<typeof sampleTaken>

export interface FasteningAnswer {
  /** What those looked at say of all; null while none was looked at. */
  readonly bound: z.infer<typeof sampleBound.output> | null
  /** How many to look at for the statement wanted; null when the statement says nothing about fewer than all. */
  readonly size: z.infer<typeof sampleSize.output> | null
  /** Positions to look at, in their order on the car. */
  readonly positions: readonly string[]
  readonly drawnBy: string
}

/** A sample of the record, and what it says of the rest. */
export interface KeptSample {
  readonly exhibit: number
  readonly sample: SampleTaken
  readonly answer: FasteningAnswer
}
