import { Worker } from 'node:worker_threads'
import type { ComputationInput, ComputationName, ComputationOutput } from '../../../shared-types/computations.ts'
import type { Problem } from '../../../shared-types/problem.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { builtPath } from '../../places-on-disk.ts'

/** What goes to the thread, and what comes back. */
export interface ComputingAside {
  readonly id: number
  readonly name: ComputationName
  readonly input: unknown
}
export type ComputedAside =
  | { readonly id: number; readonly value: unknown }
  | { readonly id: number; readonly problem: Problem }
  | { readonly id: number; readonly fault: string }

interface Waiting {
  readonly resolve: (value: unknown) => void
  readonly reject: (fault: unknown) => void
  readonly timer: NodeJS.Timeout
}

const LONGEST_MS = 30_000
const waiting = new Map<number, Waiting>()
let worker: Worker | null = null
let lastId = 0

/**
 * Runs one computation in a thread of its own. Throws what the computation throws; `rule-of-the-trade` when it takes
 * longer than half a minute, after which the thread is ended and begun anew with the next question.
 */
export function computeAside<N extends ComputationName>(
  name: N,
  input: ComputationInput<N>,
): Promise<ComputationOutput<N>> {
  const thread = running()
  lastId += 1
  const id = lastId
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => giveUp(tooLong()), LONGEST_MS)
    timer.unref()
    waiting.set(id, { resolve: (value) => resolve(value as ComputationOutput<N>), reject, timer })
    thread.ref()
    thread.postMessage({ id, name, input } satisfies ComputingAside)
  })
}

const tooLong = () =>
  new ProblemError(
    'rule-of-the-trade',
    `This took longer than ${LONGEST_MS / 1000} seconds and was given up. Ask about less at a time: fewer readings, or a smaller sheet.`,
  )

function running(): Worker {
  if (worker !== null) return worker
  const begun = new Worker(builtPath('computation-worker.mjs'))
  begun.on('message', (said: ComputedAside) => {
    const asked = waiting.get(said.id)
    if (asked === undefined) return
    done(said.id, asked)
    if ('value' in said) asked.resolve(said.value)
    else if ('problem' in said) asked.reject(new ProblemError(said.problem.code, said.problem.message, said.problem))
    else asked.reject(new Error(said.fault))
  })
  begun.on('error', giveUp)
  worker = begun
  return begun
}

function done(id: number, { timer }: Waiting): void {
  clearTimeout(timer)
  waiting.delete(id)
  // A thread that waits for nothing must not keep the program from ending.
  if (waiting.size === 0) worker?.unref()
}

/** Ends the thread; everything asked of it is refused with the same fault. */
function giveUp(fault: unknown): void {
  const ended = worker
  worker = null
  for (const [id, asked] of waiting) {
    done(id, asked)
    asked.reject(fault)
  }
  void ended?.terminate()
}
