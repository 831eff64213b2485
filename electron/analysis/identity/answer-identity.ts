import type { IdentityAnswer, IdentityInput } from '../../../shared-types/identity-answer.ts'
import type { IdentityLiteral } from '../../../shared-types/identity-model.ts'
import { mostProbableBuilds } from './best-builds.ts'
import { cheapestStory } from './cheapest-story.ts'
import { compiledOnce } from './compiled-once.ts'
import { ConflictFinder } from './conflicts.ts'
import { type Contributions, contributions } from './contributions.ts'
import { certainFacts, ruledOut } from './hard-facts.ts'
import { countBuildsLeft, countLegalBuilds } from './legal-builds.ts'
import { posterior } from './posterior.ts'
import { rarity } from './rarity.ts'
import { itemsOf, viewOf } from './reasoner.ts'
import { type Support, support } from './support-scale.ts'
import { valueOfInformation } from './value-of-information.ts'

/**
 * Everything the engine can say about one car, from one piece of plain data.
 * @throws ProblemError when the model does not fit together, forbids every build or is too entangled.
 */
export function answerIdentity({
  model: source,
  evidence,
  question,
  statement,
  statements,
  options,
  builds,
}: IdentityInput): IdentityAnswer {
  const reasoner = compiledOnce(source, evidence.claims)
  const { compiled } = reasoner
  const { model } = compiled
  const items = itemsOf(reasoner, evidence)
  const before = viewOf(reasoner, [])
  if (before === null) throw new RangeError('A prior with total weight 0 was let through.')
  const view = viewOf(reasoner, items)
  const read = new Set(evidence.readings.map(({ tell }) => tell))
  const weighed = (says: readonly IdentityLiteral[] | null) => {
    const own = view === null || says === null ? null : contributions(reasoner, items, says)
    return { contributions: own, support: own === null ? null : supportOf(own) }
  }
  return {
    legalBuilds: countLegalBuilds(compiled).toString(),
    buildsLeft: countBuildsLeft(compiled, items).toString(),
    prior: posterior(reasoner, before),
    posterior: view === null ? null : posterior(reasoner, view),
    mostProbable: view === null ? null : mostProbableBuilds(reasoner, view, builds),
    ...weighed(statement),
    statements: statements.map(({ id, says }) => ({ id, ...weighed(says) })),
    worths: view === null ? null : valueOfInformation(reasoner, view, question, read),
    story: view === null || statement === null ? null : cheapestStory(reasoner, evidence, items, statement),
    rarity: options === null ? null : rarity(model, options),
    conflicts: new ConflictFinder(model, certainFacts(model, evidence.certain)).all(),
    impossible: view === null ? new ConflictFinder(model, ruledOut(model, items)).all() : null,
  }
}

/** Support of a statement against its opposite: odds after over odds before. A statement settled before has none. */
export function supportOf({ before, total }: Contributions): Support | null {
  if (!(before > 0 && before < 1)) return null
  if (total.decisive !== null) return support(total.decisive === 'for' ? Number.POSITIVE_INFINITY : 0)
  return support(10 ** ((total.decibans ?? 0) / 10))
}
