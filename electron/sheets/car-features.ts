import type { CarFeature } from '../../shared-types/panel.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { BodyStyle } from '../../shared-types/words.ts'
import { conditionConcerns, conditionHasSides, panelConditions } from './panel-list.ts'

/** What only some cars of a body style have, in the order of the list. Common practice, no source. */
export function carFeatures(body: BodyStyle): readonly CarFeature[] {
  return Object.entries(panelConditions())
    .filter(([id]) => conditionConcerns(body, id))
    .map(([id, { us, uk, means, onOneSide, usually }]) => ({
      id,
      us,
      uk,
      means,
      onOneSide,
      usually: usually[body] ?? 'absent',
    }))
}

/**
 * Throws `input-refused` at a condition nobody knows: it would quietly leave panels out of the walk. A known one that
 * does not concern the body is kept, so that a body entered wrongly and put right loses nothing.
 */
export function requireKnownConditions(conditions: readonly string[], field: string): void {
  const known = panelConditions()
  const strange = conditions.find((said) => {
    const id = said.replace(/\.[LR]$/, '')
    return !Object.hasOwn(known, id) || (said !== id && !conditionHasSides(id))
  })
  if (strange === undefined) return
  const message = `Nothing a car can have is called "${strange}". Choose from the list: ${Object.keys(known).join(', ')}.`
  throw new ProblemError('input-refused', message, { field })
}
