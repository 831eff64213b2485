import { type ChildProcess, type SpawnOptions, spawn } from 'node:child_process'
import { once } from 'node:events'
import { join, resolve } from 'node:path'
import { createInterface } from 'node:readline'
import { build } from 'esbuild'

const top = resolve(import.meta.dirname, '..', '..')
const bundle = join(top, '.built', 'tests', 'survey-child.mjs')

/** Bundles the second program, since Node 20 runs no TypeScript. */
export async function bundleSurveyChild(): Promise<void> {
  await build({
    entryPoints: [join(import.meta.dirname, 'survey-child.ts')],
    bundle: true,
    platform: 'node',
    format: 'esm',
    packages: 'external',
    outfile: bundle,
    logLevel: 'error',
  })
}

export type ChildMode = 'survey' | 'early' | 'hold' | 'write' | 'read'

/** Starts it on a record; `lines` grows with what it prints. */
export function startChild(
  mode: ChildMode,
  path: string,
  options: SpawnOptions = {},
): {
  readonly child: ChildProcess
  readonly lines: Record<string, unknown>[]
  readonly first: Promise<void>
  readonly ended: Promise<unknown>
} {
  const child = spawn(process.execPath, [bundle, mode, path], { stdio: ['ignore', 'pipe', 'inherit'], ...options })
  const lines: Record<string, unknown>[] = []
  if (!child.stdout) throw new Error('The second program has no output.')
  const reading = createInterface({ input: child.stdout })
  const first = new Promise<void>((answer) => reading.once('line', () => answer()))
  reading.on('line', (line) => {
    // The last line of a killed program may be cut off; then it acknowledged nothing.
    if (line.endsWith('}')) lines.push(JSON.parse(line))
  })
  const ended = Promise.all([once(child, 'exit'), once(reading, 'close')])
  return { child, lines, first, ended }
}

/** Runs it to its end and answers the one line it prints. */
export async function runChild(mode: 'write' | 'read', path: string, options: SpawnOptions = {}) {
  const { lines, ended } = startChild(mode, path, options)
  await ended
  return lines[0] ?? { code: 'nothing printed' }
}
