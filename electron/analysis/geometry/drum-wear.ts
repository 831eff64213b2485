import type { z } from 'zod'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { drumWear } from '../../../shared-types/tape-measures.ts'
import { decideAgainstLimits } from '../statistics/limit-decision.ts'
import { checkLengths, inMm, repeatedReading } from './tape-reading.ts'

/**
 * A drum (which wears larger) or disc (which wears thinner) against each size it may be of: possible when the measurement
 * with its uncertainty meets the stretch from nominal to limit; against the limit by ISO 14253-1.
 * @throws ProblemError when a length is nothing or a limit is the nominal size.
 */
export function wearOf({
  readingsMm,
  goodToMm,
  sizes,
  coverage,
}: z.infer<typeof drumWear.input>): z.infer<typeof drumWear.output> {
  checkLengths(readingsMm, 'readingsMm')
  const { mean, expanded } = repeatedReading(readingsMm, goodToMm, coverage)
  const weighed = sizes.map(({ label, nominalMm, limitMm }) => {
    if (nominalMm === limitMm)
      throw new ProblemError('input-refused', `${label}: the wear limit is the nominal size; correct one of the two.`, {
        field: 'sizes',
      })
    const grows = limitMm > nominalMm
    const least = Math.min(nominalMm, limitMm)
    const most = Math.max(nominalMm, limitMm)
    return {
      label,
      possible: mean + expanded >= least && mean - expanded <= most,
      wearMm: grows ? mean - nominalMm : nominalMm - mean,
      limit: decideAgainstLimits({
        value: mean,
        expanded,
        lower: grows ? null : limitMm,
        upper: grows ? limitMm : null,
        unit: 'mm',
      }),
    }
  })
  const possible = weighed.filter((size) => size.possible).map(({ label }) => label)
  const measured = `${inMm(mean)} ± ${inMm(expanded)} mm`
  return {
    meanMm: mean,
    expandedMm: expanded,
    sizes: weighed,
    words:
      possible.length === 0
        ? `${measured} lies in none of the listed sizes between new and worn out.`
        : `${measured}: ${possible.join(', ')}${possible.length > 1 ? ' are not told apart' : ''}.`,
  }
}
