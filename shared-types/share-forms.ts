import { z } from 'zod'
import { percent } from './units.ts'

const sentenceSort = z.enum([
  'seen',
  'felt',
  'measured',
  'computed',
  'told',
  'inferred',
  'not determined',
  'not inspected',
  'not accessible',
])
/** Points to a row of the record. */
export const reference = z.strictObject({
  kind: z.enum(['finding', 'exhibit', 'panel', 'part', 'spot', 'claim', 'correction', 'carNumber', 'gauge']),
  key: z.string(),
})
const because = z.strictObject({
  text: z.string(),
  sort: sentenceSort,
  references: z.array(reference).readonly(),
  source: z.string().nullable(),
})
/** A share as bounds, with the chain it rests on. */
export const shareRange = z.strictObject({
  id: z.string(),
  label: z.string(),
  basis: z.string(),
  lowPercent: percent,
  highPercent: percent,
  seenYesPercent: percent,
  notSeenPercent: percent,
  seenNoPercent: percent,
  because: z.array(because).readonly(),
})
const stateShare = z.strictObject({
  state: z.string(),
  lowPercent: percent,
  highPercent: percent,
  areaM2: z.number().min(0),
})
/** A surface: its metal and its paint as shares, and every state it was found in. */
export const areaJudgement = z.strictObject({
  id: z.string(),
  label: z.string(),
  areaM2: z.number().min(0),
  seenAreaM2: z.number().min(0),
  panels: z.number().int().min(0),
  panelsSeen: z.number().int().min(0),
  metal: z.array(stateShare).readonly(),
  paint: z.array(stateShare).readonly(),
  originalMetal: shareRange,
  factoryPaint: shareRange,
})

/** Least and most a share can be. */
export const bounds = z.strictObject({ lowPercent: percent, highPercent: percent })
