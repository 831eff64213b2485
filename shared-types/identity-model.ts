import { z } from 'zod'

/*
 * What the identity engine reads: everything the factory could have built, as plain data, and what was seen on one car.
 * Reference sheets and records are translated into it; it can also be written by hand for `compute identity`.
 */

const MOST_VARIABLES = 500
const MOST_VALUES = 5000
const MOST_RULES = 20_000
const MOST_CELLS = 200_000

const name = z.string().trim().min(1, 'Give it a name.').max(200)
const share = z.number().min(0, 'A share is at least 0.').max(1, 'A share is at most 1.')
const weight = z.number().min(0, 'A weight is at least 0: leave the line out or correct the sign.')
/** Value name to weight; a value left out counts 0. */
const weightByValue = z.record(z.string(), weight)

/** A variable and the values it may have: `["plant", ["Norra", "Velt"]]`. */
export const identityLiteral = z.tuple([name, z.array(name).min(1).max(MOST_VALUES).readonly()]).readonly()
export type IdentityLiteral = z.infer<typeof identityLiteral>

export const identityVariable = z.strictObject({
  name,
  values: z
    .array(name)
    .min(1, 'Give it at least one value.')
    .max(MOST_VALUES, `At most ${MOST_VALUES} values: group days into months, or numbers into ranges.`)
    .readonly(),
})

/** If every literal of `ifs` holds then some literal of `thenAny` holds; an empty `thenAny` forbids. */
export const identityRule = z.strictObject({
  id: name,
  source: z.string().default(''),
  ifs: z.array(identityLiteral).default([]).readonly(),
  thenAny: z.array(identityLiteral).default([]).readonly(),
  /** Id of the doubtful fact this rule stands or falls with; null when it is taken as certain. */
  doubt: name.nullable().default(null),
})

/** A fact that may be wrong. Its rules bite with weight `holds` and are absent with weight 1 - `holds`. */
export const identityDoubt = z.strictObject({ id: name, holds: share })

/** Weights over the combinations of `scope`, row-major, last variable fastest. Only their proportions matter. */
export const identityTable = z.strictObject({
  id: name,
  source: z.string().default(''),
  scope: z.array(name).min(1).max(6).readonly(),
  weights: z.array(weight).min(1).max(MOST_CELLS).readonly(),
})

/**
 * One account of what was built. Under it each cell of each of its tables has its count's share of the prior; all other
 * weights act only inside a cell. Accounts that disagree are mixed by `reliability`.
 */
export const identityAccount = z.strictObject({
  id: name,
  reliability: weight,
  tables: z
    .array(
      z.strictObject({
        id: name,
        source: z.string().default(''),
        scope: z.array(name).min(1).max(6).readonly(),
        counts: z.array(z.number().min(0, 'A count is at least 0.')).min(1).max(MOST_CELLS).readonly(),
      }),
    )
    .min(1)
    .readonly(),
})

/**
 * A donor several parts may have come off together. Kinds of donor exclude each other; what their shares leave is no
 * donor. `fitted` says, by tell, what that kind of donor would have brought (value of the tell's variable to share).
 */
export const identityDonor = z.strictObject({
  id: name,
  kinds: z
    .array(z.strictObject({ id: name, share, fitted: z.record(z.string(), weightByValue) }))
    .min(1)
    .max(50)
    .readonly(),
})

/** Even misreading into any other value, or value as fitted to value as read to share. */
const misreading = z.union([share, z.record(z.string(), weightByValue)])

/** P(read | built) = original · misreading + replaced · service[read] + wrong / number of values. */
const partTell = z.strictObject({
  kind: z.literal('part'),
  /** Share of cars on which the part was replaced in service, and what is fitted then (value to share). */
  replaced: share.default(0),
  service: weightByValue.default({}),
  /** Share of readings that are wrong altogether and may be anything. */
  wrong: share.default(0),
  misread: misreading.default(0),
  /** Id of the donor this part may have come off with others; null when it stands alone. */
  donor: name.nullable().default(null),
})
/** Likelihoods given outright: value as built to one number per outcome. */
const directTell = z.strictObject({
  kind: z.literal('direct'),
  outcomes: z.array(name).min(1).max(MOST_VALUES).readonly(),
  likelihood: z.record(z.string(), z.array(weight).readonly()),
})

/** Something one can look at. `effort` is in any one unit (minutes are handy) and only its proportions matter. */
export const identityTell = z.strictObject({
  id: name,
  variable: name,
  effort: z.number().positive().default(1),
  reads: z.discriminatedUnion('kind', [partTell, directTell]),
})
export type IdentityTell = z.infer<typeof identityTell>

export const identityModel = z.strictObject({
  variables: z.array(identityVariable).min(1).max(MOST_VARIABLES).readonly(),
  rules: z.array(identityRule).max(MOST_RULES).default([]).readonly(),
  doubts: z.array(identityDoubt).default([]).readonly(),
  tables: z.array(identityTable).default([]).readonly(),
  accounts: z.array(identityAccount).default([]).readonly(),
  donors: z.array(identityDonor).default([]).readonly(),
  tells: z.array(identityTell).default([]).readonly(),
})
export type IdentityModel = z.infer<typeof identityModel>

/** What a tell showed: one outcome with weight 1, or several with the weight the eye gives each ("I think so"). */
export const identityReading = z.strictObject({ id: name, tell: name, seen: weightByValue })
/** Likelihood of anything else that was seen or measured, for each as-built value of one variable. */
export const identityObservation = z.strictObject({ id: name, variable: name, likelihood: weightByValue })
/** A statement of fact: every literal of `says` holds. A claim that repeats another is no second witness. */
export const identityClaim = z.strictObject({
  id: name,
  says: z.array(identityLiteral).min(1).max(20).readonly(),
  /** How often such a claimant says this when it is so, and when it is not. */
  saidWhenTrue: share,
  saidWhenFalse: share,
  repeats: name.nullable().default(null),
})
export type IdentityClaim = z.infer<typeof identityClaim>
/** Taken as certain, for the question of conflict only. */
export const identityCertainty = z.strictObject({ id: name, says: z.array(identityLiteral).min(1).max(20).readonly() })
export type IdentityCertainty = z.infer<typeof identityCertainty>

export const identityEvidence = z.strictObject({
  readings: z.array(identityReading).default([]).readonly(),
  observations: z.array(identityObservation).default([]).readonly(),
  claims: z.array(identityClaim).default([]).readonly(),
  certain: z.array(identityCertainty).default([]).readonly(),
})
export type IdentityEvidence = z.infer<typeof identityEvidence>

/** What one wants to know: the whole build, one variable, or whether every literal of a statement holds. */
export const identityQuestion = z.discriminatedUnion('about', [
  z.strictObject({ about: z.literal('build') }),
  z.strictObject({ about: z.literal('variable'), variable: name }),
  z.strictObject({ about: z.literal('statement'), says: z.array(identityLiteral).min(1).max(20).readonly() }),
])
export type IdentityQuestion = z.infer<typeof identityQuestion>
