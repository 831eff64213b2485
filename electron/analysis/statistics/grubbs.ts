import type { z } from 'zod'
import type { grubbs } from '../../../shared-types/measuring.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { studentQuantile } from './quantiles.ts'
import { univariate } from './univariate.ts'

/**
 * Whether the value furthest from the mean stands out (F. E. Grubbs, Technometrics 11 (1969) 1-21; NIST/SEMATECH e-Handbook
 * 1.3.5.17.1). A value is marked and never left out: why it stands out is for the examiner to say.
 * @throws ProblemError when the values do not differ.
 */
export function grubbsTest({
  values,
  significance,
  sides,
}: z.infer<typeof grubbs.input>): z.infer<typeof grubbs.output> {
  const { mean, standardDeviation } = univariate(values)
  if (standardDeviation === null || standardDeviation === 0)
    throw new ProblemError('input-refused', 'The values do not differ, so none can stand out. Read to a finer step.', {
      field: 'values',
    })
  const distance = (value: number) => {
    if (sides === 'either') return Math.abs(value - mean)
    return sides === 'greatest' ? value - mean : mean - value
  }
  const far = Math.max(...values.map(distance))
  const at = values.findIndex((value) => distance(value) === far)
  const g = far / standardDeviation
  const critical = grubbsCritical(values.length, sides === 'either' ? significance / 2 : significance)
  return { at, value: values[at] ?? mean, g, critical, standsOut: g > critical }
}

/** Critical value for n values with the significance on one side. */
function grubbsCritical(n: number, oneSided: number): number {
  const t = studentQuantile(1 - oneSided / n, n - 2)
  return ((n - 1) / Math.sqrt(n)) * Math.sqrt(t ** 2 / (n - 2 + t ** 2))
}
