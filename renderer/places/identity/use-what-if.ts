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
  readonly setNumbersAside: (numbers: readonly number[]) => void
  readonly putBack: (what: { readonly tell: string } | { readonly number: number }) => void
}

const nothing: SetAside = { tells: [], numbers: [] }

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
    else setSetAside((before) => ({ ...before, tells: [...before.tells.filter((other) => other !== tell), tell] }))
  }, [])
  const setNumbersAside = useCallback(
    (numbers: readonly number[]) =>
      setSetAside((before) => ({ ...before, numbers: [...new Set([...before.numbers, ...numbers])] })),
    [],
  )
  const putBack = useCallback<WhatIf['putBack']>(
    (what) =>
      setSetAside(({ tells, numbers }) =>
        'tell' in what
          ? { numbers, tells: tells.filter((tell) => tell !== what.tell) }
          : { tells, numbers: numbers.filter((number) => number !== what.number) },
      ),
    [],
  )
  return useMemo(
    () => ({ trying, turn, tried, setAside, say, withdraw, setNumbersAside, putBack }),
    [trying, turn, tried, setAside, say, withdraw, setNumbersAside, putBack],
  )
}
