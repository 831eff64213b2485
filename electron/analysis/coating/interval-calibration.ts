import { quantileOfSorted } from './field-summary.ts'
import type { DensityShifts, EndShifts, EvidenceKind, Extent } from './interval-shifts.ts'
import { intervalTable } from './interval-table.ts'

/** An interval before and after; `middle` is the median of the draws and stays. */
export interface Interval {
  readonly low: number
  readonly middle: number
  readonly high: number
}

/** The part of the panel an extent is never known better than, and the depth that turns it into a volume, mm. */
const GRAIN = 0.005
const GRAIN_DEPTH_MM = 0.5

/** Panels the simulations covered, m2. */
export const simulatedAreaM2 = [0.35, 1.4] as const

export const evidenceOf = (readings: number, paint: number): EvidenceKind => {
  const more = readings - paint
  if (more === 0) return 'none'
  if (more >= 0.9 * readings) return 'nearly all'
  return more <= 3 ? 'few' : 'several'
}

/** Smallest difference that counts, in mm2 or mm3. */
export const grainOf = (extent: Extent, assessedMm2: number): number =>
  GRAIN * assessedMm2 * (extent === 'area' ? 1 : GRAIN_DEPTH_MM)

/** 5 %, 50 % and 95 % points of the draws. */
export function drawnInterval(draws: Float64Array): Interval {
  const sorted = draws.toSorted()
  return {
    low: quantileOfSorted(sorted, 0.05),
    middle: quantileOfSorted(sorted, 0.5),
    high: quantileOfSorted(sorted, 0.95),
  }
}

/**
 * How far beyond each end of the drawn interval a truth lies, in the units of the shifts; negative when inside. A low end at
 * nought stays there and is never missed.
 */
export function endScores(drawn: Interval, truth: number, grain: number): EndShifts {
  return {
    low: drawn.low > 0 ? (drawn.low - truth) / (drawn.middle - drawn.low + grain) : Number.NEGATIVE_INFINITY,
    high: (truth - drawn.high) / (drawn.high - drawn.middle + grain),
  }
}

/** The drawn interval with its ends moved, kept between nought and the most there can be; a low end at nought is not lifted. */
export function shiftedInterval(drawn: Interval, shifts: EndShifts, grain: number, most: number): Interval {
  const low = drawn.low > 0 ? drawn.low - shifts.low * (drawn.middle - drawn.low + grain) : 0
  const high = drawn.high + shifts.high * (drawn.high - drawn.middle + grain)
  return {
    low: Math.max(0, Math.min(low, drawn.middle)),
    middle: drawn.middle,
    high: Math.min(most, Math.max(high, drawn.middle)),
  }
}

/**
 * Shifts for a number of readings, straight between the numbers that were simulated by the logarithm of the number, and
 * those of the nearest outside them.
 */
export function shiftsFor(
  readings: number,
  extent: Extent,
  evidence: EvidenceKind,
  table: readonly DensityShifts[] = intervalTable,
): EndShifts {
  const above = table.findIndex((row) => row.readings >= readings)
  const upper = table[above === -1 ? table.length - 1 : above] as DensityShifts
  const lower = above <= 0 ? upper : (table[above - 1] as DensityShifts)
  const span = Math.log(upper.readings / lower.readings)
  const share = span === 0 || readings >= upper.readings ? 1 : Math.log(readings / lower.readings) / span
  const one = lower.shifts[extent][evidence]
  const other = upper.shifts[extent][evidence]
  return { low: one.low + share * (other.low - one.low), high: one.high + share * (other.high - one.high) }
}

/**
 * Shift that covers a share of the scores of simulated panels, by split conformal prediction: the k-th smallest of n with
 * k = ceil((n + 1) share) (Romano, Patterson and Candès, Advances in Neural Information Processing Systems 32 (2019), for
 * intervals whose ends are quantiles; recalled). No shift narrows an interval by more than half.
 */
export function conformalShift(scores: readonly number[], share: number): number {
  const sorted = scores.toSorted((one, other) => one - other)
  const rank = Math.min(sorted.length, Math.ceil((sorted.length + 1) * share))
  return Math.max(-0.5, sorted[rank - 1] ?? 0)
}
