import { useState } from 'react'
import { PlacePage } from '../../parts-of-page/PlacePage.tsx'
import { NewRecordForm } from './NewRecordForm.tsx'
import { RecordsList } from './RecordsList.tsx'
import '../place-lines.css'
import './records.css'

/** Records: those the program knows, and the beginning of a new one. */
export function Records() {
  const [beginning, setBeginning] = useState(false)
  return (
    <PlacePage name="Records">
      {beginning ? (
        <NewRecordForm onLeave={() => setBeginning(false)} />
      ) : (
        <RecordsList onNew={() => setBeginning(true)} />
      )}
    </PlacePage>
  )
}
