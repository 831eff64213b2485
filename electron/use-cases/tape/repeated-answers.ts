import type { TapeQuestionOf } from '../../../shared-types/tape-question.ts'
import { checkLengths, repeatedReading } from '../../analysis/geometry/tape-reading.ts'
import { pitchOfWelds } from '../../analysis/geometry/weld-pitch.ts'
import { decideAgainstLimits } from '../../analysis/statistics/limit-decision.ts'
import type { ShownLengths } from './shown-lengths.ts'
import { coverageWords, decisionWords, keptAs, outlierLine, sourceLines, type Worked } from './tape-words.ts'

/** "3.5 to 4.5 mm", "at most 4.5 mm", "at least 3.5 mm". */
function limitsText(lowerMm: number | null, upperMm: number | null, shown: ShownLengths): string {
  if (lowerMm === null) return `at most ${shown.asRead([upperMm ?? 0])}`
  if (upperMm === null) return `at least ${shown.asRead([lowerMm])}`
  return `${shown.asRead([lowerMm])} to ${shown.asRead([upperMm])}`
}

/** One length read again and again: types A and B, the one that stands out, and limits where there are any. */
export function repeatedAnswer(question: TapeQuestionOf<'repeated'>, shown: ShownLengths): Worked {
  const { readingsMm, goodToMm, lowerMm, upperMm, coverage } = question
  checkLengths(readingsMm, 'readingsMm')
  const read = repeatedReading(readingsMm, goodToMm, coverage)
  const decided =
    lowerMm === null && upperMm === null
      ? null
      : decideAgainstLimits({ value: read.mean, expanded: read.expanded, lower: lowerMm, upper: upperMm, unit: 'mm' })
  return {
    ...common(readingsMm, read, shown, coverage),
    decision: decided?.decision ?? null,
    verdict:
      decided === null
        ? ''
        : decisionWords(decided, read.expanded, shown, `the limits, ${limitsText(lowerMm, upperMm, shown)}`),
    notes: ['What the tool is good to does not grow less by reading it more often.'],
    kept: keptAs(
      read.mean,
      read.standard,
      `mean of ${readingsMm.length}: ${shown.asRead(readingsMm)}; good to ${shown.asRead([goodToMm])} each way`,
    ),
  }
}

/** Pitch of a row of spot welds: mean, spread, the one that stands out, against what the sheet says. */
export function weldPitchAnswer(question: TapeQuestionOf<'weld pitch'>, shown: ShownLengths): Worked {
  const { kind: _kind, ...asked } = question
  const { pitchesMm, goodToMm, expected, coverage } = asked
  const { standardDeviationMm, limit } = pitchOfWelds(asked)
  const read = repeatedReading(pitchesMm, goodToMm, coverage)
  const { lines, ...rest } = common(pitchesMm, read, shown, coverage)
  return {
    ...rest,
    decision: limit?.decision ?? null,
    verdict:
      limit === null || expected === null
        ? ''
        : decisionWords(
            limit,
            read.expanded,
            shown,
            `${limitsText(expected.lowMm, expected.highMm, shown)} for the mean`,
          ),
    lines: [
      {
        label: 'spread',
        words: `${shown.length(standardDeviationMm, standardDeviationMm / 3)} from one weld to the next`,
      },
      ...lines,
    ],
    notes: ['Regularity alone does not say who made the welds: jigs and careful hands both make it.'],
    kept: keptAs(
      read.mean,
      read.standard,
      `mean of ${pitchesMm.length} pitches: ${shown.asRead(pitchesMm)}; good to ${shown.asRead([goodToMm])} each way`,
    ),
  }
}

function common(
  values: readonly number[],
  read: ReturnType<typeof repeatedReading>,
  shown: ShownLengths,
  coverage: number,
) {
  const outlier = outlierLine(values, shown)
  return {
    headline: shown.measured(read.mean, read.expanded),
    coverage: coverageWords(coverage, read.k, read.degreesOfFreedom),
    candidates: [],
    lines: [...sourceLines(values, read, shown), ...(outlier === null ? [] : [outlier])],
  }
}
