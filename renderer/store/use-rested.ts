import { useEffect, useState } from 'react'

/** The value once it has been the same for so long, ms; null until the first has. */
export function useRested<Value>(now: Value, restMs: number): Value | null {
  const [rested, setRested] = useState<Value | null>(null)
  useEffect(() => {
    const timer = setTimeout(() => setRested(now), restMs)
    return () => clearTimeout(timer)
  }, [now, restMs])
  return rested
}
