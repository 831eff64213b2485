import { z } from 'zod'

/** What the next looks should settle: the whole build, one variable of the sheets (a date, a body), or one claim. */
export const settledQuestion = z.discriminatedUnion('about', [
  z.strictObject({ about: z.literal('build') }),
  z.strictObject({ about: z.literal('variable'), variable: z.string().max(161) }),
  z.strictObject({ about: z.literal('claim'), claim: z.number().int().positive() }),
])
export type SettledQuestion = z.infer<typeof settledQuestion>

/** What of a record is left out of one answer: observations by their tell, numbers by their row in the list or the part they stand on. */
export const setAside = z.strictObject({
  tells: z.array(z.string().max(161)).max(500),
  numbers: z.array(z.number().int().positive()).max(500),
  parts: z.array(z.string().max(80)).max(500),
})
export type SetAside = z.infer<typeof setAside>
