import type { ReadingValue, Spot } from '../../../shared-types/reading.ts'

/** A thickness that may be a lower bound only, because a gauge ran out of range. */
export interface ThicknessOrMore {
  readonly um: number
  /** True when the value is "more than `um`". */
  readonly orMore: boolean
}

export interface SpotSummary {
  /** Values a thickness can be taken from, "more than" included. */
  readonly n: number
  readonly failed: number
  readonly mean: ThicknessOrMore | null
  readonly median: ThicknessOrMore | null
  /** Half the range; null for fewer than two values or when every value is a lower bound. */
  readonly spread: ThicknessOrMore | null
}

function medianOf(ordered: readonly number[]): number {
  const middle = ordered.length / 2
  const upper = ordered[Math.floor(middle)] ?? Number.NaN
  return Number.isInteger(middle) ? ((ordered[middle - 1] ?? Number.NaN) + upper) / 2 : upper
}

const ascending = (left: number, right: number): number => left - right

/**
 * Mean, median and half range of one spot, in micrometres. A value "more than x" is x at least and has no upper
 * bound: the median is exact while it does not depend on such a value, otherwise it is a lower bound, as is the mean.
 * A reading that failed counts in `failed` and nowhere else.
 */
export function summaryOf(values: readonly ReadingValue[]): SpotSummary {
  const exact = values.flatMap((value) => (value.kind === 'value' ? [value.um] : []))
  const bounds = values.flatMap((value) => (value.kind === 'more than' ? [value.um] : []))
  const all = [...exact, ...bounds].sort(ascending)
  const failed = values.length - all.length
  const open = bounds.length > 0
  if (all.length === 0) return { n: 0, failed, mean: null, median: null, spread: null }
  const least = medianOf(all)
  const most = medianOf([...exact, ...bounds.map(() => Number.POSITIVE_INFINITY)].sort(ascending))
  const widest = Math.max(...all)
  return {
    n: all.length,
    failed,
    mean: { um: all.reduce((sum, um) => sum + um, 0) / all.length, orMore: open },
    median: { um: least, orMore: most !== least },
    spread:
      all.length < 2 || exact.length === 0 ? null : { um: Math.max(0, widest - Math.min(...exact)) / 2, orMore: open },
  }
}

/** Panel of the spot whose median is thickest, the first of several alike; null before anything was read. */
export function thickestPanel(spots: readonly Spot[]): string | null {
  let thickest: { readonly panelId: string; readonly um: number } | null = null
  for (const { panelId, values } of spots) {
    const um = summaryOf(values).median?.um ?? 0
    if (thickest === null || um > thickest.um) thickest = { panelId, um }
  }
  return thickest?.panelId ?? null
}
