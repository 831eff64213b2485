import type { IdentityCertainty, IdentityClaim, IdentityModel } from '../../../shared-types/identity-model.ts'
import type { Circuit } from './circuit.ts'
import { type CompiledModel, compileModel } from './compile-circuit.ts'
import { ConflictFinder, type Conflicts } from './conflicts.ts'
import { certainFacts } from './hard-facts.ts'
import type { IndexedModel } from './identity-model.ts'
import { indexModel } from './index-model.ts'
import { withKnownCircuit } from './known-circuit.ts'
import { countLegalBuilds } from './legal-builds.ts'
import { type Posterior, posterior } from './posterior.ts'
import { makeReasoner, type Reasoner, viewOf } from './reasoner.ts'

/** Where circuits of models compiled before are kept beyond this run of the program. */
export interface CircuitShelf {
  /** The circuit of this model; null when it is not kept. `model` is the text that says all that went into it. */
  find(model: string): Circuit | null
  keep(model: string, circuit: Circuit): void
}

/** A compiled model with what can be said of it before anything is seen. */
export interface CompiledOnce {
  readonly reasoner: Reasoner
  readonly legalBuilds: bigint
  readonly prior: Posterior
  /** Conflicts among the rules and what is taken as certain. @throws ProblemError for unknown names. */
  conflictsWith(certain: readonly IdentityCertainty[]): Conflicts
}

const MOST_KEPT = 3
const kept = new Map<string, CompiledOnce>()
const texts = new WeakMap<IdentityModel, string>()

function textOf(model: IdentityModel): string {
  const known = texts.get(model)
  if (known !== undefined) return known
  const made = JSON.stringify(model)
  texts.set(model, made)
  return made
}

/**
 * A model with its claims, compiled. The same model asked again, as when one looks at a car and notes one thing after
 * another, is not compiled again; the last few are kept, and circuits on the shelf when there is one.
 * @throws ProblemError when the model does not fit together, forbids every build or is too entangled.
 */
export function compiledOnce(
  model: IdentityModel,
  claims: readonly IdentityClaim[],
  shelf: CircuitShelf | null = null,
): CompiledOnce {
  // A claim of one literal is evidence only; one of several gets a variable of its own.
  const own = claims.filter(({ says }) => says.length > 1).map(({ id, says }) => ({ id, says }))
  const key = `${textOf(model)} ${JSON.stringify(own)}`
  const known = kept.get(key)
  if (known !== undefined) return known
  const compiled = compiledModel(indexModel(model, claims), key, shelf)
  const reasoner = makeReasoner(compiled)
  const before = viewOf(reasoner, [])
  if (before === null) throw new RangeError('A prior with total weight 0 was let through.')
  const made: CompiledOnce = {
    reasoner,
    legalBuilds: countLegalBuilds(compiled),
    prior: posterior(reasoner, before),
    conflictsWith: conflictsKnown(compiled.model),
  }
  const [oldest] = kept.keys()
  if (kept.size >= MOST_KEPT && oldest !== undefined) kept.delete(oldest)
  kept.set(key, made)
  return made
}

/** Numbers stay as they are while one tell after another is looked at: what they rule out is not searched for anew. */
function conflictsKnown(model: IndexedModel): CompiledOnce['conflictsWith'] {
  let last: { readonly key: string; readonly found: Conflicts } | null = null
  return (certain) => {
    const key = JSON.stringify(certain)
    if (last?.key === key) return last.found
    const found = new ConflictFinder(model, certainFacts(model, certain)).all()
    last = { key, found }
    return found
  }
}

function compiledModel(model: IndexedModel, key: string, shelf: CircuitShelf | null): CompiledModel {
  const before = shelf?.find(key) ?? null
  const known = before === null ? null : withKnownCircuit(model, before)
  if (known !== null) return known
  const made = compileModel(model)
  shelf?.keep(key, made.circuit)
  return made
}
