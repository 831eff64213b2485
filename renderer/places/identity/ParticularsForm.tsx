import type { Particulars } from '../../../shared-types/car.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { EntrySheet } from '../../parts-of-page/EntrySheet.tsx'
import { useEntry } from '../../parts-of-page/useEntry.ts'
import { change, loadRecord } from '../../store/ask.ts'
import { FirstParticulars, FurtherParticulars } from './ParticularsFields.tsx'

/** Amends the particulars; the list of panels is loaded anew, because it follows the body. */
export function ParticularsForm({ record, onLeave }: { readonly record: RecordView; readonly onLeave: () => void }) {
  const entry = useEntry<Particulars>({
    name: 'particulars',
    initial: record.particulars,
    keep: async (particulars) => {
      await change('particulars.set', { particulars })
      await loadRecord()
    },
    kept: onLeave,
  })
  return (
    <EntrySheet title="Amend the particulars" over="as told or as known" entry={entry} onLeave={onLeave}>
      <FirstParticulars field={entry.field} names={record.commission.names} />
      <FurtherParticulars field={entry.field} />
    </EntrySheet>
  )
}
