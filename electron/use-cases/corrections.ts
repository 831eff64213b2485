import type { CitedCoating, Correction, CorrectionDraft } from '../../shared-types/correction.ts'
import type { Exhibit } from '../../shared-types/exhibit.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { Spot } from '../../shared-types/reading.ts'
import type { RecordView } from '../../shared-types/record.ts'
import { requireCited } from './citations.ts'
import { numberedRow, numberedRows } from './numbered-rows.ts'
import { panelNameIn, requirePanel } from './panels-of-record.ts'
import type { UseCases } from './program.ts'
import { rowMark, shortened } from './row-marks.ts'
import { sendCommand } from './send-command.ts'

type CorrectionRow = Omit<Correction, 'number'>

/** Day an exhibit speaks of: when it was photographed, else when it was added. */
const dayOf = (exhibit: Exhibit): string => (exhibit.photograph?.takenAt ?? exhibit.addedAt).slice(0, 10)

/**
 * Verified needs something seen later than the work: an exhibit or a reading of the day it was done or after, or a finding
 * numbered after those it puts right (numbers are given in the order of time).
 */
function checkVerified(draft: CorrectionRow, now: RecordView): void {
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
  const laterReading = draft.coating?.after.some(({ readAt }) => readAt.slice(0, 10) >= doneOn) === true
  if (laterExhibit || laterFinding || laterReading) return
  const message =
    'Verified needs an exhibit, a finding or a reading from after the work. Add one under "after", or leave the correction as done.'
  throw notVerified(message, 'state')
}

const notVerified = (message: string, field: 'doneOn' | 'state'): ProblemError =>
  new ProblemError('rule-of-the-trade', message, { field: `draft.${field}`, instead: ['done'] })

function checkCost({ cost }: CorrectionRow): void {
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

/**
 * The cited readings as they stood when they were first cited: a spot amended since keeps the values the correction was
 * judged by. A spot is read before the work or after it, never both.
 */
function citedOf({ coating }: CorrectionDraft, now: RecordView, kept: CitedCoating | null): CitedCoating | null {
  if (coating === null) return null
  const { panelId, before, after } = coating
  requirePanel(now, panelId, 'draft.coating')
  const twice = before.find((number) => after.includes(number))
  if (twice !== undefined) throw notCited(`${rowMark('spots', twice)} cannot be read before the work and after it.`)
  const known = kept?.panelId === panelId ? [...kept.before, ...kept.after] : []
  const spotOf = (number: number): Spot => {
    const found = known.find((spot) => spot.number === number) ?? now.spots.find((spot) => spot.number === number)
    if (found === undefined) throw notCited(`There is no ${rowMark('spots', number)} in this record.`)
    if (found.panelId !== panelId)
      throw notCited(`${rowMark('spots', number)} was not read on the panel “${panelNameIn(now, panelId)}”.`)
    return found
  }
  return { panelId, before: [...new Set(before)].map(spotOf), after: [...new Set(after)].map(spotOf) }
}

const notCited = (message: string): ProblemError =>
  new ProblemError('input-refused', `${message} Take it out of the readings cited.`, { field: 'draft.coating' })

/** Work that puts something right, from planned to verified. */
export const correctionUseCases: Pick<UseCases, 'correction.add' | 'correction.amend' | 'correction.withdraw'> = {
  'correction.add': (program, input) =>
    sendCommand(program, 'correction.add', input, (draft, at) =>
      corrections.adding({ ...input.draft, coating: citedOf(input.draft, draft.now, null) }, draft, at),
    ),
  'correction.amend': (program, input) =>
    sendCommand(program, 'correction.amend', input, (draft, at) => {
      const kept = numberedRow(draft.now, 'corrections', input.number).coating
      const row = { ...input.draft, coating: citedOf(input.draft, draft.now, kept) }
      return corrections.amending(row, input.number, draft, at)
    }),
  'correction.withdraw': corrections.withdraw,
}
