import type {
  IdentityEvidence,
  IdentityLiteral,
  IdentityModel,
  IdentityTell,
} from '../../../shared-types/identity-model.ts'

/** One build with everything hidden beside it, and its weight under each account. */
export interface Case {
  readonly build: Readonly<Record<string, string>>
  readonly doubts: Readonly<Record<string, boolean>>
  readonly donors: Readonly<Record<string, string>>
  /** Prior probability under each account. */
  readonly prior: readonly number[]
}

const holds = (literals: readonly IdentityLiteral[], build: Case['build']) =>
  literals.map(([variable, values]) => values.includes(build[variable] ?? ''))

const everyOf = <T>(choices: readonly (readonly [string, readonly T[]])[]): Record<string, T>[] =>
  choices.reduce<Record<string, T>[]>(
    (found, [name, values]) => found.flatMap((before) => values.map((value) => ({ ...before, [name]: value }))),
    [{}],
  )

const cellOf = (model: IdentityModel, scope: readonly string[], build: Case['build']) =>
  scope.reduce((cell, name) => {
    const values = model.variables.find((variable) => variable.name === name)?.values ?? []
    return cell * values.length + values.indexOf(build[name] ?? '')
  }, 0)

/** Builds that satisfy every rule, doubtful ones included. */
export const legalBuilds = (model: IdentityModel): Case['build'][] =>
  everyOf(model.variables.map(({ name, values }) => [name, values] as const)).filter((build) =>
    model.rules.every(({ ifs, thenAny }) => holds(ifs, build).includes(false) || holds(thenAny, build).includes(true)),
  )

/** Every possible case, by going through all combinations; counts are met cell by cell (several tables: in turn, often). */
export function everyCase(model: IdentityModel): Case[] {
  const builds = everyOf(model.variables.map(({ name, values }) => [name, values] as const))
  const doubts = everyOf(model.doubts.map(({ id }) => [id, [true, false]] as const))
  const donors = everyOf(model.donors.map(({ id, kinds }) => [id, ['none', ...kinds.map((kind) => kind.id)]] as const))
  const cases: { build: Case['build']; doubts: Case['doubts']; donors: Case['donors']; weight: number }[] = []
  for (const build of builds) {
    const weight = model.tables.reduce((w, { scope, weights }) => w * (weights[cellOf(model, scope, build)] ?? 0), 1)
    const broken = model.rules.filter(
      ({ ifs, thenAny }) => !holds(ifs, build).includes(false) && !holds(thenAny, build).includes(true),
    )
    for (const doubt of doubts) {
      if (broken.some((rule) => rule.doubt === null || doubt[rule.doubt])) continue
      const standing = model.doubts.reduce((w, { id, holds: share }) => w * (doubt[id] ? share : 1 - share), weight)
      for (const donor of donors) {
        const own = model.donors.reduce((w, { id, kinds }) => {
          const none = 1 - kinds.reduce((sum, kind) => sum + kind.share, 0)
          return w * (kinds.find((kind) => kind.id === donor[id])?.share ?? none)
        }, standing)
        cases.push({ build, doubts: doubt, donors: donor, weight: own })
      }
    }
  }
  const even = cases.map(({ weight }) => weight)
  const priors =
    model.accounts.length === 0 ? [even] : model.accounts.map(({ tables }) => fitted(model, cases, even, tables))
  const totals = priors.map((prior) => prior.reduce((sum, weight) => sum + weight, 0))
  return cases.map(({ build, doubts: doubt, donors: donor }, at) => ({
    build,
    doubts: doubt,
    donors: donor,
    prior: priors.map((prior, account) => (prior[at] ?? 0) / (totals[account] ?? 1)),
  }))
}

