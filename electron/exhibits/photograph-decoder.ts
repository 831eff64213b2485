import { type ChildProcess, fork } from 'node:child_process'
import { builtPath } from '../places-on-disk.ts'
import { DECODE_LIMIT_MS, type PhotographSeen, type PhotographWork } from './photograph-work.ts'

/** A worker process that looks at one photograph at a time; it is ended when a picture takes too long, and begun anew. */
export class PhotographDecoder {
  readonly #limitMs: number
  #worker: ChildProcess | null = null

  constructor(limitMs: number = DECODE_LIMIT_MS) {
    this.#limitMs = limitMs
  }

  /** Looks at one photograph; never rejects. Call again only after the answer. */
  look(work: PhotographWork): Promise<PhotographSeen> {
    const worker = this.#running()
    return new Promise((resolve) => {
      const answer = (seen: PhotographSeen) => {
        clearTimeout(timer)
        worker.removeAllListeners('message').removeAllListeners('exit').removeAllListeners('error')
        resolve(seen)
      }
      const giveUp = (why: string) => {
        this.end()
        answer({ refused: why })
      }
      const timer = setTimeout(
        () => giveUp('It takes too long to decode. Save it again as an ordinary JPEG.'),
        this.#limitMs,
      )
      worker.on('message', (seen) => answer(seen as PhotographSeen))
      worker.on('exit', () => giveUp('It cannot be decoded here. Save it again as an ordinary JPEG.'))
      worker.on('error', () => giveUp('Its decoder could not be started. Try again.'))
      worker.send(work, () => undefined)
    })
  }

  /** Ends the worker; whatever it was looking at is given up. */
  end(): void {
    const worker = this.#worker
    this.#worker = null
    worker?.kill('SIGKILL')
  }

  #running(): ChildProcess {
    if (this.#worker?.connected) return this.#worker
    this.#worker = fork(builtPath('photograph-worker.mjs'), [], {
      serialization: 'advanced',
      execArgv: [],
      // The program's own binary, asked to behave as plain Node.
      env: { ...process.env, ELECTRON_RUN_AS_NODE: '1' },
      stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
    })
    return this.#worker
  }
}
