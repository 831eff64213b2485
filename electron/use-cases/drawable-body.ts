import type { Particulars } from '../../shared-types/car.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import { bodyPlan } from '../figures/body-plan.ts'

/**
 * Draws the plan of a car with dimensions of its own before they are kept. Throws `input-refused` when it cannot be
 * drawn though each dimension is in its range: a record must not hold what would leave it without its plan.
 */
export function requireDrawable({ body, dimensions, conditions }: Particulars, field: string): void {
  if (Object.keys(dimensions).length === 0) return
  try {
    bodyPlan(body, 'uk', dimensions, conditions)
  } catch (cause) {
    throw new ProblemError(
      'input-refused',
      'The plan cannot be drawn with these dimensions together, though each alone is accepted. Measure again, or leave ' +
        'empty those you trust least: they are then drawn as usual. Nothing was changed.',
      { field, cause },
    )
  }
}
