import { type CovarianceStructure, correlation } from './covariance.ts'
import type { VariogramClass } from './variogram.ts'

/** A nugget and one structure fitted to an experimental variogram; `sumOfSquares` is the weighted one that was made least. */
export interface VariogramFit {
  readonly nugget: number
  readonly sill: number
  readonly range: number
  readonly sumOfSquares: number
}

/**
 * Weighted least squares with weights pairs / distance squared (E. Pebesma, Computers and Geosciences 30 (2004) 683-691).
 * For a given range nugget and sill are a linear problem solved exactly, so only the range is searched: over the whole
 * span of the classes first, because the sum may have more than one valley, then by golden section.
 */
export function fitVariogram(
  classes: readonly VariogramClass[],
  model: Exclude<CovarianceStructure['model'], 'nugget' | 'error'>,
): VariogramFit | null {
  if (classes.length < 3) return null
  const longest = Math.max(...classes.map(({ distance }) => distance))
  const ranges = Array.from({ length: 120 }, (_, step) => longest * 0.02 * 150 ** (step / 119))
  const fits = ranges.map((range) => fitAtRange(classes, model, range))
  const best = fits.reduce(
    (least, fit, at) => (fit.sumOfSquares < (fits[least] as VariogramFit).sumOfSquares ? at : least),
    0,
  )
  let low = ranges[Math.max(0, best - 1)] as number
  let high = ranges[Math.min(119, best + 1)] as number
  const golden = (Math.sqrt(5) - 1) / 2
  while (high - low > 1e-9 * high) {
    const one = high - golden * (high - low)
    const other = low + golden * (high - low)
    if (fitAtRange(classes, model, one).sumOfSquares < fitAtRange(classes, model, other).sumOfSquares) high = other
    else low = one
  }
  return fitAtRange(classes, model, (low + high) / 2)
}

/** Nugget and sill, neither negative, at one range. */
function fitAtRange(
  classes: readonly VariogramClass[],
  model: CovarianceStructure['model'],
  range: number,
): VariogramFit {
  const rows = classes.map(({ pairs, distance, gamma }) => ({
    weight: pairs / distance ** 2,
    rise: 1 - correlation({ model, sill: 1, range }, distance),
    gamma,
  }))
  const sum = (of: (row: (typeof rows)[number]) => number): number =>
    rows.reduce((all, row) => all + row.weight * of(row), 0)
  const [w, r, rr, g, rg] = [
    sum(() => 1),
    sum((a) => a.rise),
    sum((a) => a.rise ** 2),
    sum((a) => a.gamma),
    sum((a) => a.rise * a.gamma),
  ]
  const determinant = w * rr - r * r
  let sill = (w * rg - r * g) / determinant
  let nugget = (g - sill * r) / w
  if (!(determinant > 0) || nugget < 0) [nugget, sill] = [0, rg / rr]
  if (sill < 0) [nugget, sill] = [g / w, 0]
  return { nugget, sill, range, sumOfSquares: sum((a) => (a.gamma - nugget - sill * a.rise) ** 2) }
}
