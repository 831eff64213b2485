import { create } from 'zustand'
import type { Caution } from '../../shared-types/caution.ts'
import type { PanelList } from '../../shared-types/panel.ts'
import type { PartDefinition } from '../../shared-types/part.ts'
import type { Problem } from '../../shared-types/problem.ts'
import { type Acknowledgement, type Change, type RecordView, registerKeys } from '../../shared-types/record.ts'

/** What the main process said, and nothing else: the open record, its panels and the parts list. */
export interface RecordState {
  readonly record: RecordView | null
  readonly panelList: PanelList | null
  readonly partList: readonly PartDefinition[]
  readonly cautions: readonly Caution[]
  /** Time of the last change that is durable, for the word "kept" at the head of the page. */
  readonly keptAt: string | null
  /** A problem that belongs to no field; shown at the head of the working area until the next success. */
  readonly problem: Problem | null
}

export const useRecordStore = create<RecordState>()(() => ({
  record: null,
  panelList: null,
  partList: [],
  cautions: [],
  keptAt: null,
  problem: null,
}))

function withChange(record: RecordView, change: Change): RecordView {
  const key = registerKeys[change.register]
  if (key === null) return change.after === null ? record : { ...record, [change.register]: change.after }
  const keyOf = (row: object): string => String((row as Record<string, unknown>)[key])
  const rows = record[change.register] as readonly object[]
  const found = rows.findIndex((row) => keyOf(row) === change.key)
  const next = [...rows]
  if (change.after === null) {
    if (found >= 0) next.splice(found, 1)
  } else if (found >= 0) {
    next[found] = change.after
  } else {
    const after = change.after as object
    const place = key === 'number' ? next.findIndex((row) => Number(keyOf(row)) > Number(change.key)) : -1
    next.splice(place < 0 ? next.length : place, 0, after)
  }
  return { ...record, [change.register]: next }
}

/** Brings the cached record to what an acknowledgement says; an older or repeated one changes nothing. */
export function acknowledge(acknowledgement: Acknowledgement): void {
  useRecordStore.setState((state) => {
    if (state.record === null || acknowledgement.journalNumber <= state.record.journalNumber) return state
    const record = acknowledgement.changes.reduce(withChange, state.record)
    return {
      ...state,
      record: { ...record, journalNumber: acknowledgement.journalNumber, undoState: acknowledgement.undoState },
      keptAt: acknowledgement.at,
      problem: null,
    }
  })
}
