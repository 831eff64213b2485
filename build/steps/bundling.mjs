import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { basename, dirname, join, relative } from 'node:path'
import { pathToFileURL } from 'node:url'
import { Script } from 'node:vm'
import * as esbuild from 'esbuild'
import { numericKernel } from './kernel.mjs'
import { fasterPackages, leanPackages } from './lean-packages.mjs'
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

/**
 * What stays outside the bundles and is loaded from its own folder: compiled code, the window's shell, and tools of tests
 * that look for files beside their own.
 */
const apart = [
  'electron',
  'sqlite3',
  'sharp',
  'esbuild',
  'vite',
  'playwright',
  'z3-solver',
  '@cantoo/fontkit',
  'bidi-js',
]
/** Packages of the older module form call `require`, which a module of the newer form does not have by itself. */
const requireForPackages =
  "import { createRequire as requireOfModule } from 'node:module'; const require = requireOfModule(import.meta.url);"

/** A bundle that is started from what was compiled of it is one function of these two. */
const asFunction = {
  banner: {
    js: "(function (require, __filename) { 'use strict'; const addressOfBundle = require('node:url').pathToFileURL(__filename).href;",
  },
  footer: { js: '})' },
}

/** Lists that hold against their schemas, so that the program need not check them at each start. */
let soundLists
async function listsFoundSound() {
  const target = join(built, 'sound-lists.mjs')
  await bundleWith({}, 'build/sound-lists.ts', target, 'esm')
  return (await import(pathToFileURL(target).href)).soundLists()
}

/** Bundles one source of the inside with the packages it uses: one file is read sooner than hundreds. */
export async function bundle(source, target, format = 'esm') {
  soundLists ??= listsFoundSound()
  const lists = JSON.stringify(await soundLists)
  const kernel = JSON.stringify(await numericKernel())
  await bundleWith({ LISTS_FOUND_SOUND: lists, NUMERIC_KERNEL: kernel }, source, target, format)
}

/**
 * Bundles what is started from the command line: `target`.mjs starts `target`.cjs beside it with what Node compiles of it
 * here. It must not wait at its top level.
 */
export async function bundleCompiled(source, target) {
  soundLists ??= listsFoundSound()
  const define = { LISTS_FOUND_SOUND: JSON.stringify(await soundLists), 'import.meta.url': 'addressOfBundle' }
  const supported = { 'dynamic-import': false }
  await bundleWith(define, source, `${target}.cjs`, 'cjs', { ...asFunction, supported })
  const text = readFileSync(`${target}.cjs`)
  const compiled = new Script(text.toString('utf8'), { filename: `${target}.cjs` }).createCachedData()
  place(`${target}.compiled`, Buffer.concat([createHash('sha256').update(text).digest(), compiled]))
  place(`${target}.mjs`, readFileSync(join(root, 'build', 'steps', 'start-compiled.mjs')))
}

async function bundleWith(define, source, target, format, more = {}) {
  const outcome = await esbuild.build({
    absWorkingDir: root,
    entryPoints: [source],
    outfile: target,
    bundle: true,
    write: false,
    platform: 'node',
    target: 'node20',
    format,
    define,
    external: apart,
    alias: fasterPackages,
    plugins: [leanPackages],
    banner: format === 'esm' ? { js: requireForPackages } : {},
    sourcemap: 'linked',
    logLevel: 'error',
    ...more,
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
    ['electron/doors/opening/installed-browser.ts', 'installed-browser.mjs', 'esm'],
    ['build/test-browser.ts', 'test-browser.mjs', 'esm'],
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
  await bundleCompiled('electron/command.ts', join(built, 'command')).catch(() => failed.push('electron/command.ts'))
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
