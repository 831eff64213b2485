import { execFileSync } from 'node:child_process'
import { resolve } from 'node:path'
import type { TestProject } from 'vitest/node'

/**
 * Before the tests of a project: brings `.built/` up to date, since workers and command line are started from there,
 * and for the browser tests the page too.
 */
export function setup(project: TestProject): void {
  const parts = project.name === 'pages' ? ['inside', 'renderer'] : ['inside']
  execFileSync(process.execPath, [resolve(import.meta.dirname, 'build-for-tests.mjs'), ...parts], { stdio: 'inherit' })
}
