import { create } from 'zustand'
import type { Paper } from '../../../shared-types/edition.ts'
import type { Problem } from '../../../shared-types/problem.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { ask, problemOf } from '../../store/ask.ts'
import { useRecordStore } from '../../store/record-store.ts'

interface PreviewStore {
  /** The newest preview on each paper: its id, and the state of the record it shows. */
  readonly made: Partial<Record<Paper, { readonly document: string; readonly state: string }>>
  readonly making: { readonly taskId: string; readonly state: string; readonly paper: Paper } | null
  /** What went wrong last, and for what it was asked. */
  readonly failed: { readonly state: string; readonly paper: Paper; readonly problem: Problem } | null
}

const none: PreviewStore = { made: {}, making: null, failed: null }

/** Previews made since the record was opened; they outlive leaving the place. */
export const usePreviewStore = create<PreviewStore>()(() => none)

/** What a preview depends on besides the paper: which record, and how far its journal had come. */
export const stateOf = ({ path, journalNumber }: RecordView): string => `${journalNumber} ${path}`

/** Makes the preview of the record as it is now, unless one is being made. */
export async function makePreview(record: RecordView, paper: Paper): Promise<void> {
  if (usePreviewStore.getState().making !== null) return
  const taskId = crypto.randomUUID()
  const state = stateOf(record)
  usePreviewStore.setState({ making: { taskId, state, paper }, failed: null })
  const end = (part: (before: PreviewStore) => Partial<PreviewStore>) =>
    usePreviewStore.setState((before) =>
      before.making?.taskId === taskId ? { ...part(before), making: null } : before,
    )
  try {
    const { document } = await ask('report.preview', { paper, taskId })
    end(({ made }) => ({ made: { ...made, [paper]: { document, state } } }))
  } catch (thrown) {
    end(() => ({ failed: { state, paper, problem: problemOf(thrown) } }))
  }
}

/** Ends the making of a preview that nobody waits for any longer. */
export function stopPreview(): void {
  const { making } = usePreviewStore.getState()
  if (making === null) return
  usePreviewStore.setState({ making: null })
  void ask('task.cancel', { taskId: making.taskId }).catch(() => undefined)
}

useRecordStore.subscribe(({ record }) => {
  if (record === null) usePreviewStore.setState(none)
})
