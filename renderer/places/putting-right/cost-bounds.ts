import type { Correction } from '../../../shared-types/correction.ts'

/** Least and most a set of corrections can cost: every one at its low end, every one at its high end. No likely total. */
export interface CostBounds {
  readonly corrections: number
  readonly priced: number
  readonly low: number
  readonly high: number
  /** Earliest and latest day of the prices; null when none is dated. */
  readonly pricedFrom: string | null
  readonly pricedTo: string | null
}

/** Adds low ends and high ends apart. A correction without a cost adds nothing and is counted as not priced. */
export function boundsOf(corrections: readonly Pick<Correction, 'cost'>[]): CostBounds {
  const costs = corrections.flatMap((correction) => (correction.cost === null ? [] : [correction.cost]))
  const days = costs.flatMap((cost) => (cost.pricedOn === null ? [] : [cost.pricedOn])).sort()
  return {
    corrections: corrections.length,
    priced: costs.length,
    low: costs.reduce((sum, cost) => sum + cost.low, 0),
    high: costs.reduce((sum, cost) => sum + cost.high, 0),
    pricedFrom: days[0] ?? null,
    pricedTo: days.at(-1) ?? null,
  }
}
