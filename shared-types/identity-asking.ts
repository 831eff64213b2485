import { z } from 'zod'

/** What the next looks should settle: the whole build, one variable of the sheets (a date, a body), or one claim. */
export const settledQuestion = z.discriminatedUnion('about', [
  z.strictObject({ about: z.literal('build') }),
  z.strictObject({ about: z.literal('variable'), variable: z.string().max(161) }),
  z.strictObject({ about: z.literal('claim'), claim: z.number().int().positive() }),
])
export type SettledQuestion = z.infer<typeof settledQuestion>
