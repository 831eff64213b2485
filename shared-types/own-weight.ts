import { z } from 'zod'
import { instant, lineText } from './units.ts'

/** What a weight of the user's own can be set for. */
export const weighedSort = z.enum(['body area', 'layer', 'panel', 'group of parts', 'part'])
export type WeighedSort = z.infer<typeof weighedSort>

/** `body area/left side`, `layer/outer`, `panel/roof-skin`, `group of parts/glass`, `part/horns`. */
export const weighedKey = z
  .string()
  .max(120)
  .regex(/^(?:body area|layer|panel|group of parts|part)\/[^/]+$/)

/**
 * A weight the user sets: how many times a thing counts in the shares of originality, against its area or, a part, against
 * one. One set for a panel or a part itself stands alone; else those of its area and layer are multiplied, or that of its
 * group holds. 0 counts it out of the shares.
 */
export const ownWeightDraft = z.strictObject({
  weighs: weighedKey,
  factor: z.number().min(0).max(1000),
  reason: lineText,
})

/** A weight as the record keeps it: with who set it, and when. */
export const ownWeight = ownWeightDraft.extend({ setBy: lineText, setAt: instant })
export type OwnWeight = z.infer<typeof ownWeight>

/** The two halves of a key. */
export function weighedThing(weighs: string): { readonly sort: WeighedSort; readonly id: string } {
  const at = weighs.indexOf('/')
  return { sort: weighedSort.parse(weighs.slice(0, at)), id: weighs.slice(at + 1) }
}

/** Something a weight can be set for, by its name on this car. */
export interface Weighable {
  readonly weighs: string
  readonly sort: WeighedSort
  readonly label: string
}

/** A weight as the judgement found it: by what name it is known on this car, and how many things it weighs. */
export const weightFound = ownWeight.extend({ label: z.string(), sort: weighedSort, things: z.number().int().min(0) })
export type WeightFound = z.infer<typeof weightFound>
