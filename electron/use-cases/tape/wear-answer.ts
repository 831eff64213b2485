import type { TapeQuestionOf } from '../../../shared-types/tape-question.ts'
import { wearOf } from '../../analysis/geometry/drum-wear.ts'
import { repeatedReading } from '../../analysis/geometry/tape-reading.ts'
import type { ShownLengths } from './shown-lengths.ts'
import { coverageWords, decisionWords, keptAs, outlierLine, sourceLines, tieWords, type Worked } from './tape-words.ts'

/** A drum or disc against the sizes it may be of, and its wear against the limit of each. */
export function wearAnswer({ kind: _kind, ...asked }: TapeQuestionOf<'drum or disc'>, shown: ShownLengths): Worked {
  const { sizes } = wearOf(asked)
  const read = repeatedReading(asked.readingsMm, asked.goodToMm, asked.coverage)
  const { mean, standard, expanded } = read
  const possible = sizes.filter((size) => size.possible)
  const only = sizes.length === 1 ? sizes[0] : possible.length === 1 ? possible[0] : undefined
  const tie =
    sizes.length === 1
      ? ''
      : `${tieWords(
          possible.map(({ label }) => label),
          sizes.length,
          'sizes',
        )} `
  const outlier = outlierLine(asked.readingsMm, shown)
  return {
    headline: shown.measured(mean, expanded),
    coverage: coverageWords(asked.coverage, read.k, read.degreesOfFreedom),
    decision: only?.limit.decision ?? null,
    verdict:
      `${tie}${only === undefined ? '' : decisionWords(only.limit, expanded, shown, `the wear limit of ${only.label}`)}`.trim(),
    candidates: sizes.map(({ label, wearMm, limit, possible: fits }) => ({
      label,
      source: 'as entered',
      words: fits
        ? `worn by ${shown.measured(wearMm, expanded)}; limit: ${limit.decision}`
        : 'lies outside what is between new and worn out',
      possible: fits,
    })),
    lines: [...sourceLines(asked.readingsMm, read, shown), ...(outlier === null ? [] : [outlier])],
    notes: [
      'The limit that counts is the maker’s for this very part, cast on it or in its handbook.',
      'Within its limit is not the same as fit for use: cracks, heat marks, score and ovality are looked for apart.',
    ],
    kept: keptAs(
      mean,
      standard,
      `mean of ${shown.asRead(asked.readingsMm)}; good to ${shown.asRead([asked.goodToMm])} each way; nominal and limit ${asked.sizes.map(({ nominalMm, limitMm }) => shown.asRead([nominalMm, limitMm])).join(', ')}`,
    ),
  }
}
