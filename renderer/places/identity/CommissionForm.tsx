import type { Commission } from '../../../shared-types/car.ts'
import { EntrySheet } from '../../parts-of-page/EntrySheet.tsx'
import { useEntry } from '../../parts-of-page/useEntry.ts'
import { change, loadRecord } from '../../store/ask.ts'
import { ExaminerFields, FurtherCommission, PurposeFields, ShownAsFields } from './CommissionFields.tsx'
import type { FormOfRecord } from './form-props.ts'

/** Amends the commission; the walk is loaded anew, because it follows the level of inspection. */
export function CommissionForm({ record, focusOn, onLeave }: FormOfRecord) {
  const entry = useEntry<Commission>({
    name: 'commission',
    initial: record.commission,
    focusOn,
    keep: async (commission) => {
      await change('commission.set', { commission })
      await loadRecord()
    },
    kept: onLeave,
  })
  return (
    <EntrySheet title="Amend the commission" over="who examines, for whom, what for" entry={entry} onLeave={onLeave}>
      <FurtherCommission field={entry.field} />
      <PurposeFields field={entry.field} />
      <ExaminerFields field={entry.field} />
      <ShownAsFields field={entry.field} />
    </EntrySheet>
  )
}
