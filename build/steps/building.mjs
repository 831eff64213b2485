import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { root, say, step } from './running.mjs'

/** What each half of the program is made from, and a file that proves it was made. */
const halves = {
  inside: {
    sources: [
      ...['electron', 'shared-types', 'build', 'package-lock.json', 'tsconfig.json'],
      ...['body-plans', 'coating', 'lists', 'report'].map((folder) => join('resources', folder)),
    ],
    proof: 'command.mjs',
  },
  renderer: {
    sources: [
      ...['renderer', 'shared-types', 'resources/fonts', 'package-lock.json'],
      ...['build/vite.config.ts', 'build/first-frame.ts'],
    ],
    proof: join('renderer', 'index.html'),
  },
}

/** Adds name, size and time of every file under a place. */
function survey(place, hash) {
  if (!existsSync(place)) return
  const about = statSync(place)
  if (!about.isDirectory()) {
    hash.update(`${place} ${about.size} ${about.mtimeMs}\n`)
    return
  }
  for (const name of readdirSync(place).sort()) survey(join(place, name), hash)
}

function stampOf(half) {
  const hash = createHash('sha256')
  for (const source of halves[half].sources) survey(join(root, source), hash)
  return hash.digest('hex')
}

function stands(half, stamp) {
  const file = join(root, '.built', `${half}.stamp`)
  return (
    existsSync(join(root, '.built', halves[half].proof)) && existsSync(file) && readFileSync(file, 'utf8') === stamp
  )
}

/** Builds one half when its sources have changed since the last time; throws when it cannot be built. */
async function buildHalf(half, what, build) {
  const stamp = stampOf(half)
  if (stands(half, stamp)) return
  await step(what, build)
  mkdirSync(join(root, '.built'), { recursive: true })
  writeFileSync(join(root, '.built', `${half}.stamp`), stamp)
}

/** Bundles the main process, the command line and the workers when their sources have changed. */
export const buildInside = () =>
  buildHalf('inside', 'bundling the program', async () => {
    const { bundleInside } = await import('./bundling.mjs')
    await bundleInside()
  })

/** Bundles the page when its sources have changed. */
export const buildRenderer = () =>
  buildHalf('renderer', 'bundling the page', async () => {
    const { bundleRenderer } = await import('./bundling.mjs')
    await bundleRenderer()
  })

/** Brings the whole program up to date in `.built/`. */
export async function buildProgram() {
  try {
    await buildInside()
    await buildRenderer()
  } catch (fault) {
    say(fault instanceof Error ? fault.message : String(fault))
    throw new Error('The program could not be built; the messages above say where.')
  }
}
