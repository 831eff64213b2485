import type { IdentityAnswer, IdentityInput } from '../../../shared-types/identity-answer.ts'
import type { IdentityLiteral } from '../../../shared-types/identity-model.ts'
import { mostProbableBuilds } from './best-builds.ts'
import { cheapestStory } from './cheapest-story.ts'
import { type CircuitShelf, compiledOnce } from './compiled-once.ts'
import { ConflictFinder } from './conflicts.ts'
import { type Contributions, contributions } from './contributions.ts'
import { ruledOut } from './hard-facts.ts'
import { countBuildsLeft } from './legal-builds.ts'
import { type Posterior, posterior } from './posterior.ts'
import { rarity } from './rarity.ts'
import { itemsOf, viewOf } from './reasoner.ts'
import { type Support, support } from './support-scale.ts'
import { valueOfInformation } from './value-of-information.ts'

/**
 * Everything the engine can say about one car, from one piece of plain data.
 * @param shelf where circuits compiled before are kept; null when every run compiles its own.
 * @throws ProblemError when the model does not fit together, forbids every build or is too entangled.
 */
export function answerIdentity(
  {
    model: source,
    evidence,
    question,
    statement,
    statements,
    chains,
    likeliest,
    inOrder,
    options,
    builds,
  }: IdentityInput,
  shelf: CircuitShelf | null = null,
): IdentityAnswer {
  const { reasoner, legalBuilds, prior, conflictsWith } = compiledOnce(source, evidence.claims, shelf)
  const { compiled } = reasoner
  const { model } = compiled
  const items = itemsOf(reasoner, evidence)
  const view = viewOf(reasoner, items)
  const read = new Set(evidence.readings.map(({ tell }) => tell))
  const weighed = (says: readonly IdentityLiteral[] | null, each = true) => {
    const own = view === null || says === null ? null : contributions(reasoner, items, says, { each, inOrder })
    return { contributions: own, support: own === null ? null : supportOf(own) }
  }
  const now = view === null ? null : posterior(reasoner, view)
  return {
    legalBuilds: legalBuilds.toString(),
    buildsLeft: countBuildsLeft(compiled, items).toString(),
    prior,
    posterior: now,
    mostProbable: view === null ? null : mostProbableBuilds(reasoner, view, builds),
    ...weighed(statement),
    statements: [
      ...statements.map(({ id, says }) => ({ id, ...weighed(says, chains?.includes(id) ?? true) })),
      ...likeliestOf(now, likeliest).map(({ id, says }) => ({ id, ...weighed(says) })),
    ],
    worths: view === null ? null : valueOfInformation(reasoner, view, question, read),
    story: view === null || statement === null ? null : cheapestStory(reasoner, evidence, items, statement),
    rarity: options === null ? null : rarity(model, options),
    conflicts: conflictsWith(evidence.certain),
    impossible: view === null ? new ConflictFinder(model, ruledOut(model, items)).all() : null,
  }
}

/** For each variable the statement that it has its likeliest value. */
function likeliestOf(now: Posterior | null, variables: readonly string[]) {
  return variables.flatMap((id): { id: string; says: IdentityLiteral[] }[] => {
    const shares = Object.entries(now?.variables[id] ?? {})
    if (shares.length === 0) return []
    const [value] = shares.reduce((best, each) => (each[1] > best[1] ? each : best))
    return [{ id, says: [[id, [value]]] }]
  })
}

/** Support of a statement against its opposite: odds after over odds before. A statement settled before has none. */
export function supportOf({ before, total }: Contributions): Support | null {
  if (!(before > 0 && before < 1)) return null
  if (total.decisive !== null) return support(total.decisive === 'for' ? Number.POSITIVE_INFINITY : 0)
  return support(10 ** ((total.decibans ?? 0) / 10))
}
