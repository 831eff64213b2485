import { format } from 'date-fns'
import type { RecordView } from '../../shared-types/record.ts'
import { useEntriesBegun } from '../store/draft-store.ts'
import { useRecordStore } from '../store/record-store.ts'
import { undo } from '../store/undo.ts'
import { ActionKey } from './ActionKey.tsx'

function seenAt(record: RecordView): string {
  const visit = record.visits.at(-1)
  if (visit === undefined) return 'not visited yet'
  const day = format(new Date(visit.beganAt), 'd MMM yyyy')
  return visit.place === '' ? `seen ${day}` : `seen at ${visit.place}, ${day}`
}

/** The line over every place: which car, which record, where it was seen, when the last change was kept. */
export function HeadLine() {
  const record = useRecordStore((state) => state.record)
  const keptAt = useRecordStore((state) => state.keptAt)
  const begun = useEntriesBegun()
  if (record === null) {
    return (
      <header className="head-line">
        <span className="head-title">No record is open</span>
      </header>
    )
  }
  const { title, maker } = record.particulars
  return (
    <header className="head-line">
      <span className="head-title">{title}</span>
      <span className="head-facts">
        {maker === '' ? null : <span>{maker}</span>}
        <span>
          record <span className="figures">{record.commission.recordNumber}</span>
        </span>
        <span>{seenAt(record)}</span>
      </span>
      <span className="head-kept">
        <span aria-live="off">
          {record.readOnly ? (
            'for reading only'
          ) : keptAt === null ? (
            'all kept'
          ) : (
            <>
              kept <span className="figures">{format(new Date(keptAt), 'HH:mm:ss')}</span>
            </>
          )}
          {begun === 0 ? null : `; ${begun} ${begun === 1 ? 'entry' : 'entries'} begun`}
        </span>
        <ActionKey
          keys="Ctrl+Z"
          label="undo"
          name={record.undoState.undo === null ? 'Undo: nothing to undo' : `Undo: ${record.undoState.undo}`}
          disabled={record.undoState.undo === null || record.readOnly}
          onAct={undo}
        />
      </span>
    </header>
  )
}
