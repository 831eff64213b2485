import type { CostRange } from '../../../shared-types/correction.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'

/** A cost as it is typed: any of the three may still be missing. */
export interface CostEntry {
  readonly low: number | null
  readonly likely: number | null
  readonly high: number | null
  readonly basis: string
  readonly pricedOn: string | null
}

export const costEntryOf = (cost: CostRange | null): CostEntry =>
  cost ?? { low: null, likely: null, high: null, basis: '', pricedOn: null }

/** The cost range of an entry; null when no figure was typed. A single figure is no range and is refused. */
export function costOf(entry: CostEntry): CostRange | null {
  const { low, likely, high } = entry
  if (low === null && likely === null && high === null) return null
  if (low === null || likely === null || high === null) {
    throw new ProblemError('input-refused', 'A cost is a range: write low, likely and high, or none of them.', {
      field: 'cost',
    })
  }
  if (low > likely || likely > high) {
    throw new ProblemError('input-refused', 'Low must not be above likely, nor likely above high.', { field: 'cost' })
  }
  return { low, likely, high, basis: entry.basis, pricedOn: entry.pricedOn }
}
