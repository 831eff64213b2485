import type { DeclaredError, ShimCheck } from '../../../shared-types/coating.ts'
import { studentQuantile } from '../statistics/quantiles.ts'
import { univariate } from '../statistics/univariate.ts'
import { checkUncertainty } from './gauge-correction.ts'
import { declaredLimit } from './gauge-error.ts'

/** One check judged: its deviation from the shim with uncertainty, and what has changed since the last one like it. */
export interface JudgedCheck {
  readonly check: ShimCheck
  readonly deviationUm: number
  readonly standardUncertaintyUm: number
  /** False when the deviation exceeds the declared error by more than its own uncertainty allows (k = 2). */
  readonly passed: boolean
  /** Change since the last check on the same shim; null for the first. `real` at 95 %. */
  readonly drift: { readonly um: number; readonly standardUncertaintyUm: number; readonly real: boolean } | null
}

/** Checks in the order of time. The shim's own uncertainty cancels out of a drift. */
export function judgeChecks(checks: readonly ShimCheck[], declared: DeclaredError): JudgedCheck[] {
  const inTime = checks.toSorted((one, other) => (one.at < other.at ? -1 : one.at > other.at ? 1 : 0))
  return inTime.map((check, at) => {
    const deviationUm = univariate(check.readUm).mean - check.shimUm
    const standardUncertaintyUm = checkUncertainty(check)
    const last = inTime.slice(0, at).findLast(({ shimUm }) => shimUm === check.shimUm)
    return {
      check,
      deviationUm,
      standardUncertaintyUm,
      passed: Math.abs(deviationUm) <= declaredLimit(declared, check.shimUm) + 2 * standardUncertaintyUm,
      drift: last === undefined ? null : driftSince(last, check),
    }
  })
}

function driftSince(last: ShimCheck, check: ShimCheck) {
  const um = univariate(check.readUm).mean - univariate(last.readUm).mean
  const repeatability = (one: ShimCheck): number => checkUncertainty({ ...one, shimUncertaintyUm: 0 })
  const standardUncertaintyUm = Math.hypot(repeatability(last), repeatability(check))
  const degreesOfFreedom = Math.max(1, last.readUm.length + check.readUm.length - 2)
  return {
    um,
    standardUncertaintyUm,
    real: Math.abs(um) > studentQuantile(0.975, degreesOfFreedom) * standardUncertaintyUm,
  }
}

/** How far the checks around a reading stand behind it. */
export type ReadingCover =
  | 'checked before and after'
  | 'no check before'
  | 'no check after'
  | 'a check beside it failed'

/** Cover of a reading taken at an instant, from the nearest checks before and after it. */
export function coverOfReading(readAt: string, judged: readonly JudgedCheck[]): ReadingCover {
  const before = judged.filter(({ check }) => check.at <= readAt)
  const after = judged.filter(({ check }) => check.at > readAt)
  const lastAt = before.at(-1)?.check.at
  const nextAt = after[0]?.check.at
  const beside = judged.filter(({ check }) => check.at === lastAt || check.at === nextAt)
  if (beside.some(({ passed }) => !passed)) return 'a check beside it failed'
  if (before.length === 0) return 'no check before'
  return after.length === 0 ? 'no check after' : 'checked before and after'
}
