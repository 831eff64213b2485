import { useMemo } from 'react'
import type { RequestInput, RequestOutput } from '../../../shared-types/contract.ts'
import { useAnswer } from '../../store/use-answer.ts'
import { useKept } from '../../store/use-kept.ts'
import { useRested } from '../../store/use-rested.ts'

/** How long weights have stood when what takes longer is asked for: whoever answers one tell after another waits for none of it. */
const REST_MS = 250

/** What the weights on screen answer. */
interface Settled {
  readonly input: RequestInput<'identity.weights'>
  readonly follows: unknown
}

/**
 * Asks what takes longer than the weights, of the same observations, once the weights on screen have stood for a moment.
 * `waits`: what is shown is still of the weights before.
 */
export function useMore(answered: string | null): {
  readonly more: RequestOutput<'identity.more'>
  readonly waits: boolean
} {
  const settled = useMemo(() => (answered === null ? null : (JSON.parse(answered) as Settled)), [answered])
  // Chains and the question of the looks change nothing of it.
  const seen = useKept(
    settled === null
      ? null
      : { asked: { whatIf: settled.input.whatIf, setAside: settled.input.setAside }, follows: settled.follows },
  )
  const rested = useRested(seen, REST_MS)
  const { value, busy, problem } = useAnswer('identity.more', rested?.asked ?? null, rested?.follows)
  // What could not be worked out anew says nothing of the weights that stand now.
  const more = problem === null ? value : null
  return { more, waits: more !== null && (busy || rested !== seen) }
}
