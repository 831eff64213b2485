import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { basename, dirname, join, relative } from 'node:path'
import * as esbuild from 'esbuild'
import { root } from './running.mjs'

const built = join(root, '.built')

/** Writes through a neighbour and a rename, and only what differs, so that a program that runs never reads half a bundle. */
function place(file, text) {
  if (existsSync(file) && readFileSync(file).equals(Buffer.from(text))) return
  mkdirSync(dirname(file), { recursive: true })
  const neighbour = `${file}.${process.pid}`
  writeFileSync(neighbour, text)
  renameSync(neighbour, file)
}

/** Bundles one source of the inside; packages stay outside it. */
export async function bundle(source, target, format = 'esm') {
  const outcome = await esbuild.build({
    absWorkingDir: root,
    entryPoints: [source],
    outfile: target,
    bundle: true,
    write: false,
    platform: 'node',
    target: 'node20',
    format,
    packages: 'external',
    sourcemap: 'linked',
    logLevel: 'error',
  })
  for (const file of outcome.outputFiles) place(file.path, file.contents)
}

/** Every file under a folder, as paths from the top of the project with forward slashes. */
export function filesUnder(folder, wanted) {
  if (!existsSync(join(root, folder))) return []
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && wanted.test(entry.name))
    .map((entry) => relative(root, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
}

/** Source, target and module format of everything that runs outside the page. */
function insideBundles() {
  const entries = [
    ['electron/main.ts', 'main.mjs', 'esm'],
    ['electron/preload.ts', 'preload.cjs', 'cjs'],
    ['electron/command.ts', 'command.mjs', 'esm'],
    ['electron/doors/opening/installed-browser.ts', 'installed-browser.mjs', 'esm'],
    ['build/house-rules/check.ts', 'house-rules.mjs', 'esm'],
  ]
  const workers = filesUnder('electron', /-worker\.ts$/).map((source) => [
    source,
    basename(source).replace(/\.ts$/, '.mjs'),
    'esm',
  ])
  return [...entries, ...workers].filter(([source]) => existsSync(join(root, source)))
}

/** Bundles them all, and fails after the last when one of them could not be bundled. */
export async function bundleInside() {
  const failed = []
  for (const [source, target, format] of insideBundles()) {
    await bundle(source, join(built, target), format).catch(() => failed.push(source))
  }
  if (failed.length > 0) throw new Error(`Not bundled: ${failed.join(', ')}.`)
}

/** Puts a fresh folder in the place of another; tries again when a second build was exchanging the same one. */
function exchange(fresh, target, triesLeft = 3) {
  const old = `${target}.old.${process.pid}`
  try {
    if (existsSync(target)) renameSync(target, old)
    renameSync(fresh, target)
  } catch (fault) {
    if (triesLeft === 0) throw fault
    exchange(fresh, target, triesLeft - 1)
  } finally {
    rmSync(old, { recursive: true, force: true })
  }
}

/** Bundles the page beside its place and exchanges the two folders. */
export async function bundleRenderer() {
  // A test runner says NODE_ENV=test, and the page would carry the slow development half of React; it is always built whole.
  process.env.NODE_ENV = 'production'
  const { build } = await import('vite')
  const target = join(built, 'renderer')
  const fresh = `${target}.${process.pid}`
  try {
    await build({ configFile: join(root, 'build', 'vite.config.ts'), logLevel: 'warn', build: { outDir: fresh } })
    exchange(fresh, target)
  } finally {
    rmSync(fresh, { recursive: true, force: true })
  }
}
