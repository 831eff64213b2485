import type { MeasuredCoverage } from './interval-trust.ts'

/** Written by `node build/coating-coverage.mjs`, from simulated panels whose seeds serve for nothing else. */
export const intervalCoverage: readonly MeasuredCoverage[] = []
