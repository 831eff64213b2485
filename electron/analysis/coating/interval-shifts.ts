/** What the readings of a panel showed, by the share of them that are more than paint. */
export const evidenceKinds = ['none', 'few', 'several', 'nearly all'] as const
export type EvidenceKind = (typeof evidenceKinds)[number]
export type Extent = 'area' | 'volume'

/** How far the ends of an interval are moved out, in units of the distance to its middle and a little more. */
export interface EndShifts {
  readonly low: number
  readonly high: number
}

/** End shifts of one number of readings, by what was measured and what the readings showed. */
export interface DensityShifts {
  readonly readings: number
  readonly shifts: Readonly<Record<Extent, Readonly<Record<EvidenceKind, EndShifts>>>>
}

/** Share of simulated panels whose truth the intervals held, at one number of readings. */
export interface MeasuredCoverage {
  readonly readings: number
  readonly panels: number
  readonly area: number
  readonly volume: number
}
