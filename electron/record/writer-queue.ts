import { ProblemError } from '../../shared-types/problem-error.ts'
import type { Connection } from './connection.ts'
import { asProblem, readOnly } from './storage-problems.ts'

/**
 * The one line in which everything that writes a record waits. Without it a second caller's write would join the
 * transaction that is open on the same connection.
 */
export class WriterQueue {
  readonly #path: string
  readonly #writer: Connection | null
  #last: Promise<unknown> = Promise.resolve()
  #closed = false

  /** `writer` is null when the record was opened to read. */
  constructor(path: string, writer: Connection | null) {
    this.#path = path
    this.#writer = writer
  }

  /** Runs `work` alone with the writing connection, after everything asked for before. */
  write<Result>(work: (writer: Connection) => Promise<Result>): Promise<Result> {
    const writer = this.#writer
    if (!writer) return Promise.reject(readOnly(this.#path, null))
    if (this.#closed) {
      return Promise.reject(new ProblemError('no-record-open', 'The record has been closed. Open it again first.'))
    }
    const turn = this.#last.then(() => work(writer))
    this.#last = turn.catch(() => undefined)
    return turn.catch((fault) => {
      throw asProblem(this.#path, fault)
    })
  }

  /** Lets nothing more in and waits until everything in line is done. */
  async end(): Promise<void> {
    this.#closed = true
    await this.#last
  }
}
