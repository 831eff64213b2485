import { useCallback, useEffect, useState } from 'react'
import type { RequestInput, RequestName, RequestOutput } from '../../shared-types/contract.ts'
import type { Problem } from '../../shared-types/problem.ts'
import { ask, type ChangeInput, type ChangingName, change, problemOf } from './ask.ts'
import { keptWhereAlike } from './kept-alike.ts'
import { LatestQuestion } from './latest-question.ts'

/** An answer on its way: the last value stays while a new one is asked for, and parts that did not change stay the same. */
export interface Answer<Value> {
  readonly value: Value | null
  /** What the value answers, as `JSON` of input and `follows`; null before the first. */
  readonly answered: string | null
  readonly problem: Problem | null
  /** True from the very picture in which something else is wanted. */
  readonly busy: boolean
  /** Asks again. */
  readonly again: () => void
}

interface Answered<Value> extends Pick<Answer<Value>, 'value' | 'answered' | 'problem'> {
  /** What was answered or refused last, as `answered` has it. */
  readonly ended: string | null
}

/**
 * Asks the main process when the page opens, when the input changes, and when `follows` (a journal number) does. Asks
 * nothing while the input is null.
 */
export function useAnswer<N extends RequestName>(
  name: N,
  input: RequestInput<N> | null,
  follows: unknown = null,
): Answer<RequestOutput<N>> {
  const [{ ended, ...answer }, setAnswer] = useState<Answered<RequestOutput<N>>>({
    value: null,
    answered: null,
    problem: null,
    ended: null,
  })
  const [times, setTimes] = useState(0)
  // A map takes longer than the next reading: what has been overtaken is not asked at all.
  const [asking] = useState(() => new LatestQuestion())
  const reason = JSON.stringify({ input, follows, times })
  useEffect(() => {
    const { input: told } = JSON.parse(reason) as { input: RequestInput<N> | null }
    if (told === null) return
    asking.ask(
      () => ask(name, told),
      (value) =>
        setAnswer((before) => ({
          value: keptWhereAlike(before.value, value),
          answered: reason,
          problem: null,
          ended: reason,
        })),
      (thrown) => setAnswer((before) => ({ ...before, problem: problemOf(thrown), ended: reason })),
    )
    return () => asking.forget()
  }, [asking, name, reason])
  const again = useCallback(() => setTimes((before) => before + 1), [])
  return { ...answer, busy: input === null ? ended === null : ended !== reason, again }
}

/** Sends changes of the record one at a time and keeps the problem of the last one, to show it where it arose. */
export function useChange(): {
  readonly busy: boolean
  readonly problem: Problem | null
  /** True once the change is durable; false when it was refused, with `problem` set. */
  readonly send: <N extends ChangingName>(name: N, input: ChangeInput<N>) => Promise<boolean>
  readonly forget: () => void
} {
  const [busy, setBusy] = useState(false)
  const [problem, setProblem] = useState<Problem | null>(null)
  const send = useCallback(async <N extends ChangingName>(name: N, input: ChangeInput<N>): Promise<boolean> => {
    setBusy(true)
    try {
      await change(name, input)
      setProblem(null)
      return true
    } catch (thrown) {
      setProblem(problemOf(thrown))
      return false
    } finally {
      setBusy(false)
    }
  }, [])
  const forget = useCallback(() => setProblem(null), [])
  return { busy, problem, send, forget }
}
