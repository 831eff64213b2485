import type { z } from 'zod'
import type { limitDecision } from '../../../shared-types/measuring.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'

type Question = z.infer<typeof limitDecision.input>
type Answer = z.infer<typeof limitDecision.output>

/**
 * A value against limits (ISO 14253-1, by the expanded uncertainty): inside when all of value ± U is, outside when none
 * of it is, else neither can be proven. `wouldDecide` is the distance to the nearest limit.
 * @throws ProblemError when there is no limit, or the lower lies above the upper.
 */
export function decideAgainstLimits({ value, expanded, lower, upper, unit }: Question): Answer {
  if (lower === null && upper === null)
    throw new ProblemError('input-refused', 'Enter at least one limit.', { field: 'upper' })
  if (lower !== null && upper !== null && lower > upper)
    throw new ProblemError('input-refused', 'The lower limit lies above the upper one: exchange them.', {
      field: 'lower',
    })
  const toLower = lower === null ? Number.POSITIVE_INFINITY : value - lower
  const toUpper = upper === null ? Number.POSITIVE_INFINITY : upper - value
  const wouldDecide = Math.min(Math.abs(toLower), Math.abs(toUpper))
  const nearest = Math.min(toLower, toUpper)
  const decision = decisionFor(nearest, expanded)
  const figures = `${shown(value)} ± ${shown(expanded)} ${unit}`
  const words = {
    inside: `${figures} is inside the limits.`,
    outside: `${figures} is outside the limits.`,
    'cannot be proven': `${figures}: neither inside nor outside can be proven. An uncertainty below ${shown(wouldDecide)} ${unit} would decide it; there is ${shown(expanded)}.`,
  }
  return { decision, wouldDecide, words: words[decision] }
}

/** On the edge of its uncertainty a value still counts as inside: the limit itself is allowed. */
function decisionFor(nearest: number, expanded: number): Answer['decision'] {
  if (nearest >= expanded) return 'inside'
  return -nearest > expanded ? 'outside' : 'cannot be proven'
}

const shown = (value: number): string => value.toLocaleString('en', { maximumSignificantDigits: 4, useGrouping: false })
