import { copyFile, mkdtemp, readFile, rename, rm, stat, writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { makeDemonstration } from '../../electron/use-cases/demonstration.ts'
import type { Program } from '../../electron/use-cases/program.ts'
import { recordUseCases } from '../../electron/use-cases/records.ts'
import { startProgram } from '../../electron/use-cases/running-program.ts'

/** How often a test that waits for the record another one is making looks for it, ms. */
const LOOK_MS = 100

const isThere = (path: string): Promise<boolean> =>
  stat(path).then(
    () => true,
    () => false,
  )

async function make(path: string): Promise<void> {
  const folder = dirname(path)
  const maker = startProgram({ recordsFolder: folder, scratchFolder: join(folder, 'scratch'), tell: () => undefined })
  try {
    await makeDemonstration(maker, path)
  } finally {
    await maker.end()
  }
}

/** Whether the test that said it makes the record is still at it; its process may have been ended in the middle. */
async function isBeingMade(claim: string): Promise<boolean> {
  const maker = Number(await readFile(claim, 'utf8').catch(() => ''))
  if (maker === 0) return true
  try {
    return process.kill(maker, 0)
  } catch {
    return false
  }
}

/** Path of the demonstration record of this run; whoever asks first makes it, and the others wait for it. */
export async function madeOnce(shared: string): Promise<string> {
  const made = join(shared, 'demonstration.wmk')
  const claim = join(shared, 'being-made-by')
  while (!(await isThere(made))) {
    const mine = await writeFile(claim, String(process.pid), { flag: 'wx' }).then(
      () => true,
      () => false,
    )
    if (mine) {
      const folder = await mkdtemp(join(shared, 'making-'))
      try {
        await make(join(folder, 'demonstration.wmk'))
        await rename(join(folder, 'demonstration.wmk'), made)
      } finally {
        await rm(claim, { force: true })
      }
    } else if (await isBeingMade(claim)) await new Promise((done) => setTimeout(done, LOOK_MS))
    else await rm(claim, { force: true })
  }
  return made
}

/**
 * Puts a demonstration record of its own at `path`, closed. However often it is made its journal is the same, which has a
 * test of its own; so the tests of one run make it once, in the folder their set-up names, and copy it.
 */
export async function putDemonstration(path: string): Promise<void> {
  const shared = process.env.WITNESSMARK_TEST_FOLDER
  if (shared === undefined) await make(path)
  else await copyFile(await madeOnce(shared), path)
}

/** Puts a demonstration record at `path` and opens it. */
export async function openDemonstration(program: Program, path: string): Promise<void> {
  await putDemonstration(path)
  await recordUseCases['records.open'](program, { path, readOnly: false })
}
