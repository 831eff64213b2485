import { mkdtempSync, rmSync } from 'node:fs'
import { homedir, tmpdir } from 'node:os'
import { join } from 'node:path'
import { assessing } from './doors/command-line/assess-verb.ts'
import { commandLine } from './doors/command-line/command-line.ts'
import { computing } from './doors/command-line/compute-verb.ts'
import { demonstration } from './doors/command-line/demonstration-verb.ts'
import { opening } from './doors/command-line/open-verb.ts'
import { recordVerbs } from './doors/command-line/record-verbs.ts'
import { checkingSheet } from './doors/command-line/sheet-verbs.ts'
import { beginProgram } from './doors/door-to-program.ts'
import { builtPath } from './places-on-disk.ts'
import { useCases } from './use-cases/use-cases.ts'

const scratchFolder = mkdtempSync(join(tmpdir(), 'witnessmark-'))
const stopping = new AbortController()
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => stopping.abort())

// Whoever reads the output may stop reading: `| head` is no fault.
process.stdout.on('error', (fault: NodeJS.ErrnoException) => {
  if (fault.code !== 'EPIPE') throw fault
})

/** Does what the words of the command line say; the exit code is the program's. */
async function run(): Promise<void> {
  const verbs = [opening, ...recordVerbs, assessing, computing, checkingSheet, demonstration]
  try {
    process.exitCode = await commandLine(process.argv.slice(2), verbs, {
      here: process.cwd(),
      builtFolder: builtPath(),
      input: process.stdin,
      print: (text) => process.stdout.write(`${text}\n`),
      say: (line) => process.stderr.write(`${line}\n`),
      begin: (recordsFolder = join(homedir(), 'Witnessmark')) =>
        beginProgram({ recordsFolder, scratchFolder }, useCases),
      stop: stopping.signal,
    })
  } finally {
    rmSync(scratchFolder, { recursive: true, force: true })
    process.stdin.destroy()
  }
}

void run()
