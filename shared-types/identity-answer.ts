import { z } from 'zod'
import { identityEvidence, identityLiteral, identityModel, identityQuestion } from './identity-model.ts'

const shares = z.record(z.string(), z.number())
const byVariable = z.record(z.string(), shares)
const build = z.record(z.string(), z.string())

const posterior = z.strictObject({
  variables: byVariable,
  doubts: shares,
  donors: byVariable,
  accounts: z
    .array(
      z.strictObject({
        id: z.string(),
        priorShare: z.number(),
        share: z.number(),
        variables: byVariable.nullable(),
      }),
    )
    .readonly(),
})

const contribution = z.strictObject({
  id: z.string(),
  /** Null when it alone makes the statement certain or impossible. */
  decibans: z.number().nullable(),
  decisive: z.enum(['for', 'against']).nullable(),
})
const contributions = z.strictObject({
  before: z.number(),
  after: z.number(),
  total: contribution,
  leaveOneOut: z.array(contribution).readonly(),
  inOrder: z.array(contribution).readonly(),
  doubts: z.array(contribution).readonly(),
})
const support = z.strictObject({
  likelihoodRatio: z.number().nullable(),
  decibans: z.number().nullable(),
  supports: z.enum(['first', 'second', 'neither']),
  words: z.string(),
  decisive: z.boolean(),
})
const conflictItem = z.strictObject({
  id: z.string(),
  kind: z.enum(['rule', 'certain', 'reading', 'observation', 'claim']),
  source: z.string(),
})
const sets = z.array(z.array(conflictItem).readonly()).readonly()
const conflicts = z.strictObject({ conflicts: sets, repairs: sets, complete: z.boolean() })
const story = z.strictObject({
  build,
  account: z.string(),
  steps: z
    .array(
      z.strictObject({
        id: z.string(),
        how: z.enum([
          'as built',
          'misread',
          'replaced in service',
          'wrong',
          'off the donor',
          'said so',
          'said though not so',
        ]),
        decibansBehind: z.number(),
      }),
    )
    .readonly(),
  factsWrong: z.array(z.string()).readonly(),
  donors: z.array(z.strictObject({ donor: z.string(), kind: z.string() })).readonly(),
  decibansBehind: z.number(),
})
const rarity = z.strictObject({
  low: z.number().nullable(),
  high: z.number().nullable(),
  accounts: z
    .array(
      z.strictObject({
        account: z.string(),
        low: z.number(),
        high: z.number(),
        all: z.number(),
        counted: z.array(z.array(z.string()).readonly()).readonly(),
        notCounted: z.array(z.string()).readonly(),
        implied: z.array(z.string()).readonly(),
      }),
    )
    .readonly(),
  boundsOnly: z.boolean(),
  neverBuilt: z.boolean(),
})

/** A model, what was seen on one car, and what is asked about it. */
export const identityInput = z.strictObject({
  model: identityModel,
  evidence: identityEvidence.default({ readings: [], observations: [], claims: [], certain: [] }),
  /** What the tells not yet read are weighed for. */
  question: identityQuestion.default({ about: 'build' }),
  /** A statement whose support, contributions and cheapest story are wanted. */
  statement: z.array(identityLiteral).min(1).max(20).readonly().nullable().default(null),
  /** More statements, each with its own support and contributions; the model is compiled once for all of them. */
  statements: z
    .array(z.strictObject({ id: z.string(), says: z.array(identityLiteral).min(1).max(20).readonly() }))
    .max(200)
    .default([])
    .readonly(),
  /** Variables of which the statement that they have their likeliest value is wanted too; its id is the variable. */
  likeliest: z.array(z.string()).max(500).default([]).readonly(),
  /**
   * Of which statements, by their ids, what each piece of evidence does is wanted too; of all when null. The others get
   * their odds and support alone, which takes half the time.
   */
  chains: z.array(z.string()).max(200).nullable().default(null).readonly(),
  /** Whether contributions are wanted one after the other too, which takes a pass for each piece of evidence. */
  inOrder: z.boolean().default(true),
  /** Options whose rarity is wanted. */
  options: z.array(identityLiteral).min(1).max(20).readonly().nullable().default(null),
  /** How many of the most probable builds to list. */
  builds: z.number().int().min(0).max(20).default(3),
})
export type IdentityInput = z.infer<typeof identityInput>

export const identityAnswer = z.strictObject({
  /** Exact numbers of builds as decimal text: all that the rules allow, and those that could have shown the evidence. */
  legalBuilds: z.string(),
  buildsLeft: z.string(),
  prior: posterior,
  /** Null when the evidence is impossible; `impossible` then says why, and no number is given. */
  posterior: posterior.nullable(),
  mostProbable: z
    .strictObject({
      builds: z.array(z.strictObject({ build, probability: z.number() })).readonly(),
      proved: z.boolean(),
    })
    .nullable(),
  contributions: contributions.nullable(),
  support: support.nullable(),
  statements: z
    .array(z.strictObject({ id: z.string(), contributions: contributions.nullable(), support: support.nullable() }))
    .readonly(),
  worths: z
    .strictObject({
      entropyBits: z.number().nullable(),
      tells: z
        .array(
          z.strictObject({
            tell: z.string(),
            bits: z.number(),
            effort: z.number(),
            bitsPerEffort: z.number(),
            outcomes: shares,
          }),
        )
        .readonly(),
    })
    .nullable(),
  story: story.nullable(),
  rarity: rarity.nullable(),
  /** Conflicts among rules and what is taken as certain. */
  conflicts,
  /** Conflicts of evidence that is impossible together; without any, the counts alone rule it out. */
  impossible: conflicts.nullable(),
})
export type IdentityAnswer = z.infer<typeof identityAnswer>
