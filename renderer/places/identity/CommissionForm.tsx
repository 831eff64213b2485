import type { Commission } from '../../../shared-types/car.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { EditSheet } from '../../parts-of-page/EditSheet.tsx'
import { useEntry } from '../../parts-of-page/useEntry.ts'
import { change, loadRecord } from '../../store/ask.ts'
import { ExaminerFields, FurtherCommission, PurposeFields, ShownAsFields } from './CommissionFields.tsx'

/** Amends the commission; the walk is loaded anew, because it follows the level of inspection. */
export function CommissionForm({ record, onLeave }: { readonly record: RecordView; readonly onLeave: () => void }) {
  const entry = useEntry<Commission>({
    name: 'commission',
    initial: record.commission,
    keep: async (commission) => {
      await change('commission.set', { commission })
      await loadRecord()
    },
    kept: onLeave,
  })
  return (
    <EditSheet
      title="Amend the commission"
      over="who examines, for whom, what for"
      onKeep={() => void entry.keep()}
      onLeave={onLeave}
      problem={entry.problemOfAll}
      busy={entry.busy}
      onStartOver={entry.begun ? entry.startOver : undefined}
    >
      <FurtherCommission field={entry.field} />
      <PurposeFields field={entry.field} />
      <ExaminerFields field={entry.field} />
      <ShownAsFields field={entry.field} />
    </EditSheet>
  )
}
