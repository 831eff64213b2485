import { nodeCount } from './circuit.ts'
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

/**
 * The most probable builds, with doubts, donors and accounts summed out. Ways through the circuit come heaviest first;
 * a build's own probability is then computed whole. What has not come up weighs at most as much as the next way times the
 * number of hidden combinations, which is what proves the list.
 */
export function mostProbableBuilds(reasoner: Reasoner, view: View, wanted: number): ProbableBuilds {
  const { model } = reasoner.compiled
  const hidden = model.variables.reduce(
    (count, { kind, values }) => (kind === 'doubt' || kind === 'donor' ? count * values.length : count),
    1,
  )
  const live = view.accounts.filter(({ share }) => share > 0)
  for (let ways = Math.max(4, 2 * wanted); ; ways *= 4) {
    const found = new Map<string, Readonly<Record<string, string>>>()
    let [rest, exhausted] = [0, true]
    for (const account of live) {
      const best = heaviestWays(reasoner.compiled, account.weighing, ways)
      for (const way of best) {
        const build = buildOf(reasoner.compiled, way)
        found.set(JSON.stringify(Object.values(build)), build)
      }
      if (best.length === ways) {
        exhausted = false
        rest += (account.share * (best.at(-1)?.weight ?? 0)) / account.total
      }
    }
    const builds = [...found.values()]
      .map((build) => ({ build, probability: probabilityOf(reasoner, live, build) }))
      .sort((one, other) => other.probability - one.probability)
      .slice(0, wanted)
    const least = builds.at(-1)?.probability ?? 0
    const proved = exhausted || (builds.length === wanted && least >= rest * hidden * (1 - 1e-12))
    if (proved || 4 * ways * nodeCount(reasoner.compiled.circuit) > MOST_WAYS_KEPT) return { builds, proved }
  }
}

/** Posterior probability of one build, everything hidden summed out. */
function probabilityOf(
  { compiled, passes }: Reasoner,
  accounts: readonly AccountView[],
  build: Readonly<Record<string, string>>,
): number {
  return accounts.reduce((sum, { weighing, share, total }) => {
    const only: Weighing = {
      labels: weighing.labels,
      values: compiled.model.variables.map(({ name, kind, values }, variable) =>
        (weighing.values[variable] as Float64Array).map((weight, value) =>
          kind !== 'built' || build[name] === values[value] ? weight : 0,
        ),
      ),
    }
    return sum + (share * passes.total(only)) / total
  }, 0)
}
