import { useEffect, useRef } from 'react'
import { keptWhereAlike } from './kept-alike.ts'

/** The value of the picture before, and every part of it, where the one worked out now is alike: nothing that shows it is drawn anew. */
export function useKept<Value>(now: Value): Value {
  const before = useRef(now)
  const kept = keptWhereAlike(before.current, now)
  useEffect(() => {
    before.current = kept
  }, [kept])
  return kept
}
