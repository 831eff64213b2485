import { change, problemOf } from './ask.ts'
import { useRecordStore } from './record-store.ts'

async function turnBack(name: 'journal.undo' | 'journal.redo'): Promise<void> {
  try {
    await change(name, {})
  } catch (thrown) {
    useRecordStore.setState({ problem: problemOf(thrown) })
  }
}

/** Takes back the last change of the record. */
export function undo(): void {
  void turnBack('journal.undo')
}

/** Does again what was taken back last. */
export function redo(): void {
  void turnBack('journal.redo')
}
