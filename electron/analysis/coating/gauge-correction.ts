import type { DeclaredError, ShimCheck } from '../../../shared-types/coating.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { fitStraightLine, readBackwards, type StraightLine } from '../statistics/straight-line.ts'
import { univariate } from '../statistics/univariate.ts'
import { gaugeUncertainty } from './gauge-error.ts'

/** How a gauge read its shims: reading = intercept + slope · thickness, and the thicknesses the line was fitted over. */
export interface GaugeCorrection {
  readonly line: StraightLine
  readonly fromUm: number
  readonly toUm: number
}

/** Spread of readings assumed where a shim was read once, um. Common practice, no source. */
const LEAST_SPREAD_UM = 1

/** Standard uncertainty of the mean of one check against its shim: repeatability and the shim's own. */
export function checkUncertainty({ readUm, shimUncertaintyUm }: ShimCheck): number {
  const { standardDeviation } = univariate(readUm)
  return Math.hypot(Math.max(LEAST_SPREAD_UM, standardDeviation ?? 0) / Math.sqrt(readUm.length), shimUncertaintyUm)
}

/**
 * Straight-line calibration from the checks on shims and bare metal.
 * @throws ProblemError when the checks stand at one thickness only: bare metal and one shim are the least.
 */
export function gaugeCorrection(checks: readonly ShimCheck[]): GaugeCorrection {
  const line = fitStraightLine(
    checks.map((check) => ({ x: check.shimUm, y: univariate(check.readUm).mean, u: checkUncertainty(check) })),
  )
  if (line === null || line.slope <= 0)
    throw new ProblemError(
      'rule-of-the-trade',
      'A correction needs checks at two thicknesses whose readings rise: read bare metal and at least one shim.',
      { field: 'checks' },
    )
  const shims = checks.map(({ shimUm }) => shimUm)
  return { line, fromUm: Math.min(...shims), toUm: Math.max(...shims) }
}

/** A reading put right by the line. `declared` stands for the gauge between its checks. */
export function correctReading({ line, fromUm, toUm }: GaugeCorrection, declared: DeclaredError, readUm: number) {
  const { x, u } = readBackwards(line, readUm, gaugeUncertainty(declared, readUm))
  return {
    thicknessUm: Math.max(0, x),
    standardUncertaintyUm: u,
    /** True outside the shims' span, where the correction is carried on beyond its checks. */
    beyondShims: x > toUm || x < fromUm,
  }
}
