import type { TapeQuestionOf } from '../../../shared-types/tape-question.ts'
import { studCircleFrom } from '../../analysis/geometry/stud-circle.ts'
import { studPatterns } from '../../sheets/stud-patterns.ts'
import type { ShownLengths } from './shown-lengths.ts'
import { coverageWords, keptAs, offWords, tieWords, type Worked } from './tape-words.ts'

/** A size a sheet names, with where it stands. */
export interface NamedSize {
  readonly label: string
  readonly mm: number
  readonly source: string
}

const SAME_MM = 0.05
const NEAREST_SHOWN = 4

const stepWords = (step: number, studs: number): string => {
  if (step === 1) return 'neighbours'
  if (step * 2 === studs) return 'opposite studs'
  return step === 2 ? 'every second stud' : `studs ${step} apart`
}

/** Stud circle with the patterns of the sheet and of the list of that many studs, nearest first, and any tie. */
export function studCircleAnswer(
  question: TapeQuestionOf<'stud circle'>,
  shown: ShownLengths,
  ofSheet: readonly NamedSize[],
): Worked {
  const { kind: _kind, ...asked } = question
  const listed = studPatterns()
    .filter(({ diameterMm }) => !ofSheet.some(({ mm }) => Math.abs(mm - diameterMm) < SAME_MM))
    .map(({ label, studs, diameterMm, source }) => ({ label, studs, mm: diameterMm, source: `list: ${source}` }))
  const known = [...ofSheet.map((size) => ({ ...size, studs: asked.studs })), ...listed]
  const found = studCircleFrom({
    ...asked,
    patterns: known.map(({ label, studs, mm }) => ({ label, studs, diameterMm: mm })),
  })
  const { diameterMm, standardMm, expandedMm, patterns, wouldDecideMm } = found
  const possible = patterns.filter((pattern) => pattern.possible)
  const finer =
    possible.length > 1 && wouldDecideMm !== null
      ? ` ${shown.length(wouldDecideMm, wouldDecideMm)} would do; it is ${shown.length(expandedMm, expandedMm)}.`
      : ''
  const bySteps = [...new Set(asked.spacings.map(({ step }) => step))].map((step) => {
    const read = asked.spacings.filter((spacing) => spacing.step === step).map(({ mm }) => mm)
    return `${stepWords(step, asked.studs)} ${shown.asRead(read)}`
  })
  return {
    headline: shown.measured(diameterMm, expandedMm),
    coverage: coverageWords(asked.coverage, expandedMm / standardMm, null),
    decision: null,
    verdict: `${tieWords(
      possible.map(({ label }) => label),
      patterns.length,
      `patterns of ${asked.studs} studs`,
    )}${finer}`,
    candidates: patterns.slice(0, Math.max(possible.length, NEAREST_SHOWN)).map(({ label, offMm, possible: fits }) => ({
      label,
      source: known.find((pattern) => pattern.label === label)?.source ?? '',
      words: offWords(offMm, expandedMm, shown),
      possible: fits,
    })),
    lines: [
      {
        label: 'one circle',
        words: found.spacingsAgree
          ? 'The spacings agree with one circle within what the tool is good to.'
          : 'The spacings do not agree with one circle: measure again, count the studs between, or look for a stud moved or drilled anew.',
      },
    ],
    notes: [
      'Between centres. From the left flank of one stud to the left flank of the next is the same length.',
      'Each pull is taken as independent: an error of the tool itself stays the same however often it is read.',
    ],
    kept: keptAs(
      diameterMm,
      standardMm,
      `${asked.studs} studs; ${bySteps.join('; ')}; good to ${shown.asRead([asked.goodToMm])} each way; circle by D = s / sin(π k / n)`,
    ),
  }
}
