import { intervalCoverage } from './interval-coverage.ts'
import type { Extent, MeasuredCoverage } from './interval-shifts.ts'

/** Shares that 400 panels may show when the truth is held nine times in ten: the middle 95 % of the binomial distribution. */
export const NINETY_BAND = [0.87, 0.9275] as const

/** What an interval may be called: one of 90 %, one of at least 90 %, or neither, and why. */
export type IntervalTrust =
  | { readonly coverage: 0.9; readonly called: '90 %' | 'at least 90 %' }
  | { readonly coverage: null; readonly reason: string }

/** Whether such intervals held the truth at least as often as those of 90 % do. */
export const holdsEnough = (share: number): boolean => share >= NINETY_BAND[0]

/**
 * What an interval from so many readings may be called: looked up at the numbers of readings simulated on either side of
 * it, or at the largest below it. One that held the truth more often than nine times in ten is called that.
 */
export function intervalTrust(
  readings: number,
  extent: Extent,
  measured: readonly MeasuredCoverage[] = intervalCoverage,
): IntervalTrust {
  const least = measured.find((row) => holdsEnough(row[extent]))?.readings
  if (least === undefined)
    return { coverage: null, reason: 'no number of readings was shown to give an interval of 90 %' }
  if (readings < least)
    return { coverage: null, reason: `${readings} readings are too few to call this 90 %: take at least ${least}` }
  return trustOfRows(rowsBeside(readings, measured), extent)
}

/** The numbers of readings simulated on either side of one. */
export const rowsBeside = (readings: number, measured: readonly MeasuredCoverage[]): MeasuredCoverage[] =>
  [
    measured.findLast((row) => row.readings <= readings),
    measured.find((row) => row.readings >= readings) ?? measured.at(-1),
  ].filter((row) => row !== undefined)

/** What all of these bear out together; where one held the truth too seldom, the one that held it least is named. */
export function trustOfRows(rows: readonly MeasuredCoverage[], extent: Extent): IntervalTrust {
  const worst = rows.toSorted((one, other) => one[extent] - other[extent])[0]
  if (worst !== undefined && !holdsEnough(worst[extent])) {
    const held = Math.round(100 * worst[extent])
    return {
      coverage: null,
      reason: `at about ${worst.readings} readings such intervals held the truth on ${held} of 100 simulated panels, so this is not called 90 %`,
    }
  }
  const more = rows.some((row) => row[extent] > NINETY_BAND[1])
  return { coverage: 0.9, called: more ? 'at least 90 %' : '90 %' }
}
