import type { MeasuredCoverage } from './interval-shifts.ts'

/** Written by `node build/change-coverage.mjs`, from simulated panels before and after work whose seeds serve for nothing else. */
export const changeCoverage: readonly MeasuredCoverage[] = [
  { readings: 15, panels: 400, area: 0.93, volume: 0.9225 },
  { readings: 25, panels: 400, area: 0.9325, volume: 0.9475 },
  { readings: 50, panels: 400, area: 0.9275, volume: 0.9325 },
  { readings: 100, panels: 400, area: 0.9225, volume: 0.9 },
]
