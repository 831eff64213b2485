import type { RequestOutput } from '../../shared-types/contract.ts'
import type { IdentityView } from '../../shared-types/identity-view.ts'
import type { RecordView } from '../../shared-types/record.ts'
import type { ReferenceSheet } from '../../shared-types/reference-sheet.ts'
import type { TimeLineView } from '../../shared-types/time-line-view.ts'
import { dayNumber } from '../analysis/dating/calendar.ts'
import { timeLineFigure } from '../figures/time-line-figure.ts'
import type { CarRecord } from '../record/car-record.ts'
import { carDates } from './dating/car-dates.ts'
import { claimsOnTrial } from './dating/claims-on-trial.ts'
import { resolve } from './dating/conflict-arguments.ts'
import { conflictsInWords } from './dating/date-conflicts-in-words.ts'
import { datedParts } from './dating/dated-parts.ts'
import { BUILT, type DatedThings, together } from './dating/dated-things.ts'
import { odometerInWords } from './dating/odometer-order.ts'
import { papersAndVisits } from './dating/papers-and-visits.ts'
import { timeLineRows, worded } from './dating/time-line-rows.ts'
import { identityOf, shelfOf } from './identity-view.ts'
import type { UseCases } from './program.ts'
import { sheetsOfRecord } from './sheets-of-record.ts'

const NO_SHEET =
  'No reference sheet is in this record, so no date code is read and the building is bounded by the particulars and papers alone. Take a sheet in under Identity.'
const NOT_INFERRED =
  'The reference sheets leave no span of days for the building: the contradictions under Identity say why.'

const METHOD =
  'Every date is days from the first to the last. The order of things and the lead times of the parts narrow them together (Dechter, Meiri and Pearl 1991); what cannot all be is found as smallest sets (Reiter 1987). Claims are put to the test and narrow nothing. That a date agrees with the building does not show that the part came with this car.'

/** Everything dated, as the record holds it. */
export function datedThingsOf(
  view: RecordView,
  sheets: readonly ReferenceSheet[],
  identity: IdentityView | null,
): DatedThings {
  const parts = datedParts(view, sheets)
  return together([
    carDates(view, sheets, identity),
    parts,
    ...papersAndVisits(view),
    ...claimsOnTrial(view, sheets, parts.leads),
  ])
}

/** The time line of a record, from what is dated in it. */
export function timeLineFrom(view: RecordView, things: DatedThings, problem: string | null): TimeLineView {
  const resolved = resolve(things)
  const rows = timeLineRows(things, resolved)
  const conflicts = conflictsInWords(resolved.arguments, things, rows, view)
  const odometer = odometerInWords(view, conflicts.length + 1)
  const built = rows.find(({ id }) => id === BUILT)?.narrowed
  return {
    problem,
    built:
      built === undefined || (built.from === null && built.to === null)
        ? null
        : {
            ...worded(built),
            days: built.from === null || built.to === null ? null : dayNumber(built.to) - dayNumber(built.from) + 1,
          },
    rows: rows.filter(({ given, narrowed }) => given.length > 0 || narrowed.from !== null || narrowed.to !== null),
    conflicts: [...conflicts, ...odometer.conflicts],
    allConflictsFound: resolved.allConflictsFound,
    unread: things.unread,
    odometer: odometer.words,
    method: METHOD,
  }
}

/**
 * Everything dated on the car of a record.
 * @param identity what the car can still be, where it was computed already; null where the record holds no sheet
 */
export async function timeLineOf(record: CarRecord, identity: IdentityView | null): Promise<TimeLineView> {
  const view = record.view()
  const { sheets } = await sheetsOfRecord(record)
  const things = datedThingsOf(view, sheets, identity)
  const inferred = things.facts.some(({ id }) => id.startsWith('inferred '))
  const why = view.sheets.length === 0 ? NO_SHEET : (identity?.problem ?? NOT_INFERRED)
  return timeLineFrom(view, things, inferred ? null : why)
}

/** The last answer, by the hash of the journal it was worked out from: the same record is asked about again and again. */
let kept: { readonly journalHash: string; readonly answer: Promise<RequestOutput<'dates.timeLine'>> } | null = null

async function answerFor(record: CarRecord, shelf: string): Promise<RequestOutput<'dates.timeLine'>> {
  const identity = record.view().sheets.length === 0 ? null : await identityOf(record, { chainsOf: [], shelf })
  const view = await timeLineOf(record, identity)
  return { view, figure: timeLineFigure(view) }
}

export const timeLineUseCases: Pick<UseCases, 'dates.timeLine'> = {
  'dates.timeLine': async (program) => {
    const record = program.record()
    const { journalHash } = record.view()
    if (kept?.journalHash !== journalHash) {
      const own = { journalHash, answer: answerFor(record, shelfOf(program)) }
      kept = own
      // A failure is told to who asked, and not kept for who asks next.
      own.answer.catch(() => {
        if (kept === own) kept = null
      })
    }
    return kept.answer
  },
}
