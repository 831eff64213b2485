import { nodeCount } from './circuit.ts'
import type { IndexedVariable } from './identity-model.ts'
import type { AccountView, Reasoner, View } from './reasoner.ts'
import { buildOf, heaviestWays } from './weighed-ways.ts'
import type { Weighing } from './weighing.ts'

export interface ProbableBuild {
  readonly build: { readonly [variable: string]: string }
  readonly probability: number
}

export interface ProbableBuilds {
  readonly builds: readonly ProbableBuild[]
  /** Whether no build outside the list can be more probable than the last of it. */
  readonly proved: boolean
}

/** Ways kept at all nodes together before a proof is given up: some 200 MB. */
const MOST_WAYS_KEPT = 2_000_000
/** Combinations of hidden values searched one by one; more are left together and proved by their number. */
const MOST_COMBINATIONS = 64

/** Ways under one account and some values of what is hidden; 0 ways before it begins. */
interface Search {
  readonly account: AccountView
  readonly weighing: Weighing
  /** How many ways of this search one build can have. */
  readonly waysOfOne: number
  readonly ways: number
  /** At most so much a build not yet found can have here, as a share of 1. */
  readonly rest: number
}

/**
 * The most probable builds, with doubts, donors and accounts summed out. Ways through the circuit come heaviest first, for
 * each combination of what is hidden on its own; a build's own probability is then computed whole. What has not come up
 * weighs at most the sum of the next ways, which is what proves the list; the search that leaves most open goes on.
 */
export function mostProbableBuilds(reasoner: Reasoner, view: View, wanted: number): ProbableBuilds {
  if (wanted === 0) return { builds: [], proved: true }
  const live = view.accounts.filter(({ share }) => share > 0)
  const found = new Map<string, ProbableBuild>()
  const go = (search: Search): Search => {
    const { account, weighing, waysOfOne } = search
    const ways = Math.max(4, 2 * wanted, 4 * search.ways)
    const best = heaviestWays(reasoner.compiled, weighing, ways)
    for (const way of best) {
      const build = buildOf(reasoner.compiled, way)
      const key = JSON.stringify(Object.values(build))
      if (!found.has(key)) found.set(key, { build, probability: probabilityOf(reasoner, live, build) })
    }
    const next = best.length < ways ? 0 : (best.at(-1)?.weight ?? 0)
    return { ...search, ways, rest: (account.share * next * waysOfOne) / account.total }
  }
  let searches = searchesOf(reasoner, live)
  for (;;) {
    const builds = [...found.values()].sort((one, other) => other.probability - one.probability).slice(0, wanted)
    const open = searches.reduce((sum, { rest }) => sum + rest, 0)
    const least = builds.length === wanted ? (builds.at(-1)?.probability ?? 0) : 0
    const proved = open === 0 || least >= open * (1 - 1e-12)
    const widest = searches.reduce((most, search) => (search.rest > most.rest ? search : most))
    if (proved || 4 * widest.ways * nodeCount(reasoner.compiled.circuit) > MOST_WAYS_KEPT) return { builds, proved }
    searches = searches.map((search) => (search === widest ? go(search) : search))
  }
}

/** One search for each account and combination; none has begun, so all its weight is open. */
function searchesOf({ compiled, passes }: Reasoner, live: readonly AccountView[]): readonly Search[] {
  const { variables } = compiled.model
  const hidden = variables.flatMap((variable, at) => (isHidden(variable) ? [at] : []))
  const count = hidden.reduce((product, at) => product * (variables[at]?.values.length ?? 1), 1)
  const combinations =
    count > MOST_COMBINATIONS
      ? [new Map<number, number>()]
      : hidden.reduce<ReadonlyMap<number, number>[]>(
          (before, at) =>
            before.flatMap((chosen) =>
              (variables[at]?.values ?? []).map((_, value) => new Map([...chosen, [at, value]])),
            ),
          [new Map()],
        )
  return live.flatMap((account) =>
    combinations.map((chosen): Search => {
      const open = (variable: number, value: number) => (chosen.get(variable) ?? value) === value
      const weighing = restricted(account.weighing, open)
      const rest = (account.share * passes.total(weighing)) / account.total
      return { account, weighing, waysOfOne: chosen.size === hidden.length ? 1 : count, ways: 0, rest }
    }),
  )
}

const isHidden = ({ kind }: IndexedVariable): boolean => kind === 'doubt' || kind === 'donor'

const restricted = (weighing: Weighing, open: (variable: number, value: number) => boolean): Weighing => ({
  labels: weighing.labels,
  values: weighing.values.map((own, variable) => own.map((weight, value) => (open(variable, value) ? weight : 0))),
})

/** Posterior probability of one build, everything hidden summed out. */
function probabilityOf(
  { compiled, passes }: Reasoner,
  accounts: readonly AccountView[],
  build: Readonly<Record<string, string>>,
): number {
  const { variables } = compiled.model
  const only = (variable: number, value: number) => {
    const { name, kind, values } = variables[variable] as IndexedVariable
    return kind !== 'built' || build[name] === values[value]
  }
  return accounts.reduce(
    (sum, { weighing, share, total }) => sum + (share * passes.total(restricted(weighing, only))) / total,
    0,
  )
}
