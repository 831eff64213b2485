import { parentPort } from 'node:worker_threads'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { compute } from '../../analysis/computations.ts'
import type { ComputedAside, ComputingAside } from './compute-aside.ts'

// Long computations stand in a thread of their own, so that the program answers its windows the while.
parentPort?.on('message', ({ id, name, input }: ComputingAside) => {
  const answer = (said: ComputedAside) => parentPort?.postMessage(said)
  try {
    // Name and input were typed as a pair by the asker; the message carries them as one.
    answer({ id, value: (compute[name] as (given: unknown) => unknown)(input) })
  } catch (fault) {
    if (fault instanceof ProblemError) answer({ id, problem: fault.problem })
    else answer({ id, fault: fault instanceof Error ? (fault.stack ?? fault.message) : String(fault) })
  }
})