function fitted(
  model: IdentityModel,
  cases: readonly Pick<Case, 'build'>[],
  even: readonly number[],
  tables: IdentityModel['accounts'][number]['tables'],
): number[] {
  let weights = [...even]
  for (let round = 0; round < (tables.length > 1 ? 400 : 1); round++)
    for (const { scope, counts } of tables) {
      const cells = cases.map(({ build }) => cellOf(model, scope, build))
      const sums = counts.map(() => 0)
      weights.forEach((weight, at) => {
        sums[cells[at] ?? 0] = (sums[cells[at] ?? 0] ?? 0) + weight
      })
      const total = counts.reduce((sum, count, cell) => sum + ((sums[cell] ?? 0) > 0 ? count : 0), 0)
      weights = weights.map((weight, at) => {
        const cell = cells[at] ?? 0
        return weight === 0 ? 0 : (weight * ((counts[cell] ?? 0) / total)) / (sums[cell] ?? 1)
      })
    }
  return weights
}

/** P(outcome | case) of a tell, written out from its definition. */
export function readingChance(model: IdentityModel, tell: IdentityTell, outcome: string, one: Case): number {
  const built = one.build[tell.variable] ?? ''
  const { reads } = tell
  if (reads.kind === 'direct') return reads.likelihood[built]?.[reads.outcomes.indexOf(outcome)] ?? 0
  const values = model.variables.find(({ name }) => name === tell.variable)?.values ?? []
  const misread = (as: string) => {
    if (typeof reads.misread !== 'number')
      return reads.misread[as]?.[outcome] ?? (reads.misread[as] ? 0 : as === outcome ? 1 : 0)
    if (values.length === 1) return 1
    return as === outcome ? 1 - reads.misread : reads.misread / (values.length - 1)
  }
  const kind = reads.donor === null ? undefined : one.donors[reads.donor]
  const brought = model.donors.find(({ id }) => id === reads.donor)?.kinds.find(({ id }) => id === kind)?.fitted[
    tell.id
  ]
  if (brought !== undefined) return values.reduce((sum, value) => sum + (brought[value] ?? 0) * misread(value), 0)
  const original = 1 - reads.replaced - reads.wrong
  return original * misread(built) + reads.replaced * (reads.service[outcome] ?? 0) + reads.wrong / values.length
}

/** P(evidence | case), up to a factor that is the same for all cases. */
export function evidenceChance(model: IdentityModel, evidence: IdentityEvidence, one: Case): number {
  let chance = 1
  for (const { tell, seen } of evidence.readings) {
    const own = model.tells.find(({ id }) => id === tell)
    if (own === undefined) throw new Error(tell)
    chance *= Object.entries(seen).reduce((sum, [outcome, w]) => sum + w * readingChance(model, own, outcome, one), 0)
  }
  for (const { variable, likelihood } of evidence.observations) chance *= likelihood[one.build[variable] ?? ''] ?? 0
  for (const { says, saidWhenTrue, saidWhenFalse, repeats } of evidence.claims)
    if (repeats === null) chance *= holds(says, one.build).includes(false) ? saidWhenFalse : saidWhenTrue
  return chance
}

/** Posterior probability of every case, all accounts together, and the posterior share of each account. */
export function posteriorByEnumeration(model: IdentityModel, evidence: IdentityEvidence) {
  const cases = everyCase(model)
  const reliable = model.accounts.reduce((sum, account) => sum + account.reliability, 0)
  const shares = model.accounts.length === 0 ? [1] : model.accounts.map((account) => account.reliability / reliable)
  const chances = cases.map((one) => evidenceChance(model, evidence, one))
  const byAccount = shares.map((share, account) =>
    cases.map((one, at) => share * (one.prior[account] ?? 0) * (chances[at] ?? 0)),
  )
  const sums = byAccount.map((weights) => weights.reduce((sum, weight) => sum + weight, 0))
  const total = sums.reduce((sum, each) => sum + each, 0)
  return {
    cases,
    total,
    shares: sums.map((sum) => sum / total),
    weights: cases.map((_, at) => byAccount.reduce((sum, weights) => sum + (weights[at] ?? 0), 0) / total),
  }
}
