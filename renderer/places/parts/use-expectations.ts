import { useMemo } from 'react'
import type { PartExpectation } from '../../../shared-types/part-expectation.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { useAnswer } from '../../store/use-answer.ts'

/** What each part should be, asked once for each change of the record; the last answer stands while a new one is on its way. */
export function useExpectations({ journalNumber }: RecordView): {
  readonly byPart: ReadonlyMap<string, PartExpectation>
  readonly problem: string | null
} {
  const { value, problem } = useAnswer('parts.expectation', {}, journalNumber)
  const byPart = useMemo(() => new Map((value?.parts ?? []).map((part) => [part.partId, part])), [value])
  return { byPart, problem: problem?.message ?? value?.problem ?? null }
}
