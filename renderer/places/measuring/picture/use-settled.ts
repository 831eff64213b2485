import { useEffect, useState } from 'react'

/** The value once it has stood still for so long, ms: a point nudged key by key is measured where it comes to rest. */
export function useSettled<Value>(value: Value, afterMs: number): Value {
  const [settled, setSettled] = useState(value)
  useEffect(() => {
    const timer = setTimeout(() => setSettled(value), afterMs)
    return () => clearTimeout(timer)
  }, [value, afterMs])
  return settled
}
