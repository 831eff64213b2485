import type { ReactNode } from 'react'
import type { RecordView } from '../../shared-types/record.ts'
import { useRecordStore } from '../store/record-store.ts'
import { goToPlace } from '../store/screen-store.ts'
import { ActionKey } from './ActionKey.tsx'
import { EmptyPlace } from './EmptyPlace.tsx'
import { PlacePage } from './PlacePage.tsx'

/** A place that needs an open record: its page once there is one, and the way to one until then. */
export function RecordPlace(props: { readonly name: string; readonly children: (record: RecordView) => ReactNode }) {
  const record = useRecordStore((state) => state.record)
  return record === null ? <NoRecordPage name={props.name} /> : props.children(record)
}

/** A place while no record is open: the way to one. */
export function NoRecordPage({ name }: { readonly name: string }) {
  return (
    <PlacePage name={name}>
      <EmptyPlace head="No record is open">
        <p>Everything here belongs to one car. Open its record first, or begin a new one.</p>
        <ActionKey keys="Alt+1" label="go to Records" onAct={() => goToPlace('records')} />
      </EmptyPlace>
    </PlacePage>
  )
}
