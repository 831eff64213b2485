import { create } from 'zustand'
import type { ViewId } from '../../../shared-types/finding.ts'
import type { Problem } from '../../../shared-types/problem.ts'
import { ask, problemOf } from '../../store/ask.ts'
import { door } from '../../store/door.ts'
import { acknowledge, useRecordStore } from '../../store/record-store.ts'
import { useScreenStore } from '../../store/screen-store.ts'

export interface PhotographImport {
  readonly taskId: string
  /** Null: of no panel. */
  readonly panelId: string | null
  readonly done: number
  readonly all: number
  readonly ended: boolean
  readonly taken: readonly number[]
  readonly refused: readonly { readonly fileName: string; readonly problem: Problem }[]
  readonly problem: Problem | null
}

/** The import that runs, or the last one, with what it refused. */
export const useImportStore = create<{ readonly current: PhotographImport | null }>()(() => ({ current: null }))

/**
 * What an import said stands on its panel until that panel is put down, and in its record: who comes back looks at the
 * panel anew. One that still runs, or ended while another panel was in hand, has yet to be read.
 */
function forgetEnded(): void {
  useImportStore.setState(({ current }) => (current?.ended === true ? { current: null } : {}))
}
useScreenStore.subscribe(({ inHand }, before) => {
  const of = useImportStore.getState().current?.panelId
  if (inHand !== before.inHand && of === before.inHand) forgetEnded()
})
useRecordStore.subscribe(({ record }, before) => {
  if (record?.path !== before.record?.path) forgetEnded()
})

function update(taskId: string, part: Partial<PhotographImport>): void {
  useImportStore.setState(({ current }) =>
    current === null || current.taskId !== taskId ? {} : { current: { ...current, ...part } },
  )
}

/**
 * Takes photographs into the record as exhibits, of a panel where one is named. Bad ones are named; the others go in.
 * @returns numbers of the exhibits they became.
 */
export async function importPhotographs(
  files: readonly File[],
  panelId: string | null,
  view: ViewId | null,
): Promise<readonly number[]> {
  if (files.length === 0) return []
  const taskId = crypto.randomUUID()
  const all = files.length
  useImportStore.setState({
    current: { taskId, panelId, done: 0, all, ended: false, taken: [], refused: [], problem: null },
  })
  const stopListening = door().listen((event) => {
    if (event.event === 'task.progress' && event.taskId === taskId) update(taskId, { done: event.done, all: event.all })
  })
  try {
    const sources: { readonly from: 'upload'; readonly upload: string }[] = []
    for (const file of files) sources.push({ from: 'upload', upload: await door().upload(file) })
    const madeBy = useRecordStore.getState().record?.commission.examiner ?? ''
    const answer = await ask('exhibits.import', { taskId, sources, panelId, view, madeBy })
    for (const acknowledgement of answer.taken) acknowledge(acknowledgement)
    const taken = answer.taken.flatMap(({ number }) => (number === null ? [] : [number]))
    update(taskId, { ended: true, done: all, taken, refused: answer.refused })
    return taken
  } catch (thrown) {
    update(taskId, { ended: true, problem: problemOf(thrown) })
    return []
  } finally {
    stopListening()
  }
}

/** Stops the import that runs; photographs already taken stay. */
export function stopImport(): void {
  const current = useImportStore.getState().current
  if (current !== null && !current.ended) void ask('task.cancel', { taskId: current.taskId }).catch(() => {})
}
