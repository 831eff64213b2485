import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { builtPath } from '../../electron/places-on-disk.ts'
import { putDemonstration } from '../demonstration/made-once.ts'

/** The program as a user starts it without a window of its own: a process that serves the page. */
export interface StartedProgram {
  /** Opens the page once. */
  readonly address: string
  /** Another address that opens the page once. */
  freshAddress(): Promise<string>
  /** Folder of the records and of what a test writes; gone after `stop`. */
  readonly folder: string
  /** Ends the process as a power cut would. */
  kill(): Promise<void>
  stop(): Promise<void>
}

const ended = (child: ChildProcess): Promise<void> =>
  child.exitCode !== null || child.signalCode !== null
    ? Promise.resolve()
    : new Promise((done) => child.once('exit', () => done()))

/** Starts the built program on a folder of records, with one of them open when it is named. */
export async function startOn(folder: string, record: string | null): Promise<StartedProgram> {
  const words = ['open', '--page', '--no-browser', '--records', folder, ...(record === null ? [] : [record])]
  const child = spawn(process.execPath, [builtPath('command.mjs'), ...words], { stdio: ['pipe', 'pipe', 'pipe'] })
  const said: string[] = []
  child.stderr.on('data', (piece: Buffer) => said.push(piece.toString()))
  const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]()
  const nextAddress = async (): Promise<string> => {
    for (;;) {
      const line = await lines.next()
      if (line.done === true) throw new Error(`The program ended before it gave an address. It said: ${said.join('')}`)
      const address = /http:\/\/127\.0\.0\.1:\d+\/open\/\S+/.exec(line.value)?.[0]
      if (address !== undefined) return address
    }
  }
  return {
    address: await nextAddress(),
    freshAddress: () => {
      child.stdin.write('\n')
      return nextAddress()
    },
    folder,
    kill: async () => {
      child.kill('SIGKILL')
      await ended(child)
    },
    stop: async () => {
      child.kill('SIGTERM')
      await ended(child)
      await rm(folder, { recursive: true, force: true })
    },
  }
}

/** Starts the program with no record open, in a folder of its own. */
export async function startEmpty(): Promise<StartedProgram> {
  return startOn(await mkdtemp(join(tmpdir(), 'pages-')), null)
}

/** Puts the demonstration record into a folder of its own and starts the program on it. */
export async function startOnDemonstration(): Promise<StartedProgram> {
  const folder = await mkdtemp(join(tmpdir(), 'pages-'))
  const path = join(folder, 'demonstration.wmk')
  await putDemonstration(path)
  return startOn(folder, path)
}
