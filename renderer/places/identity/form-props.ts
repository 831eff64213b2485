import type { RecordView } from '../../../shared-types/record.ts'

/** What every form of this place is told. */
interface FormHere {
  /** Name of the field the form opens at, where it is not the first. */
  readonly focusOn: string | undefined
  readonly onLeave: () => void
}

/** A form of a row of a register; null for a row to be added. */
export interface FormOfRow<Row> extends FormHere {
  readonly row: Row | null
}

/** A form of what there is once in a record. */
export interface FormOfRecord extends FormHere {
  readonly record: RecordView
}
