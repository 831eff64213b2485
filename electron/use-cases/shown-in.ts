import type { RecordView } from '../../shared-types/record.ts'
import type { ShownUnits } from '../../shared-types/units.ts'

/** The units of a record alone, as a computation is asked to tell its words in. */
export const shownIn = ({ commission }: Pick<RecordView, 'commission'>): ShownUnits => ({
  coatingUnit: commission.coatingUnit,
  lengthUnit: commission.lengthUnit,
})
