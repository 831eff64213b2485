import type { z } from 'zod'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { diagonals } from '../../../shared-types/tape-measures.ts'
import { decideAgainstLimits } from '../statistics/limit-decision.ts'
import { normalQuantile } from '../statistics/quantiles.ts'
import { checkLengths } from './tape-reading.ts'

/**
 * Difference of two diagonals and the lean it means: with the upper side moved along by e, (w + e)² + l² and (w - e)² + l²,
 * so that e = (d1² - d2²) / 4 w.
 * @throws ProblemError when a length is nothing or a diagonal is too long for its sides.
 */
export function leanFromDiagonals(question: z.infer<typeof diagonals.input>): z.infer<typeof diagonals.output> {
  const { firstMm, secondMm, widthMm, lengthMm, goodToMm, limitMm, coverage } = question
  checkLengths([firstMm, secondMm, widthMm, lengthMm], 'firstMm')
  if (Math.max(firstMm, secondMm) >= widthMm + lengthMm)
    throw new ProblemError(
      'input-refused',
      'A diagonal is longer than both sides together: measure or enter it again.',
      {
        field: 'firstMm',
      },
    )
  const differenceMm = firstMm - secondMm
  const expandedMm = (normalQuantile((1 + coverage) / 2) * goodToMm * Math.SQRT2) / Math.sqrt(3)
  return {
    differenceMm,
    expandedMm,
    leanMm: (firstMm ** 2 - secondMm ** 2) / (4 * widthMm),
    limit:
      limitMm === null
        ? null
        : decideAgainstLimits({
            value: differenceMm,
            expanded: expandedMm,
            lower: -limitMm,
            upper: limitMm,
            unit: 'mm',
          }),
    notes: [
      'Equal diagonals do not prove a rectangle: a trapezium has them too. Measure the sides as well.',
      'The lean is worked out as if the two widths were equal and the two lengths were.',
    ],
  }
}
