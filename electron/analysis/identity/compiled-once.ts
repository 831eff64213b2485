import type { IdentityClaim, IdentityModel } from '../../../shared-types/identity-model.ts'
import { compileModel } from './compile-circuit.ts'
import { indexModel } from './index-model.ts'
import { makeReasoner, type Reasoner } from './reasoner.ts'

const MOST_KEPT = 3
const kept = new Map<string, Reasoner>()

/**
 * The reasoner of a model with its claims. The same model asked again, as when one looks at a car and notes one thing after
 * another, is not compiled again; the last few are kept.
 * @throws ProblemError when the model does not fit together, forbids every build or is too entangled.
 */
export function compiledOnce(model: IdentityModel, claims: readonly IdentityClaim[]): Reasoner {
  const key = JSON.stringify([model, claims])
  const known = kept.get(key)
  if (known !== undefined) return known
  const made = makeReasoner(compileModel(indexModel(model, claims)))
  const [oldest] = kept.keys()
  if (kept.size >= MOST_KEPT && oldest !== undefined) kept.delete(oldest)
  kept.set(key, made)
  return made
}
