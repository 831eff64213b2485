import type { MeasuredCoverage } from './interval-shifts.ts'

/** Written by `node build/coating-coverage.mjs`, from simulated panels whose seeds serve for nothing else. */
export const intervalCoverage: readonly MeasuredCoverage[] = [
  { readings: 15, panels: 400, area: 0.9075, volume: 0.9025 },
  { readings: 25, panels: 400, area: 0.8925, volume: 0.92 },
  { readings: 50, panels: 400, area: 0.905, volume: 0.905 },
  { readings: 100, panels: 400, area: 0.9175, volume: 0.89 },
]
