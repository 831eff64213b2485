import type { z } from 'zod'
import type { combinedUncertainty } from '../../../shared-types/measuring.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { combineUncertainty } from '../statistics/combined-uncertainty.ts'
import { univariate } from '../statistics/univariate.ts'

/** Lengths in millimetres that must each be more than nothing. */
export function checkLengths(lengths: readonly number[], field: string): void {
  if (lengths.some((length) => !(length > 0)))
    throw new ProblemError('input-refused', 'A length must be greater than nothing: enter it in millimetres.', {
      field,
    })
}

/** A mean with its combined uncertainty. */
export type RepeatedReading = z.infer<typeof combinedUncertainty.output> & { readonly mean: number }

/**
 * Mean of repeated readings with its uncertainty: scatter (type A, where there are two or more) and what the tool is good to
 * as a rectangular half-width (type B, JCGM 100:2008, 4.3.7), which repeating does not make smaller.
 */
export function repeatedReading(values: readonly number[], goodToMm: number, coverage: number): RepeatedReading {
  const scatter =
    values.length < 2
      ? []
      : [{ label: 'scatter', sensitivity: 1, by: { kind: 'readings' as const, values: [...values] } }]
  const tool = {
    label: 'tool',
    sensitivity: 1,
    by: { kind: 'half-width' as const, halfWidth: goodToMm, shape: 'rectangular' as const },
  }
  return {
    mean: univariate(values).mean,
    ...combineUncertainty({ sources: [...scatter, tool], coverage, unit: 'mm' }),
  }
}

export const inMm = (value: number): string =>
  value.toLocaleString('en', { maximumFractionDigits: 1, useGrouping: false })
