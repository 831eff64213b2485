#!/usr/bin/env node
// One way into the project from a fresh clone: installs what is missing, builds what changed, then does what was asked.
// Uses nothing that has to be installed first.
import { resolve } from 'node:path'
import { buildProgram } from './steps/building.mjs'
import { installPackages } from './steps/packages.mjs'
import { root, runNode, say, whereAsked } from './steps/running.mjs'
import { runBenchmarks, runTests } from './steps/testing.mjs'

const command = resolve(root, '.built', 'command.mjs')
const [verb = 'help', ...words] = process.argv.slice(2)

/** Makes the demonstration record and its report, prints where they are, and opens the program on the record. */
async function demonstrate() {
  const folder = resolve(root, 'demonstration')
  const made = await runNode([command, 'demo', '--folder', folder], { cwd: root })
  if (made !== 0 || words.includes('--no-window')) return made
  return runNode([command, 'open', resolve(folder, 'demonstration.wmk'), ...words], { cwd: root })
}

const verbs = {
  start: () => runNode([command, 'open', ...words], { cwd: whereAsked }),
  demo: demonstrate,
  command: () => runNode([command, ...words], { cwd: whereAsked }),
  build: () => 0,
  test: () => runTests(words),
  bench: () => runBenchmarks(words),
}

const known = Object.keys(verbs)
if (!known.includes(verb)) {
  say(`Say one of: ${known.join(', ')}. Example: node build/run.mjs demo --no-window`)
  process.exit(verb === 'help' ? 0 : 2)
}
try {
  await installPackages()
  await buildProgram()
  process.exitCode = await verbs[verb]()
} catch (fault) {
  say(fault instanceof Error ? fault.message : String(fault))
  process.exitCode = 1
}
