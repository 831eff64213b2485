import { useCallback } from 'react'
import { useRecordStore } from './record-store.ts'

/** Name of a part by its id, in the chosen English; the id itself where this car's list does not have it. */
export function usePartNames(): (partId: string) => string {
  const parts = useRecordStore((state) => state.partList)
  const names = useRecordStore((state) => state.record?.commission.names ?? 'uk')
  return useCallback((partId) => parts.find(({ id }) => id === partId)?.[names] ?? partId, [parts, names])
}
