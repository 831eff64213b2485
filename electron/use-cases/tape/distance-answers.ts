import type { TapeQuestionOf } from '../../../shared-types/tape-question.ts'
import { leanFromDiagonals } from '../../analysis/geometry/diagonals.ts'
import { trilaterate } from '../../analysis/geometry/trilateration.ts'
import { figure } from '../../report/wording/numbers.ts'
import type { ShownLengths } from './shown-lengths.ts'
import { coverageWords, decisionWords, keptAs, normalFactor, type Worked } from './tape-words.ts'

/** Two diagonals: their difference, the lean it means, and what equal ones do not prove. */
export function diagonalsAnswer({ kind: _kind, ...asked }: TapeQuestionOf<'diagonals'>, shown: ShownLengths): Worked {
  const { differenceMm, expandedMm, leanMm, limit, notes } = leanFromDiagonals(asked)
  const k = normalFactor(asked.coverage)
  const apart =
    Math.abs(differenceMm) > expandedMm
      ? 'The diagonals differ by more than the uncertainty.'
      : 'No difference that the uncertainty does not cover; that does not prove a rectangle.'
  const limits =
    asked.limitMm === null ? '' : `a difference of ${shown.length(asked.limitMm, asked.limitMm / 10)} either way`
  return {
    headline: `difference ${shown.measured(differenceMm, expandedMm)}`,
    coverage: coverageWords(asked.coverage, k, null),
    decision: limit?.decision ?? null,
    verdict: `${apart}${limit === null ? '' : ` ${decisionWords(limit, expandedMm, shown, limits)}`}`,
    candidates: [],
    lines: [
      {
        label: 'lean',
        words: `${shown.length(leanMm, expandedMm)} of one end along the other, e = (d1² − d2²) / 4 w`,
      },
    ],
    notes,
    kept: keptAs(
      differenceMm,
      expandedMm / k,
      `diagonals ${shown.asRead([asked.firstMm, asked.secondMm])}; width and length ${shown.asRead([asked.widthMm, asked.lengthMm])}; each good to ${shown.asRead([asked.goodToMm])} each way`,
    ),
  }
}

/** A point from its distances to known ones, with what each distance is off. */
export function trilaterationAnswer(question: TapeQuestionOf<'trilateration'>, shown: ShownLengths): Worked {
  const { from, uMm, coverage } = question
  const { xMm, yMm, uxMm, uyMm, residuals, misfit, misfitLimit, fits } = trilaterate({ from, uMm })
  const k = normalFactor(coverage)
  const y = shown.measured(yMm, k * uyMm)
  const freedom = from.length - 2
  return {
    headline: `x ${shown.measured(xMm, k * uxMm)}, y ${y}`,
    coverage: coverageWords(coverage, k, null),
    decision: null,
    verdict: fits
      ? `The ${from.length} distances agree with one point: misfit ${figure(misfit, 1)}, chance gives up to ${figure(misfitLimit, 1)} nineteen times of twenty.`
      : `The distances do not agree with one point: misfit ${figure(misfit, 1)}, where chance gives up to ${figure(misfitLimit, 1)} nineteen times of twenty. One is wrong, or what they start from is bent.`,
    candidates: [],
    lines: residuals.map(({ label, mm }) => ({
      label: `residual from ${label}`,
      words: shown.length(mm, uMm),
    })),
    notes: [
      freedom === 1
        ? 'Three distances leave one to check by: a fourth would say which one is off.'
        : `${from.length} distances leave ${freedom} to check by.`,
      'Distances lie in one plane: hold the tape level, or plumb the points to the floor.',
    ],
    kept: keptAs(
      xMm,
      uxMm,
      `along x; along y ${y}; least squares from ${from.map(({ label, distanceMm }) => `${label} ${shown.asRead([distanceMm])}`).join('; ')}; standard uncertainty of each ${shown.length(uMm, uMm)}`,
    ),
  }
}
