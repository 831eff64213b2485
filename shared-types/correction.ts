import { z } from 'zod'
import { panelId } from './panel.ts'
import { spot } from './reading.ts'
import { calendarDay, lineText, noteText, requiredLine } from './units.ts'

const money = z.number().min(0).max(100_000_000)

/** Least, likely and most cost, in the record's currency, with what the figure rests on. */
export const costRange = z.strictObject({
  low: money,
  likely: money,
  high: money,
  basis: lineText,
  pricedOn: calendarDay.nullable(),
})
export type CostRange = z.infer<typeof costRange>

const citedSpots = z.array(z.number().int().positive()).max(2000)

/** Readings of one panel before and after the work, by the numbers of their spots. */
export const coatingCitation = z.strictObject({ panelId, before: citedSpots, after: citedSpots })
export type CoatingCitation = z.infer<typeof coatingCitation>

/** The same as it is kept: the spots as they stood when they were cited, whatever is amended later. */
export const citedCoating = z.strictObject({
  panelId,
  before: z.array(spot).max(2000),
  after: z.array(spot).max(2000),
})
export type CitedCoating = z.infer<typeof citedCoating>

/** Work that puts something right. Number K1, K2... Verified needs a later exhibit or finding. */
export const correctionDraft = z.strictObject({
  what: requiredLine,
  group: z.enum(['safety and legal', 'metal', 'coating', 'mechanical', 'trim and interior', 'papers']),
  findings: z.array(z.number().int().positive()).max(200),
  state: z.enum(['planned', 'done', 'verified']),
  cost: costRange.nullable(),
  by: lineText,
  materials: lineText,
  doneOn: calendarDay.nullable(),
  removedPartsKept: lineText,
  reversible: z.enum(['yes', 'no', 'not determined']),
  verifiedBy: lineText,
  verifiedOn: calendarDay.nullable(),
  exhibitsBefore: z.array(z.number().int().positive()).max(200),
  exhibitsAfter: z.array(z.number().int().positive()).max(200),
  findingsAfter: z.array(z.number().int().positive()).max(200),
  coating: coatingCitation.nullable().default(null),
  note: noteText,
})
export const correction = correctionDraft.extend({
  number: z.number().int().positive(),
  coating: citedCoating.nullable(),
})
export type CorrectionDraft = z.infer<typeof correctionDraft>
export type Correction = z.infer<typeof correction>
