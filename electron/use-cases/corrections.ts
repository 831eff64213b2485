import type { CorrectionDraft } from '../../shared-types/correction.ts'
import type { Exhibit } from '../../shared-types/exhibit.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { RecordView } from '../../shared-types/record.ts'
import { requireCited } from './citations.ts'
import { numberedRows } from './numbered-rows.ts'
import type { UseCases } from './program.ts'
import { shortened } from './row-marks.ts'

/** Day an exhibit speaks of: when it was photographed, else when it was added. */
const dayOf = (exhibit: Exhibit): string => (exhibit.photograph?.takenAt ?? exhibit.addedAt).slice(0, 10)

/**
 * Verified needs something seen later than the work: an exhibit of the day it was done or after, or a finding
 * numbered after those it puts right (numbers are given in the order of time).
 */
function checkVerified(draft: CorrectionDraft, now: RecordView): void {
  if (draft.state !== 'verified') return
  const { doneOn } = draft
  if (doneOn === null) {
    throw notVerified('Say on what day the work was done, so that what verifies it can be seen to be later.', 'doneOn')
  }
  const laterExhibit = now.exhibits.some(
    (exhibit) =>
      draft.exhibitsAfter.includes(exhibit.number) &&
      !draft.exhibitsBefore.includes(exhibit.number) &&
      dayOf(exhibit) >= doneOn,
  )
  const laterFinding = draft.findingsAfter.some((number) => number > Math.max(0, ...draft.findings))
  if (laterExhibit || laterFinding) return
  const message =
    'Verified needs an exhibit or a finding from after the work. Add one under "after", or leave the correction as done.'
  throw notVerified(message, 'state')
}

const notVerified = (message: string, field: 'doneOn' | 'state'): ProblemError =>
  new ProblemError('rule-of-the-trade', message, { field: `draft.${field}`, instead: ['done'] })

function checkCost({ cost }: CorrectionDraft): void {
  if (cost === null || (cost.low <= cost.likely && cost.likely <= cost.high)) return
  const message = 'The likely cost lies between the low and the high one. Correct the figure that is out of order.'
  throw new ProblemError('input-refused', message, { field: 'draft.cost' })
}

const corrections = numberedRows({
  register: 'corrections',
  command: 'correction',
  noun: 'Correction',
  describe: (correction) => `${shortened(correction.what)}, ${correction.state}`,
  check: (draft, now) => {
    requireCited(now, 'findings', draft.findings, 'draft.findings')
    requireCited(now, 'findings', draft.findingsAfter, 'draft.findingsAfter')
    requireCited(now, 'exhibits', draft.exhibitsBefore, 'draft.exhibitsBefore')
    requireCited(now, 'exhibits', draft.exhibitsAfter, 'draft.exhibitsAfter')
    checkCost(draft)
    checkVerified(draft, now)
  },
})

/** Work that puts something right, from planned to verified. */
export const correctionUseCases: Pick<UseCases, 'correction.add' | 'correction.amend' | 'correction.withdraw'> = {
  'correction.add': corrections.add,
  'correction.amend': corrections.amend,
  'correction.withdraw': corrections.withdraw,
}
