import { Worker } from 'node:worker_threads'
import type { Problem } from '../../../shared-types/problem.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { builtPath } from '../../places-on-disk.ts'

/** What a thread answers to what it was asked under an id. */
export type SaidAside =
  | { readonly id: number; readonly value: unknown }
  | { readonly id: number; readonly problem: Problem }
  | { readonly id: number; readonly fault: string }

/** What goes to a thread. */
export interface AskedAside<Asked> {
  readonly id: number
  readonly asked: Asked
}

interface Waiting {
  readonly resolve: (value: unknown) => void
  readonly reject: (fault: unknown) => void
  readonly timer: NodeJS.Timeout
}

/** A thread of its own for long work, so that the program answers its windows the while; begun with the first question. */
export class AsideThread<Asked> {
  readonly #waiting = new Map<number, Waiting>()
  readonly #resting: (() => void)[] = []
  #worker: Worker | null = null
  #lastId = 0
  #threads = 0

  /** @param bundle file name of the built worker. @param tooLong what is said when an answer takes longer than `longestMs`. */
  constructor(
    private readonly bundle: string,
    private readonly longestMs: number,
    private readonly tooLong: string,
  ) {}

  /** How many threads were begun, the one that takes the next question included: what an earlier one knew is gone. */
  threadNumber(): number {
    this.#running()
    return this.#threads
  }

  /** Resolves when nothing is being worked out here. */
  async atRest(): Promise<void> {
    while (this.#waiting.size > 0) await new Promise<void>((rest) => this.#resting.push(rest))
  }

  /** Throws what the work throws; `rule-of-the-trade` when it takes too long, after which the thread is begun anew. */
  ask(asked: Asked): Promise<unknown> {
    const thread = this.#running()
    this.#lastId += 1
    const id = this.#lastId
    return new Promise((resolve, reject) => {
      const giveUp = () => this.#giveUp(new ProblemError('rule-of-the-trade', this.tooLong))
      const timer = setTimeout(giveUp, this.longestMs)
      timer.unref()
      this.#waiting.set(id, { resolve, reject, timer })
      thread.ref()
      thread.postMessage({ id, asked } satisfies AskedAside<Asked>)
    })
  }

  #running(): Worker {
    if (this.#worker !== null) return this.#worker
    const begun = new Worker(builtPath(this.bundle))
    begun.on('message', (said: SaidAside) => {
      const asked = this.#waiting.get(said.id)
      if (asked === undefined) return
      this.#done(said.id, asked)
      if ('value' in said) asked.resolve(said.value)
      else if ('problem' in said) asked.reject(new ProblemError(said.problem.code, said.problem.message, said.problem))
      else asked.reject(new Error(said.fault))
    })
    begun.on('error', (fault) => this.#giveUp(fault))
    begun.unref()
    this.#worker = begun
    this.#threads += 1
    return begun
  }

  #done(id: number, { timer }: Waiting): void {
    clearTimeout(timer)
    this.#waiting.delete(id)
    if (this.#waiting.size > 0) return
    // A thread that waits for nothing must not keep the program from ending.
    this.#worker?.unref()
    for (const rest of this.#resting.splice(0)) rest()
  }

  /** Ends the thread; everything asked of it is refused with the same fault. */
  #giveUp(fault: unknown): void {
    const ended = this.#worker
    this.#worker = null
    for (const [id, asked] of this.#waiting) {
      this.#done(id, asked)
      asked.reject(fault)
    }
    void ended?.terminate()
  }
}
