import type { Commission, Particulars, VisitDraft } from '../../shared-types/car.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import { requireKnownConditions } from '../sheets/car-features.ts'
import { requireDimensions } from '../sheets/dimension-check.ts'
import { requireCited } from './citations.ts'
import { requireDrawable } from './drawable-body.ts'
import { numberedRows } from './numbered-rows.ts'
import type { UseCases } from './program.ts'
import { shortened } from './row-marks.ts'
import { rowChange, sendCommand } from './send-command.ts'

/** Throws when a visit ends before it began. */
export function checkVisit(visit: VisitDraft, field: string): void {
  if (visit.endedAt !== null && visit.endedAt < visit.beganAt) {
    throw new ProblemError('input-refused', 'The visit ends before it began. Correct one of the two times.', { field })
  }
}

/** Throws when the build interval ends before it begins. */
function checkBuildInterval(
  { builtFrom, builtTo }: { readonly builtFrom: string | null; readonly builtTo: string | null },
  field: string,
): void {
  if (builtFrom !== null && builtTo !== null && builtTo < builtFrom) {
    throw new ProblemError(
      'input-refused',
      'The car cannot have been built before the interval begins. Correct one of the two days.',
      {
        field,
      },
    )
  }
}

/** Throws when the particulars cannot be as entered: build interval, what the car has, what it measures. */
export function checkParticulars(
  entered: Particulars,
  { names, lengthUnit }: Pick<Commission, 'names' | 'lengthUnit'>,
): void {
  checkBuildInterval(entered, 'particulars.builtTo')
  requireKnownConditions(entered.conditions, 'particulars.conditions')
  requireDimensions(entered.body, entered.dimensions, { field: 'particulars.dimensions', names, lengthUnit })
  requireDrawable(entered, 'particulars.dimensions')
}

const visits = numberedRows({
  register: 'visits',
  command: 'visit',
  noun: 'Visit',
  describe: (visit) => shortened(visit.place === '' ? visit.beganAt.slice(0, 10) : visit.place),
  check: (visit) => checkVisit(visit, 'draft.endedAt'),
})

const carNumbers = numberedRows({
  register: 'carNumbers',
  command: 'carNumber',
  noun: 'Number',
  describe: (row) => shortened(row.asRead === '' ? `${row.kind}, ${row.howRead}` : `${row.kind}, ${row.asRead}`),
  check: (row, now) => requireCited(now, 'exhibits', row.exhibits, 'draft.exhibits'),
})

/** Particulars, commission, leave, visits and numbers of the car. */
export const identityUseCases: Pick<
  UseCases,
  | 'particulars.set'
  | 'commission.set'
  | 'consent.set'
  | 'visit.add'
  | 'visit.amend'
  | 'carNumber.add'
  | 'carNumber.amend'
  | 'carNumber.withdraw'
> = {
  'particulars.set': (program, input) =>
    sendCommand(program, 'particulars.set', input, ({ now }) => {
      checkParticulars(input.particulars, now.commission)
      return {
        changes: [rowChange('particulars', 'the', input.particulars)],
        label: `Particulars: ${shortened(input.particulars.title)}`,
      }
    }),
  'commission.set': (program, input) =>
    sendCommand(program, 'commission.set', input, () => ({
      changes: [rowChange('commission', 'the', input.commission)],
      label: `Commission: ${shortened(input.commission.recordNumber)}`,
    })),
  'consent.set': (program, input) =>
    sendCommand(program, 'consent.set', input, () => {
      const { step, given, done } = input.consent
      if (done.trim() !== '' && !given) {
        const message = `Note the owner's leave to ${step} before noting it as done: who gave it, and when.`
        throw new ProblemError('rule-of-the-trade', message, { field: 'consent.given' })
      }
      const words = given ? 'leave given' : 'no leave'
      return {
        changes: [rowChange('consents', step, input.consent)],
        label: `Leave to ${step}: ${words}${done.trim() === '' ? '' : ', done'}`,
      }
    }),
  'visit.add': visits.add,
  'visit.amend': visits.amend,
  'carNumber.add': carNumbers.add,
  'carNumber.amend': carNumbers.amend,
  'carNumber.withdraw': carNumbers.withdraw,
}
