import { z } from 'zod'
import { identityEvidence, identityLiteral, identityModel } from './identity-model.ts'

const shares = z.record(z.string(), z.number())
const literals = z.array(identityLiteral).max(20).readonly()
const id = z.string().trim().min(1).max(300)

/** What a car would have been built with, asked of one model under evidence from which some readings are left out. */
export const tellShares = {
  about:
    'What variables and statements weigh, each question with some readings left out or something taken as given: what a part should be, by everything but the part itself.',
  input: z.strictObject({
    model: identityModel,
    evidence: identityEvidence.default({ readings: [], observations: [], claims: [], certain: [] }),
    questions: z
      .array(
        z.strictObject({
          id,
          /** Variables whose values are wanted. */
          variables: z.array(id).max(500).readonly(),
          /** Statements whose probability is wanted. */
          statements: z
            .array(z.strictObject({ id, says: literals }))
            .max(500)
            .readonly(),
          /** Nothing seen at all: what cars were built with. */
          beforeLooking: z.boolean().default(false),
          /** Ids of readings left out. */
          without: z.array(id).max(1000).readonly().default([]),
          /** Taken as so. */
          given: literals.default([]),
        }),
      )
      .max(2000)
      .readonly(),
  }),
  output: z.strictObject({
    answers: z
      .array(
        z.strictObject({
          id: z.string(),
          /** False when the evidence, or what is given, leaves no build: there are then no numbers. */
          possible: z.boolean(),
          variables: z.record(z.string(), shares),
          statements: shares,
        }),
      )
      .readonly(),
  }),
}
