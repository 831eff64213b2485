import type { IdentityEvidence, IdentityLiteral } from '../../../shared-types/identity-model.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { CompiledModel } from './compile-circuit.ts'
import { type EvidenceItem, evidenceItems, likelihoodOf } from './evidence.ts'
import { type IndexedModel, indexLiteral } from './identity-model.ts'
import { type AccountPrior, accountPriors } from './prior.ts'
import { evenWeighing, Passes, product, type Weighing } from './weighing.ts'

/** A compiled model with its priors, ready to be asked; nothing in it changes by asking. */
export interface Reasoner {
  readonly compiled: CompiledModel
  readonly passes: Passes
  readonly priors: readonly AccountPrior[]
}

export function makeReasoner(compiled: CompiledModel): Reasoner {
  const passes = new Passes(compiled)
  return { compiled, passes, priors: accountPriors(compiled, passes) }
}

/** The evidence under one account: weights of everything, and the probability of the evidence there. */
export interface AccountView {
  readonly id: string
  readonly priorShare: number
  /** Share of belief in the account once the evidence is in. */
  readonly share: number
  readonly weighing: Weighing
  /** Total weight of all builds; 0 when the evidence is impossible under this account. */
  readonly total: number
}

/** What some evidence leaves possible, account by account. */
export interface View {
  readonly accounts: readonly AccountView[]
  /** Natural logarithm of the probability of the evidence, up to a term that depends on the evidence alone. */
  readonly logLikelihood: number
}

export const itemsOf = ({ compiled }: Reasoner, evidence: IdentityEvidence): readonly EvidenceItem[] =>
  evidenceItems(compiled.model, evidence)

/** Below this a total is scaled up before anything is computed from it. */
export const SMALL = 1e-200

/**
 * A total too small for the numbers of the machine is brought into range by a common factor on every variable, which
 * changes no probability: every build has each variable once.
 */
export function inRange(
  reasoner: Reasoner,
  weighing: Weighing,
): { weighing: Weighing; total: number; logFactor: number } {
  const total = reasoner.passes.total(weighing)
  if (total > SMALL) return { weighing, total, logFactor: 0 }
  if (!reasoner.passes.possible(weighing)) return { weighing, total: 0, logFactor: 0 }
  for (const power of [1, 2, 3, 4, 6, 8]) {
    const factor = 10 ** power
    const scaled = { ...weighing, values: weighing.values.map((values) => values.map((weight) => weight * factor)) }
    const own = reasoner.passes.total(scaled)
    if (own > SMALL && Number.isFinite(own))
      return { weighing: scaled, total: own, logFactor: Math.log(factor) * weighing.values.length }
  }
  throw new ProblemError(
    'input-refused',
    'Together these observations are too improbable to be weighed. Look for readings entered the wrong way round.',
    { field: 'evidence' },
  )
}

/** Weighs the accounts by the evidence; null when no build allowed by the rules could have shown it. */
export function viewOf(
  reasoner: Reasoner,
  items: readonly EvidenceItem[],
  restricted: Weighing | null = null,
): View | null {
  const { compiled, priors } = reasoner
  const seen = likelihoodOf(compiled, items)
  const evidence = restricted === null ? seen : product(seen, restricted)
  const weighed = priors.map((prior) => {
    const { weighing, total, logFactor } = inRange(reasoner, product(prior.weighing, evidence))
    return { prior, weighing, total, log: Math.log((prior.share * total) / prior.total) - logFactor }
  })
  const greatest = weighed.reduce((most, { log }) => Math.max(most, log), Number.NEGATIVE_INFINITY)
  if (greatest === Number.NEGATIVE_INFINITY) return null
  const sum = weighed.reduce((total, { log }) => total + Math.exp(log - greatest), 0)
  return {
    logLikelihood: greatest + Math.log(sum),
    accounts: weighed.map(({ prior, weighing, total, log }) => ({
      id: prior.id,
      priorShare: prior.share,
      share: Math.exp(log - greatest) / sum,
      weighing,
      total,
    })),
  }
}

/** A statement may also speak of where parts came from: a donor is named as a variable is, with the value `none` or a kind. */
function withDonors(model: IndexedModel): IndexedModel {
  const donors = model.variables.flatMap(({ name, kind }, at) => (kind === 'donor' ? [[name, at] as const] : []))
  return donors.length === 0 ? model : { ...model, variableAt: new Map([...donors, ...model.variableAt]) }
}

/** Weighings that let through the builds of a statement and of its opposite; the opposite in parts that exclude each other. */
export interface StatementWeighings {
  readonly holds: Weighing
  readonly fails: readonly Weighing[]
}

/** A statement holds when every literal does. It fails first at its first literal, or its second, and so on. */
export function statementWeighings(
  { compiled }: Reasoner,
  says: readonly IdentityLiteral[],
  field: string,
): StatementWeighings {
  const { model } = compiled
  const literals = new Map<number, Uint8Array>()
  for (const literal of says) {
    const { variable, allowed } = indexLiteral(literal, withDonors(model), field)
    const before = literals.get(variable)
    literals.set(
      variable,
      before === undefined ? allowed : allowed.map((each, value) => each & (before[value] as number)),
    )
  }
  const even = evenWeighing(compiled)
  const through = (open: ReadonlyMap<number, Uint8Array>): Weighing => ({
    ...even,
    values: even.values.map((values, variable) => {
      const own = open.get(variable)
      return own === undefined ? values : Float64Array.from(own)
    }),
  })
  const earlier = new Map<number, Uint8Array>()
  const fails: Weighing[] = []
  for (const [variable, allowed] of literals) {
    fails.push(through(new Map([...earlier, [variable, allowed.map((each) => 1 - each)]])))
    earlier.set(variable, allowed)
  }
  return { holds: through(literals), fails }
}
