import type { AccountView, Reasoner, View } from './reasoner.ts'

/** Value name to probability. */
export type Distribution = { readonly [value: string]: number }

export interface AccountPosterior {
  readonly id: string
  readonly priorShare: number
  readonly share: number
  /** Null when the evidence is impossible under this account. */
  readonly variables: { readonly [variable: string]: Distribution } | null
}

export interface Posterior {
  readonly variables: { readonly [variable: string]: Distribution }
  /** By doubtful fact, the probability that it holds. */
  readonly doubts: { readonly [doubt: string]: number }
  /** By donor, its kinds; `none` is no donor. */
  readonly donors: { readonly [donor: string]: Distribution }
  readonly accounts: readonly AccountPosterior[]
}

/** Probability of every value of every variable under one account. */
export function accountMarginals({ compiled, passes }: Reasoner, account: AccountView): readonly Float64Array[] {
  const total = passes.slopesAsWell(account.weighing)
  return compiled.model.variables.map(({ values }, variable) =>
    Float64Array.from(values, (_, value) => passes.ofValue(account.weighing, variable, value) / total),
  )
}

/** Marginals by account, null where it is impossible, and under all of them together. */
export function mixedMarginals(reasoner: Reasoner, view: View) {
  const own = view.accounts.map((account) => (account.share === 0 ? null : accountMarginals(reasoner, account)))
  const mixed = reasoner.compiled.model.variables.map(({ values }, variable) =>
    Float64Array.from(values, (_, value) =>
      own.reduce(
        (sum, marginals, at) => sum + (view.accounts[at]?.share as number) * (marginals?.[variable]?.[value] ?? 0),
        0,
      ),
    ),
  )
  return { own, mixed }
}

/** All marginals, overall and under each account on its own. */
export function posterior(reasoner: Reasoner, view: View): Posterior {
  const { model } = reasoner.compiled
  const named = (marginals: readonly Float64Array[], kind: string) =>
    Object.fromEntries(
      model.variables.flatMap((variable, at) =>
        variable.kind === kind ? [[variable.name, distribution(variable.values, marginals[at] as Float64Array)]] : [],
      ),
    )
  const { own, mixed } = mixedMarginals(reasoner, view)
  return {
    variables: named(mixed, 'built'),
    doubts: Object.fromEntries([...model.doubtAt].map(([id, variable]) => [id, mixed[variable]?.[1] as number])),
    donors: named(mixed, 'donor'),
    accounts: view.accounts.map(({ id, priorShare, share }, at) => {
      const marginals = own[at]
      return { id, priorShare, share, variables: marginals ? named(marginals, 'built') : null }
    }),
  }
}

const distribution = (values: readonly string[], shares: Float64Array): Distribution =>
  Object.fromEntries(values.map((value, at) => [value, shares[at] as number]))
