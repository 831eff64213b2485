import { useCallback, useMemo, useRef, useState } from 'react'
import type { SetAside } from '../../../shared-types/identity-asking.ts'
import type { Observation } from '../../../shared-types/observation.ts'

/** What is tried on the car and not kept. */
export interface WhatIf {
  readonly trying: boolean
  /** Begins or ends trying; either way nothing is tried yet. */
  readonly turn: (trying: boolean) => void
  readonly tried: readonly Observation[]
  readonly setAside: SetAside
  /** Says something of a tell, in the place of what stands. */
  readonly say: (said: Observation) => void
  /** Takes back what was tried of a tell; where nothing was, sets aside what is recorded of it. */
  readonly withdraw: (tell: string) => void
  /** Sets a number aside, wherever it was read. */
  readonly setNumberAside: (readAt: Pick<SetAside, 'numbers' | 'parts'>) => void
  readonly putBack: (what: Partial<SetAside>) => void
}

const nothing: SetAside = { tells: [], numbers: [], parts: [] }

const union = <Each>(one: readonly Each[], other: readonly Each[]): Each[] => [...new Set([...one, ...other])]
const without = <Each>(one: readonly Each[], other: readonly Each[] = []): Each[] =>
  one.filter((each) => !other.includes(each))

/** Observations tried, and observations and numbers set aside, without a word of it in the record. */
export function useWhatIf(): WhatIf {
  const [trying, setTrying] = useState(false)
  const [tried, setTried] = useState<readonly Observation[]>([])
  const [setAside, setSetAside] = useState<SetAside>(nothing)
  const now = useRef(tried)
  now.current = tried
  const turn = useCallback((begin: boolean) => {
    setTrying(begin)
    setTried([])
    setSetAside(nothing)
  }, [])
  const say = useCallback(
    (said: Observation) => setTried((before) => [...before.filter(({ tell }) => tell !== said.tell), said]),
    [],
  )
  const withdraw = useCallback((tell: string) => {
    if (now.current.some((row) => row.tell === tell)) setTried((before) => before.filter((row) => row.tell !== tell))
    else setSetAside((before) => ({ ...before, tells: union(before.tells, [tell]) }))
  }, [])
  const setNumberAside = useCallback<WhatIf['setNumberAside']>(
    ({ numbers, parts }) =>
      setSetAside((before) => ({
        ...before,
        numbers: union(before.numbers, numbers),
        parts: union(before.parts, parts),
      })),
    [],
  )
  const putBack = useCallback<WhatIf['putBack']>(
    (back) =>
      setSetAside(({ tells, numbers, parts }) => ({
        tells: without(tells, back.tells),
        numbers: without(numbers, back.numbers),
        parts: without(parts, back.parts),
      })),
    [],
  )
  return useMemo(
    () => ({ trying, turn, tried, setAside, say, withdraw, setNumberAside, putBack }),
    [trying, turn, tried, setAside, say, withdraw, setNumberAside, putBack],
  )
}
