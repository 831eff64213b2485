import { createRoot } from 'react-dom/client'
import './look/look.css'
import { applyTokens } from './look/apply-tokens.ts'
import { Program } from './Program.tsx'
import { loadRecord, problemOf } from './store/ask.ts'
import { door } from './store/door.ts'
import { acknowledge, useRecordStore } from './store/record-store.ts'
import { useScreenStore } from './store/screen-store.ts'

applyTokens(useScreenStore.getState().sheetName)

/** Takes up the record that the program already holds open; that none is open is no problem here. */
async function takeUpRecord(): Promise<void> {
  try {
    await loadRecord()
  } catch (thrown) {
    const problem = problemOf(thrown)
    if (problem.code !== 'no-record-open') useRecordStore.setState({ problem })
  }
}

door().listen((event) => {
  if (event.event === 'record.changed') acknowledge(event.acknowledgement)
  if (event.event === 'record.closed') useRecordStore.setState({ record: null, panelList: null, keptAt: null })
})
void takeUpRecord()

const root = document.getElementById('root')
if (root !== null) createRoot(root).render(<Program />)
