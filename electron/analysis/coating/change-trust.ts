import { changeCoverage } from './change-coverage.ts'
import type { Extent, MeasuredCoverage } from './interval-shifts.ts'
import { holdsEnough, type IntervalTrust, rowsBeside, trustOfRows } from './interval-trust.ts'

/** What the interval of a difference between maps of so many readings each may be called. */
export function changeTrust(
  readings: readonly [number, number],
  extent: Extent,
  measured: readonly MeasuredCoverage[] = changeCoverage,
): IntervalTrust {
  const least = measured[0]?.readings
  const fewest = Math.min(...readings)
  if (least === undefined || fewest < least)
    return {
      coverage: null,
      reason: `${fewest} readings are too few to tell a change: take at least ${least ?? 15} before the work and after it`,
    }
  const trust = trustOfRows(
    readings.flatMap((count) => rowsBeside(count, measured)),
    extent,
  )
  if (trust.coverage !== null) return trust
  const enough = measured.find((_, at) => measured.slice(at).every((later) => holdsEnough(later[extent])))
  const more = enough === undefined ? '' : `; from ${enough.readings} readings each time it would be`
  return { coverage: null, reason: `${trust.reason}${more}` }
}
