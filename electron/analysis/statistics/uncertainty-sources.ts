import type { UncertaintySource } from '../../../shared-types/measuring.ts'
import type { Draw } from '../sampling/seeded-draws.ts'
import { univariate } from './univariate.ts'

interface StandardUncertainty {
  readonly u: number
  readonly degreesOfFreedom: number
}

/** Divisor that turns a half-width into a standard uncertainty (JCGM 100:2008, 4.3.7 and 4.3.9; arcsine: H.1.3.4). */
const divisors = { rectangular: Math.sqrt(3), triangular: Math.sqrt(6), arcsine: Math.sqrt(2) }

/** Standard uncertainty of one source before its sensitivity; type B half-widths count as known exactly. */
export function standardUncertainty({ by }: UncertaintySource): StandardUncertainty {
  switch (by.kind) {
    case 'readings': {
      const { standardUncertainty: u } = univariate(by.values)
      return { u: u ?? 0, degreesOfFreedom: by.values.length - 1 }
    }
    case 'standard uncertainty':
      return { u: by.u, degreesOfFreedom: by.degreesOfFreedom ?? Number.POSITIVE_INFINITY }
    case 'half-width':
      return { u: by.halfWidth / divisors[by.shape], degreesOfFreedom: Number.POSITIVE_INFINITY }
    case 'certificate':
      return { u: by.expanded / by.k, degreesOfFreedom: Number.POSITIVE_INFINITY }
  }
}

/**
 * Deviations of one source from its estimate, by its distribution (JCGM 101:2008, 6.4): a scaled Student t where the
 * degrees of freedom are known, a normal one where they are taken as infinite, else the shape of the half-width.
 */
export function deviationsOf(source: UncertaintySource, draw: Draw, normal: Draw): () => number {
  const { by } = source
  const { u, degreesOfFreedom } = standardUncertainty(source)
  if (by.kind !== 'half-width')
    return Number.isFinite(degreesOfFreedom) ? () => u * studentDraw(normal, degreesOfFreedom) : () => u * normal()
  const { halfWidth, shape } = by
  if (shape === 'rectangular') return () => halfWidth * (2 * draw() - 1)
  if (shape === 'triangular') return () => halfWidth * (draw() + draw() - 1)
  return () => halfWidth * Math.sin(2 * Math.PI * draw())
}

/** Student's t from normal numbers; degrees of freedom are rounded down, which widens it. */
function studentDraw(normal: Draw, degreesOfFreedom: number): number {
  const whole = Math.max(1, Math.floor(degreesOfFreedom))
  let squares = 0
  for (let count = 0; count < whole; count += 1) squares += normal() ** 2
  return normal() / Math.sqrt(squares / whole)
}
