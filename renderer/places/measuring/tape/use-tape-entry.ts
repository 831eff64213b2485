import { useMemo } from 'react'
import type { Exhibit } from '../../../../shared-types/exhibit.ts'
import type { TapeAnswer } from '../../../../shared-types/tape-answer.ts'
import type { TapeKind, TapeTaken } from '../../../../shared-types/tape-question.ts'
import { useRecordStore } from '../../../store/record-store.ts'
import { entryOfKept } from './entry-of-taken.ts'
import { newEntry, type TapeEntry } from './tape-entry.ts'

/** A kept measurement opened again; `answer` is null until it has been worked out. */
export interface OpenedTape {
  readonly exhibit: Exhibit
  readonly taken: TapeTaken
  readonly answer: TapeAnswer | null
}

/** The entry a form begins with: nothing read, or all that was read before. */
export function useTapeEntry(kind: TapeKind, kept: OpenedTape | null): TapeEntry {
  const unit = useRecordStore((state) => state.record?.commission.lengthUnit ?? 'mm')
  const examiner = useRecordStore((state) => state.record?.commission.examiner ?? '')
  return useMemo(
    () => (kept === null ? newEntry(kind, examiner) : entryOfKept(kept.exhibit, kept.taken, kept.answer, unit)),
    [kind, kept, examiner, unit],
  )
}
