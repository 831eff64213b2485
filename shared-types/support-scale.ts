import { z } from 'zod'

/** One step of a verbal scale for likelihood ratios: from `from` up to, not including, `to`. */
const supportBand = z.strictObject({
  from: z.number().min(1),
  /** Null: no upper end. */
  to: z.number().nullable(),
  words: z.string(),
})
type SupportBand = z.infer<typeof supportBand>

/**
 * Example scale of the ENFSI Guideline for Evaluative Reporting in Forensic Science (2015, M1), guidance note 4
 * (bands recalled; the steps 10-100 and 100-1000 seen as quoted elsewhere). It leaves 1 to 2 unnamed; here "no support".
 * A ratio below 1 is inverted and speaks for the other proposition.
 */
export const enfsiSupportBands: readonly SupportBand[] = [
  { from: 1, to: 2, words: 'no support' },
  { from: 2, to: 10, words: 'weak' },
  { from: 10, to: 100, words: 'moderate' },
  { from: 100, to: 1000, words: 'moderately strong' },
  { from: 1000, to: 10_000, words: 'strong' },
  { from: 10_000, to: 1_000_000, words: 'very strong' },
  { from: 1_000_000, to: null, words: 'extremely strong' },
]

/** A likelihood ratio in words, with the band it falls in so that both can be printed. */
export const supportInWords = z.strictObject({
  /** P(findings | first proposition) / P(findings | second); null when one of the two is 0. */
  likelihoodRatio: z.number().nullable(),
  decibans: z.number().nullable(),
  supports: z.enum(['first', 'second', 'neither']),
  band: supportBand,
  /** The findings are impossible under the other proposition, as far as what was given goes. */
  decisive: z.boolean(),
})
export type SupportInWords = z.infer<typeof supportInWords>
