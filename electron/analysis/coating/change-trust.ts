import { changeCoverage } from './change-coverage.ts'
import type { Extent, MeasuredCoverage } from './interval-shifts.ts'
import { NINETY_BAND } from './interval-trust.ts'

/** What may be said of the interval of a difference. */
export interface ChangeTrust {
  /** 0.9 where intervals from so many readings held the truth as often as one of 90 % does; else null. */
  readonly coverage: number | null
  /** Why it is not called one of 90 %; null where it is. */
  readonly reason: string | null
  /** True where such intervals held the truth at least that often: then a side of nought may be told. */
  readonly tellsSides: boolean
}

/**
 * Trust in a difference between maps of so many readings each. Looked up at the numbers of readings simulated on either side
 * of both; of several that lie outside the band the one furthest from it is named.
 */
export function changeTrust(
  readings: readonly [number, number],
  extent: Extent,
  measured: readonly MeasuredCoverage[] = changeCoverage,
): ChangeTrust {
  const least = measured[0]?.readings
  const fewest = Math.min(...readings)
  if (least === undefined || fewest < least)
    return {
      coverage: null,
      reason: `${fewest} readings are too few to tell a change: take at least ${least ?? 15} before the work and after it`,
      tellsSides: false,
    }
  const rows = readings.flatMap((count) => [
    measured.findLast((row) => row.readings <= count),
    measured.find((row) => row.readings >= count) ?? measured.at(-1),
  ])
  const off = rows.flatMap((row) => (row === undefined || isNinety(row[extent]) ? [] : [row]))
  const [first] = off
  if (first === undefined) return { coverage: 0.9, reason: null, tellsSides: true }
  const worst = off.reduce((most, row) => (beside(row[extent]) > beside(most[extent]) ? row : most), first)
  const enough = measured.find((_, at) => measured.slice(at).every((later) => isNinety(later[extent])))
  const more = enough === undefined ? '' : `; from ${enough.readings} readings each time it would be`
  return {
    coverage: null,
    reason: `at about ${worst.readings} readings such intervals held the truth on ${Math.round(100 * worst[extent])} of 100 simulated panels, so this is not called 90 %${more}`,
    tellsSides: off.every((row) => row[extent] > NINETY_BAND[1]),
  }
}

const isNinety = (share: number): boolean => beside(share) === 0
const beside = (share: number): number => Math.max(0, NINETY_BAND[0] - share, share - NINETY_BAND[1])
