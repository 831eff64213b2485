import { parentPort } from 'node:worker_threads'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { AskedAside, SaidAside } from './aside-thread.ts'

/** Answers, in a thread of its own, everything it is asked. */
export function answerAside<Asked>(work: (asked: Asked) => unknown): void {
  parentPort?.on('message', ({ id, asked }: AskedAside<Asked>) => {
    const answer = (said: SaidAside) => parentPort?.postMessage(said)
    try {
      answer({ id, value: work(asked) })
    } catch (fault) {
      if (fault instanceof ProblemError) answer({ id, problem: fault.problem })
      else answer({ id, fault: fault instanceof Error ? (fault.stack ?? fault.message) : String(fault) })
    }
  })
}
