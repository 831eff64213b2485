import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import type { TestProject } from 'vitest/node'
import { madeOnce } from '../tests/demonstration/made-once.ts'

/**
 * Before the tests of a project: brings `.built/` up to date, since workers and command line are started from there,
 * and for the browser tests the page too, and the demonstration record nearly all of them open. Names the folder for what
 * the tests of one run share, of whichever project; it is gone after them.
 */
export async function setup(project: TestProject): Promise<() => void> {
  const parts = project.name === 'pages' ? ['inside', 'renderer'] : ['inside']
  execFileSync(process.execPath, [resolve(import.meta.dirname, 'build-for-tests.mjs'), ...parts], { stdio: 'inherit' })
  process.env.WITNESSMARK_TEST_FOLDER ??= mkdtempSync(join(tmpdir(), 'witnessmark-tests-'))
  const shared = process.env.WITNESSMARK_TEST_FOLDER
  if (project.name === 'pages') await madeOnce(shared)
  return () => rmSync(shared, { recursive: true, force: true })
}
