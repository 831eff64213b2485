import type { SpotSummary } from '../../../shared-types/computations.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { ReadingValue } from '../../../shared-types/reading.ts'
import { spotSummary } from '../statistics/spot-summary.ts'

/** A reading of a spot set aside, by its number from nought, with the reason that is kept. */
export interface Discard {
  readonly at: number
  readonly reason: string
}

/**
 * A spot with and without what was set aside: readings that do not repeat may be left out of a spot's mean (ASTM D7091 and
 * SSPC-PA 2 as an averaging convention only), but both means are told, so that nobody can make a spot by choosing.
 * @throws ProblemError when a discard has no reason or no reading, or none would be left.
 */
export function spotWithDiscards(
  values: readonly ReadingValue[],
  discards: readonly Discard[],
  gauge: { readonly errorUm: number; readonly errorPercent: number } | null,
): { readonly kept: SpotSummary; readonly all: SpotSummary; readonly words: string } {
  const refuse = (message: string): never => {
    throw new ProblemError('input-refused', message, { field: 'discards' })
  }
  if (discards.some(({ reason }) => reason.trim() === ''))
    refuse('Say why the reading is set aside, such as “probe tilted”.')
  if (discards.some(({ at }) => values[at] === undefined)) refuse('There is no reading of that number in the spot.')
  const aside = new Set(discards.map(({ at }) => at))
  const left = values.filter((_, at) => !aside.has(at))
  if (left.length === 0) refuse('A spot needs at least one reading: discard the spot itself instead.')
  const reasons = discards.map(({ at, reason }) => `reading ${at + 1} (${reason.trim()})`).join(', ')
  return {
    kept: spotSummary({ values: left, gauge }),
    all: spotSummary({ values: [...values], gauge }),
    words:
      aside.size === 0 ? 'No reading set aside.' : `Set aside: ${reasons}. The mean of all readings is kept beside it.`,
  }
}
