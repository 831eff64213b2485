import type { RecordView } from '../../../shared-types/record.ts'

/** What the lists under the inference show of a record, and nothing else of it: an observation changes none of it. */
export const carRowNames = [
  'readOnly',
  'sheets',
  'particulars',
  'commission',
  'carNumbers',
  'claims',
  'visits',
  'consents',
] as const satisfies readonly (keyof RecordView)[]

export type CarRows = Pick<RecordView, (typeof carRowNames)[number]>
