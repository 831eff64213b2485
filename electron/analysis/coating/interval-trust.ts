import { intervalCoverage } from './interval-coverage.ts'
import type { Extent, MeasuredCoverage } from './interval-shifts.ts'

/** Shares that 400 panels may show when the truth is held nine times in ten: the middle 95 % of the binomial distribution. */
export const NINETY_BAND = [0.87, 0.9275] as const

const isNinety = (share: number): boolean => share >= NINETY_BAND[0] && share <= NINETY_BAND[1]

/**
 * Why an interval from so many readings may not be called one of 90 %, or null. It may where the numbers of readings
 * simulated on either side of it, or the largest below it, held the truth within the band.
 */
export function whyNotNinety(
  readings: number,
  extent: Extent,
  measured: readonly MeasuredCoverage[] = intervalCoverage,
): string | null {
  const least = measured.find((row) => isNinety(row[extent]))?.readings
  if (least === undefined) return 'no number of readings was shown to give an interval of 90 %'
  if (readings < least) return `${readings} readings are too few to call this 90 %: take at least ${least}`
  const above = measured.find((row) => row.readings >= readings) ?? measured.at(-1)
  const below = measured.findLast((row) => row.readings <= readings)
  const off = [below, above].find((row) => row !== undefined && !isNinety(row[extent]))
  if (off === undefined) return null
  const held = Math.round(100 * off[extent])
  return `at about ${off.readings} readings such intervals held the truth on ${held} of 100 simulated panels, so this is not called 90 %`
}
