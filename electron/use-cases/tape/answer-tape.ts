import type { TapeAnswer, TapeCandidate } from '../../../shared-types/tape-answer.ts'
import type { TapeQuestion } from '../../../shared-types/tape-question.ts'
import { tellExactnessOf } from '../../analysis/identity/tell-exactness.ts'
import { decidingTell } from '../measured-tells.ts'
import { diagonalsAnswer, trilaterationAnswer } from './distance-answers.ts'
import { gapAnswer } from './gap-answer.ts'
import { repeatedAnswer, weldPitchAnswer } from './repeated-answers.ts'
import { sheetThicknessAnswer } from './sheet-thickness-answer.ts'
import type { ShownLengths } from './shown-lengths.ts'
import { type NamedSize, studCircleAnswer } from './stud-circle-answer.ts'
import { offWords, type Worked } from './tape-words.ts'
import { wearAnswer } from './wear-answer.ts'

type Kept = TapeAnswer['kept']

/** What stands around the readings: the values of the tell they are compared with, and the joint in words. */
export interface TapeSurroundings {
  readonly ofSheet: readonly (NamedSize & { readonly spreadMm: number })[]
  readonly joint: string
}

const worked = (question: TapeQuestion, shown: ShownLengths, around: TapeSurroundings): Worked => {
  switch (question.kind) {
    case 'stud circle':
      return studCircleAnswer(question, shown, around.ofSheet)
    case 'drum or disc':
      return wearAnswer(question, shown)
    case 'gaps':
      return gapAnswer(question, shown, around.joint)
    case 'diagonals':
      return diagonalsAnswer(question, shown)
    case 'trilateration':
      return trilaterationAnswer(question, shown)
    case 'sheet thickness':
      return sheetThicknessAnswer(question, shown)
    case 'weld pitch':
      return weldPitchAnswer(question, shown)
    case 'repeated':
      return repeatedAnswer(question, shown)
  }
}

/** What comes of readings. Throws `ProblemError` with what to measure or enter again. */
export function answerTape(question: TapeQuestion, shown: ShownLengths, around: TapeSurroundings): TapeAnswer {
  const own = worked(question, shown, around)
  const told = tellWords(own.kept, shown, around)
  return {
    kind: question.kind,
    ...own,
    verdict: [own.verdict, told].filter((words) => words !== '').join(' '),
    candidates: [
      ...own.candidates,
      // A stud circle has taken the sheet's sizes among its patterns already.
      ...(question.kind === 'stud circle' ? [] : valuesOfTell(own.kept, shown, around)),
    ],
  }
}

/** Whether the measurement decides the tell, and if not how exact it would have to be. */
function tellWords({ valueMm, standardUncertaintyMm }: Kept, shown: ShownLengths, { ofSheet }: TapeSurroundings) {
  if (ofSheet.length < 2) return ''
  const expected = ofSheet.map(({ label, mm, spreadMm }) => ({ id: label, mean: mm, standardDeviation: spreadMm }))
  const question = { value: valueMm, standardUncertainty: standardUncertaintyMm, expected, ...decidingTell }
  const { decision, likeliest, wouldDecide } = tellExactnessOf(question)
  if (decision === 'fits none') return 'It fits none of the values of the sheet.'
  if (decision === 'decides') return `Of the values of the sheet it decides for ${likeliest}.`
  const would =
    wouldDecide === null
      ? 'no exactness would do, for it lies between them'
      : `± ${shown.length(2 * wouldDecide, wouldDecide)} would do; it is ± ${shown.length(2 * standardUncertaintyMm, standardUncertaintyMm)}`
  return `It does not decide between the values of the sheet: ${would} (k = 2).`
}

/** A value of a tell is possible where it differs from the measurement by no more than the uncertainty of both (k = 2). */
function valuesOfTell(
  { valueMm, uncertaintyMm }: Kept,
  shown: ShownLengths,
  { ofSheet }: TapeSurroundings,
): readonly TapeCandidate[] {
  return ofSheet
    .map(({ label, source, mm, spreadMm }) => ({
      label,
      source,
      off: valueMm - mm,
      expanded: Math.hypot(uncertaintyMm, 2 * spreadMm),
    }))
    .toSorted((one, other) => Math.abs(one.off) - Math.abs(other.off))
    .map(({ label, source, off, expanded }) => ({
      label,
      source,
      words: offWords(off, expanded, shown),
      possible: Math.abs(off) <= expanded,
    }))
}
