import type { z } from 'zod'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { weldPitch } from '../../../shared-types/tape-measures.ts'
import { grubbsTest } from '../statistics/grubbs.ts'
import { decideAgainstLimits } from '../statistics/limit-decision.ts'
import { univariate } from '../statistics/univariate.ts'
import { checkLengths, inMm, repeatedReading } from './tape-reading.ts'

/**
 * Pitch of a row of welds: mean with its uncertainty, spread, a pitch that stands out (Grubbs, 5 %), and the mean against
 * what the sheet says. Regular pitch is a sign and no proof: jigs and careful hands both make it.
 * @throws ProblemError when a pitch is nothing or the expected range is the wrong way round.
 */
export function pitchOfWelds({
  pitchesMm,
  goodToMm,
  expected,
  coverage,
}: z.infer<typeof weldPitch.input>): z.infer<typeof weldPitch.output> {
  checkLengths(pitchesMm, 'pitchesMm')
  if (expected !== null && expected.lowMm > expected.highMm)
    throw new ProblemError('input-refused', 'The expected range ends before it begins: exchange its ends.', {
      field: 'expected',
    })
  const { mean, standardDeviation, min, max } = univariate(pitchesMm)
  const { expanded } = repeatedReading(pitchesMm, goodToMm, coverage)
  const furthest = min === max ? null : grubbsTest({ values: [...pitchesMm], significance: 0.05, sides: 'either' })
  const spread = standardDeviation ?? 0
  return {
    meanMm: mean,
    standardDeviationMm: spread,
    expandedMm: expanded,
    standsOut: furthest?.standsOut ? furthest.at : null,
    limit:
      expected === null
        ? null
        : decideAgainstLimits({ value: mean, expanded, lower: expected.lowMm, upper: expected.highMm, unit: 'mm' }),
    words: `Mean pitch ${inMm(mean)} ± ${inMm(expanded)} mm, spread ${inMm(spread)} mm over ${pitchesMm.length} pitches. Regularity alone does not say who made the welds.`,
  }
}
