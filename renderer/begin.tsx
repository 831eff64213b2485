import { flushSync } from 'react-dom'
import { createRoot } from 'react-dom/client'
import { Program } from './Program.tsx'
import { loadPlace } from './places-on-demand.ts'
import { loadRecord, problemOf } from './store/ask.ts'
import { door } from './store/door.ts'
import { acknowledge, useRecordStore } from './store/record-store.ts'
import { useScreenStore } from './store/screen-store.ts'

/** Takes up the record that the program already holds open; that none is open is no problem here. */
async function takeUpRecord(): Promise<void> {
  try {
    await loadRecord()
  } catch (thrown) {
    const problem = problemOf(thrown)
    if (problem.code !== 'no-record-open') useRecordStore.setState({ problem })
  }
}

/** Starts the program in the place of the first frame; when this returns, every key is heard. */
export function begin(): void {
  door().listen((event) => {
    if (event.event === 'record.changed') acknowledge(event.acknowledgement)
    if (event.event === 'record.closed') useRecordStore.setState({ record: null, panelList: null, keptAt: null })
  })
  void takeUpRecord()
  void loadPlace(useScreenStore.getState().place)
  const root = document.getElementById('root')
  if (root !== null) flushSync(() => createRoot(root).render(<Program />))
}
