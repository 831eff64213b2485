import { useMemo } from 'react'
import type { Exhibit } from '../../../../shared-types/exhibit.ts'
import type { TapeKind, TapeTaken } from '../../../../shared-types/tape-question.ts'
import { useRecordStore } from '../../../store/record-store.ts'
import { useShownUnits } from '../../../store/shown-units.ts'
import { entryOfKept } from './entry-of-taken.ts'
import { newEntry, type TapeEntry } from './tape-entry.ts'

/** A kept measurement opened again, and whether its caption is the program's own words of the result. */
export interface OpenedTape {
  readonly exhibit: Exhibit
  readonly taken: TapeTaken
  readonly captionIsOwn: boolean
}

/** The entry a form begins with: nothing read, or all that was read before. */
export function useTapeEntry(kind: TapeKind, kept: OpenedTape | null): TapeEntry {
  const units = useShownUnits()
  const examiner = useRecordStore((state) => state.record?.commission.examiner ?? '')
  return useMemo(
    () => (kept === null ? newEntry(kind, examiner) : entryOfKept(kept.exhibit, kept.taken, kept.captionIsOwn, units)),
    [kind, kept, examiner, units],
  )
}
