import type { DeclaredError } from '../../../shared-types/coating.ts'

/**
 * Standard uncertainty of one reading from the declared error ±(a + b·t), um: half of a 95 % limit (k = 2, JCGM 100:2008,
 * 4.3.4 and 6.3.3), or a tolerance as an even distribution (4.3.7).
 */
export function gaugeUncertainty({ constantUm, percent, meaning }: DeclaredError, thicknessUm: number): number {
  const limit = constantUm + (percent / 100) * thicknessUm
  return meaning === '95 % limit' ? limit / 2 : limit / Math.sqrt(3)
}

/** Largest error the maker allows at a thickness, um. */
export const declaredLimit = ({ constantUm, percent }: DeclaredError, thicknessUm: number): number =>
  constantUm + (percent / 100) * thicknessUm
