import type { ComputationInput, ComputationName, ComputationOutput } from '../../../shared-types/computations.ts'
import { AsideThread } from './aside-thread.ts'
import type { KeptPart } from './kept-parts.ts'
import { PartsSent } from './kept-parts.ts'

/** One computation and what it is run on. */
export interface ComputationAsked {
  readonly name: ComputationName
  readonly input: unknown
  /** A part of the input the thread keeps; null when `input` is whole. */
  readonly kept: KeptPart | null
  /** Folder where circuits of sheets are kept for the next run; null when nowhere. */
  readonly shelf: string | null
}

/** How a question is asked. */
export interface AskingAside {
  /** A large part of the input that stays the same from question to question; the same key means the same value. */
  readonly keeps?: { readonly field: string; readonly key: string }
  readonly shelf?: string | null
  /**
   * `later`: what may come after is worked out in a second thread, so that the next answer need not wait for it, and is
   * begun only while the first thread rests, so that the two do not share what the processor can do.
   */
  readonly when?: 'now' | 'later'
}

const LONGEST_MS = 30_000

const begun = () => ({
  thread: new AsideThread<ComputationAsked>(
    'computation-worker.mjs',
    LONGEST_MS,
    `This took longer than ${LONGEST_MS / 1000} seconds and was given up. Ask about less at a time: fewer readings, or a smaller sheet.`,
  ),
  sent: new PartsSent(),
})
const threads = { now: begun(), later: begun() }

/**
 * Runs one computation in a thread of its own. Throws what the computation throws; `rule-of-the-trade` when it takes
 * longer than half a minute, after which the thread is ended and begun anew with the next question.
 */
export async function computeAside<N extends ComputationName>(
  name: N,
  input: ComputationInput<N>,
  { keeps, shelf = null, when = 'now' }: AskingAside = {},
): Promise<ComputationOutput<N>> {
  if (when === 'later') await threads.now.thread.atRest()
  const { thread, sent } = threads[when]
  const [rest, kept] = keeps === undefined ? [input, null] : sent.without(input, keeps, thread.threadNumber())
  return thread.ask({ name, input: rest, kept, shelf }) as Promise<ComputationOutput<N>>
}
