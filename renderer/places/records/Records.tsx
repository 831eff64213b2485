import { useState } from 'react'
import { PlacePage } from '../../parts-of-page/PlacePage.tsx'
import { NewRecordForm } from './NewRecordForm.tsx'
import { RecordsList } from './RecordsList.tsx'
import { OwnSheets } from './sheets/OwnSheets.tsx'
import { useSheetDesk } from './sheets/sheet-desk-store.ts'
import '../place-lines.css'
import './records.css'

/** Records: those the program knows, the beginning of a new one, and reference sheets of the user's own. */
export function Records() {
  const [beginning, setBeginning] = useState(false)
  const sheets = useSheetDesk((state) => state.shown)
  return (
    <PlacePage name="Records">
      {sheets ? (
        <OwnSheets />
      ) : beginning ? (
        <NewRecordForm onLeave={() => setBeginning(false)} />
      ) : (
        <RecordsList onNew={() => setBeginning(true)} />
      )}
    </PlacePage>
  )
}
