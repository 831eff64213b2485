import type { z } from 'zod'
import type { combinedUncertainty } from '../../../shared-types/measuring.ts'
import { thousands } from '../../../shared-types/thousands.ts'
import { studentQuantile } from './quantiles.ts'
import { standardUncertainty } from './uncertainty-sources.ts'

/**
 * Combined standard uncertainty of independent sources (JCGM 100:2008, 5.1.2), effective degrees of freedom by Welch and
 * Satterthwaite (G.4), rounded down, and the expanded uncertainty with t for the coverage asked for (G.3).
 */
export function combineUncertainty(
  question: z.infer<typeof combinedUncertainty.input>,
): z.infer<typeof combinedUncertainty.output> {
  const { sources, coverage, unit } = question
  const parts = sources.map((source) => {
    const { u, degreesOfFreedom } = standardUncertainty(source)
    return { label: source.label, standard: Math.abs(source.sensitivity) * u, degreesOfFreedom }
  })
  const standard = Math.hypot(...parts.map((part) => part.standard))
  const fourths = parts.reduce((sum, part) => sum + part.standard ** 4 / part.degreesOfFreedom, 0)
  const effective = fourths === 0 ? Number.POSITIVE_INFINITY : standard ** 4 / fourths
  const k = coverageFactor(coverage, effective)
  const degreesOfFreedom = Number.isFinite(effective) ? effective : null
  return {
    standard,
    degreesOfFreedom,
    k,
    expanded: k * standard,
    coverage,
    sources: parts.map((part) => ({
      label: part.label,
      standard: part.standard,
      share: standard === 0 ? 0 : (part.standard / standard) ** 2,
    })),
    words: `±${short(k * standard)} ${unit} (k = ${short(k)}, coverage ${short(coverage * 100)} %, ${degreesOfFreedom === null ? 'degrees of freedom taken as infinite' : `${Math.floor(degreesOfFreedom)} degrees of freedom`}).`,
  }
}

/** Two-sided factor of Student's t with the degrees of freedom rounded down, at least 1. */
export function coverageFactor(coverage: number, degreesOfFreedom: number): number {
  return studentQuantile((1 + coverage) / 2, Math.max(1, Math.floor(degreesOfFreedom)))
}

const short = (value: number): string =>
  thousands(value.toLocaleString('en', { maximumSignificantDigits: 3, useGrouping: false }))
