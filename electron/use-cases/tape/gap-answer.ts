import type { TapeQuestionOf } from '../../../shared-types/tape-question.ts'
import { gapsOf } from '../../analysis/geometry/gaps.ts'
import type { ShownLengths } from './shown-lengths.ts'
import { coverageWords, keptAs, normalFactor, type Worked } from './tape-words.ts'

const shownOrNot = (value: number, expanded: number, what: string): string =>
  Math.abs(value) > expanded ? `${what} is shown` : `no ${what} is shown`

/** Gaps along a joint, or how flush its panels stand: mean, taper and the difference of the sides. */
export function gapAnswer(question: TapeQuestionOf<'gaps'>, shown: ShownLengths, joint: string): Worked {
  const { kind: _kind, jointId: _joint, placesMeasured, ...asked } = question
  const { sides, differenceMm, expandedDifferenceMm } = gapsOf(asked)
  const k = normalFactor(asked.coverage)
  const u = asked.goodToMm / Math.sqrt(3)
  const [first] = sides
  const both = differenceMm !== null && expandedDifferenceMm !== null
  const value = both ? differenceMm : (first?.taperMm ?? 0)
  const expanded = both ? expandedDifferenceMm : (first?.expandedTaperMm ?? 0)
  const rows = { left: asked.left, right: asked.right ?? [] }
  const sideName = (side: 'left' | 'right') => (both ? side : 'along the joint')
  const tapers = sides.map(
    ({ side, taperMm, expandedTaperMm }) =>
      `${both ? `${side}: ` : ''}${shownOrNot(taperMm, expandedTaperMm, 'taper')}`,
  )
  const means = sides.map(({ side, meanMm }) => ({
    label: both ? `mean ${side}` : 'mean',
    words: shown.measured(meanMm, (k * u) / Math.sqrt(rows[side].length)),
  }))
  return {
    headline: `${both ? 'left less right ' : 'taper '}${shown.measured(value, expanded)}`,
    coverage: coverageWords(asked.coverage, k, null),
    decision: null,
    verdict:
      `${[...(both ? [shownOrNot(value, expanded, 'difference of the sides')] : []), ...tapers].join('; ')}.`.replace(
        /^./u,
        (letter) => letter.toUpperCase(),
      ),
    candidates: [],
    lines: [
      ...(joint === '' ? [] : [{ label: 'joint', words: joint }]),
      ...means,
      ...sides.map(({ side, taperMm, expandedTaperMm, rangeMm }) => ({
        label: `taper ${sideName(side)}`,
        words: `${shown.measured(taperMm, expandedTaperMm)} from the first place to the last; least to greatest ${shown.length(rangeMm, asked.goodToMm)}`,
      })),
      { label: 'places', words: placesMeasured ? 'as entered' : 'taken as evenly spaced' },
    ],
    notes: [
      ...(asked.of === 'flush'
        ? ['Above nothing: the first panel named stands proud; below nothing: it stands back.']
        : []),
      'No width is right for every car, and evenness can itself be a sign of later work: nothing is passed or failed here.',
    ],
    kept: keptAs(
      value,
      expanded / k,
      `${asked.of} ${sides.map(({ side }) => `${both ? `${side} ` : ''}${shown.asRead(rows[side].map(({ gapMm }) => gapMm))}`).join(', ')}; good to ${shown.asRead([asked.goodToMm])} each way; ${joint === '' ? 'joint not named' : joint}`,
    ),
  }
}
