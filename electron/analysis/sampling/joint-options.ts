import type { z } from 'zod'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { jointOptions } from '../../../shared-types/sampling.ts'

/**
 * Bounds of the number with every option, from counts of each (Fréchet, Ann. Univ. Lyon A 14 (1951) 53-77): at most the
 * smallest count, at least what the counts overlap by. No product of shares: options are not independent. Sources that
 * disagree stay separate lines.
 * @throws ProblemError when an option was on more cars than were built.
 */
export function boundJointOptions({
  sources,
}: z.infer<typeof jointOptions.input>): z.infer<typeof jointOptions.output> {
  const lines = sources.map(({ label, built, options }) => {
    const over = options.find(({ count }) => count > built)
    if (over !== undefined)
      throw new ProblemError(
        'input-refused',
        `${label}: ${over.label} is counted on more cars than were built; correct one of the two.`,
        { field: 'sources' },
      )
    const counts = options.map(({ count }) => count)
    const sum = counts.reduce((total, count) => total + count, 0)
    return { label, built, low: Math.max(0, sum - (counts.length - 1) * built), high: Math.min(...counts) }
  })
  const agree = lines.every(({ low, high }) => low === lines[0]?.low && high === lines[0]?.high)
  return {
    lines,
    agree,
    words: `Bounds from counts of each option; how they were combined is not known.${agree ? '' : ' The sources disagree and are not averaged.'}`,
  }
}
