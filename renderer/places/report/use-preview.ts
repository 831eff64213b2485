import { useEffect } from 'react'
import type { Paper } from '../../../shared-types/edition.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { makePreview, stateOf, stopPreview, usePreviewStore } from './preview-store.ts'

/** How long the place rests before a preview is made of its own accord, ms. */
const REST_MS = 600

/**
 * The preview on a paper. Where it is `shown` it comes by itself once the place has been at `rest` for a moment, when
 * there is none of this state of the record; one that is still being made for what is no longer shown is stopped.
 */
export function usePreview(record: RecordView, paper: Paper, shown: boolean, rest: boolean) {
  const { made, making, failed } = usePreviewStore()
  const state = stateOf(record)
  const newest = made[paper]
  const tried = newest?.state === state || (failed?.state === state && failed.paper === paper)
  useEffect(() => {
    if (!shown || !rest || tried) return
    const timer = setTimeout(() => void makePreview(record, paper), REST_MS)
    return () => clearTimeout(timer)
  }, [shown, rest, tried, record, paper])
  // biome-ignore lint/correctness/useExhaustiveDependencies: another state or paper is another preview.
  useEffect(() => (shown ? stopPreview : undefined), [shown, state, paper])
  return {
    document: newest?.document ?? null,
    stale: newest !== undefined && newest.state !== state,
    busy: making !== null,
    problem: failed?.problem ?? null,
    make: () => void makePreview(record, paper),
  }
}
