import type { RequestInput } from '../../shared-types/contract.ts'
import type { RecordView } from '../../shared-types/record.ts'

/** What the plan of a record is asked for with: its body, the names shown, what it measures and what it has. */
export function planAsked({ particulars, commission }: RecordView): RequestInput<'figures.plan'> {
  const { body, dimensions, conditions } = particulars
  return { body, names: commission.names, dimensions, conditions, lengthUnit: commission.lengthUnit }
}
