import type { DeclaredError, ShimCheck } from '../../../shared-types/coating.ts'
import type { CoatingMeasures } from '../../../shared-types/coating-measures.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { correctReading, type GaugeCorrection, gaugeCorrection } from './gauge-correction.ts'
import { coverOfReading, type JudgedCheck, judgeChecks, type ReadingCover } from './gauge-drift.ts'
import { declaredLimit, gaugeUncertainty } from './gauge-error.ts'

/** A gauge with what its checks on shims and bare metal say of it. */
export interface CheckedGauge {
  readonly declared: DeclaredError
  readonly judged: readonly JudgedCheck[]
  /** Null where the checks stand at one thickness, or there are none: readings are then taken as read. */
  readonly correction: GaugeCorrection | null
  /** What was checked, found and done about it, in sentences. */
  readonly lines: readonly string[]
}

/** Judges the checks of a gauge and fits its correction where they allow one. */
export function checkedGauge(
  checks: readonly ShimCheck[],
  declared: DeclaredError,
  measures: CoatingMeasures,
): CheckedGauge {
  const judged = judgeChecks(checks, declared)
  const correction = correctionOrNone(checks)
  const lines =
    checks.length === 0
      ? [
          'The gauge was never checked on a shim or bare metal: readings are taken as read, and nothing vouches for them.',
        ]
      : [
          correctionWords(checks, correction, measures),
          failedWords(judged, declared, measures),
          driftWords(judged, measures),
        ].filter((line) => line !== '')
  return { declared, judged, correction, lines }
}

function correctionOrNone(checks: readonly ShimCheck[]): GaugeCorrection | null {
  try {
    return gaugeCorrection(checks)
  } catch (fault) {
    if (fault instanceof ProblemError) return null
    throw fault
  }
}

/** A reading put right by the checks, with its standard uncertainty, how its checks stand behind it, and what is to be known of it. */
export interface CheckedReading {
  readonly um: number
  readonly standardUncertaintyUm: number
  readonly cover: ReadingCover
  readonly beyondShims: boolean
}

/** Puts one reading right; `corrects` is false for a mode the checks were not made in. */
export function checkedReading(
  { declared, judged, correction }: CheckedGauge,
  readUm: number,
  readAt: string,
  corrects: boolean,
): CheckedReading {
  const cover = coverOfReading(readAt, judged)
  if (correction === null || !corrects)
    return { um: readUm, standardUncertaintyUm: gaugeUncertainty(declared, readUm), cover, beyondShims: false }
  const { thicknessUm, standardUncertaintyUm, beyondShims } = correctReading(correction, declared, readUm)
  return { um: thicknessUm, standardUncertaintyUm, cover, beyondShims }
}

function correctionWords(
  checks: readonly ShimCheck[],
  correction: GaugeCorrection | null,
  { fineThickness, notedThickness }: CoatingMeasures,
): string {
  if (correction === null)
    return `${counted(checks.length, 'check')} at one thickness only: no correction can be fitted, readings are taken as read. Bare metal and one shim are the least.`
  const { line, fromUm, toUm } = correction
  const [offset, slope] = [Math.sqrt(line.interceptVariance), Math.sqrt(line.slopeVariance)]
  return `Corrected by a straight line through ${counted(checks.length, 'check')} on ${fromUm === 0 ? 'bare metal' : notedThickness.text(fromUm)} and shims up to ${notedThickness.text(toUm)}: reading = ${fineThickness.text(line.intercept)} + ${line.slope.toFixed(4)} · thickness (standard uncertainties ${fineThickness.text(offset)} and ${slope.toFixed(4)}). Between its checks the gauge keeps its declared error.`
}

function failedWords(
  judged: readonly JudgedCheck[],
  declared: DeclaredError,
  { fineThickness, notedThickness }: CoatingMeasures,
): string {
  const failed = judged.filter(({ passed }) => !passed)
  if (failed.length === 0) return 'No check lies beyond the declared error by more than its own uncertainty.'
  const each = failed.map(
    ({ check, deviationUm }) =>
      `${fineThickness.signed(deviationUm)} on ${check.shimUm === 0 ? 'bare metal' : `the shim of ${notedThickness.text(check.shimUm)}`}, declared ${fineThickness.text(declaredLimit(declared, check.shimUm))}`,
  )
  return `${counted(failed.length, 'check')} failed: ${each.join('; ')}. Readings beside a failed check are marked and kept; read them again.`
}

function driftWords(judged: readonly JudgedCheck[], { fineThickness }: CoatingMeasures): string {
  const drifts = judged.flatMap(({ drift }) => drift ?? [])
  if (drifts.length === 0) return 'No shim was checked twice, so drift was not looked for.'
  const real = drifts.filter((drift) => drift.real)
  const largest = drifts.reduce((most, drift) => (Math.abs(drift.um) > Math.abs(most.um) ? drift : most))
  return `Drift: ${counted(drifts.length, 'change')} between checks on one shim; ${real.length === 0 ? 'none' : real.length} beyond its 95 % limit (one in twenty is by chance). The largest is ${fineThickness.signed(largest.um)} ± ${fineThickness.text(2 * largest.standardUncertaintyUm)}.`
}

const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`
