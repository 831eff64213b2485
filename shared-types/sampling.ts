import { z } from 'zod'
import { supportInWords } from './support-scale.ts'
import { requiredLine } from './units.ts'

const probability = z.number().min(0).max(1)
const confidence = z.number().min(0.5).max(0.9999).default(0.95)
const count = z.number().int().min(0).max(1_000_000)
const seed = z.string().max(100)

export const sampleBound = {
  about:
    'What a sample of alike things says of the rest: exact bounds (Clopper-Pearson; hypergeometric for a known number).',
  input: z.strictObject({
    looked: count.min(1),
    /** Of those, how many had what is counted, such as a wrong head. */
    found: count,
    /** How many there are; null when not known or very many. */
    ofHowMany: count.min(1).nullable(),
    confidence,
    /** Such as `fastenings with a wrong head`. */
    what: requiredLine,
  }),
  output: z.strictObject({
    lowShare: probability,
    highShare: probability,
    lowCount: z.number().int().nullable(),
    highCount: z.number().int().nullable(),
    method: z.string(),
    words: z.string(),
  }),
}

export const sampleSize = {
  about: 'How many of a number of alike things to look at, so that finding none bounds how many there are.',
  input: z.strictObject({ ofHowMany: count.min(1), atMost: count, confidence }),
  output: z.strictObject({ look: z.number().int(), words: z.string() }),
}

export const randomSample = {
  about: 'A random sample without repetition; the same seed draws the same one again.',
  input: z.strictObject({ from: z.array(requiredLine).min(1).max(10_000), draw: count.min(1), seed }),
  output: z.strictObject({ drawn: z.array(z.string()).readonly(), seed, method: z.string() }),
}

/** What else could have given this part, and how often a part of it would look like the one found. */
const poolSource = z.strictObject({
  label: requiredLine,
  /** How many parts it may have given, as a range: cars built, spares sold. */
  low: z.number().min(0),
  high: z.number().min(0),
  /** Share of them that would show what was found: number, date window, marks. */
  matching: probability,
})

export const partSupport = {
  about: 'How far what was found on parts speaks for having been fitted at the factory against coming from the pool.',
  input: z.strictObject({
    parts: z
      .array(
        z.strictObject({
          id: requiredLine,
          label: requiredLine,
          /** Parts of one group travel together and count once; null: judged alone. */
          group: requiredLine.nullable(),
          /** Probability of what was found if fitted at the factory. */
          ifFactory: probability,
          pool: z.array(poolSource).min(1).max(200),
        }),
      )
      .min(1)
      .max(500),
  }),
  output: z.strictObject({
    first: z.string(),
    second: z.string(),
    groups: z
      .array(
        z.strictObject({
          id: z.string(),
          parts: z.array(z.string()).readonly(),
          low: supportInWords,
          high: supportInWords,
        }),
      )
      .readonly(),
    low: supportInWords,
    high: supportInWords,
    notes: z.array(z.string()).readonly(),
  }),
}

export const jointOptions = {
  about: 'How many cars can have had several options together, from counts of each: Fréchet bounds, one line a source.',
  input: z.strictObject({
    sources: z
      .array(
        z.strictObject({
          label: requiredLine,
          built: count.min(1),
          options: z
            .array(z.strictObject({ label: requiredLine, count }))
            .min(1)
            .max(50),
        }),
      )
      .min(1)
      .max(50),
  }),
  output: z.strictObject({
    lines: z
      .array(
        z.strictObject({ label: z.string(), low: z.number().int(), high: z.number().int(), built: z.number().int() }),
      )
      .readonly(),
    agree: z.boolean(),
    words: z.string(),
  }),
}
