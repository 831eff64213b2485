import type { MeasuredCoverage } from './interval-shifts.ts'

/** Written by `node build/coating-coverage.mjs`, from simulated panels whose seeds serve for nothing else. */
export const intervalCoverage: readonly MeasuredCoverage[] = [
  { readings: 15, panels: 400, area: 0.8925, volume: 0.9125 },
  { readings: 25, panels: 400, area: 0.92, volume: 0.8975 },
  { readings: 50, panels: 400, area: 0.9225, volume: 0.895 },
  { readings: 100, panels: 400, area: 0.915, volume: 0.925 },
]
