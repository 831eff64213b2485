import { createHash } from 'node:crypto'
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { root, run, runNode, say, step } from './running.mjs'

const stampFile = join(root, 'node_modules', '.witnessmark-stamp')

function textOf(file) {
  try {
    return readFileSync(file, 'utf8')
  } catch {
    return ''
  }
}

/** What the installed packages must have come from: the lock file, this Node.js and this kind of machine. */
function wantedStamp() {
  const lock = textOf(join(root, 'package-lock.json'))
  const machine = `${process.platform} ${process.arch} ${process.versions.modules}`
  return createHash('sha256').update(`${machine}\n${lock}`).digest('hex')
}

/** True when somebody has run npm by hand and every package of the lock file lies there at its version. */
function alreadyThere() {
  const installedText = textOf(join(root, 'node_modules', '.package-lock.json'))
  if (installedText === '') return false
  const installed = JSON.parse(installedText).packages
  const wanted = JSON.parse(textOf(join(root, 'package-lock.json'))).packages
  return Object.entries(wanted).every(
    ([place, entry]) =>
      place === '' || entry.optional || entry.devOptional || installed[place]?.version === entry.version,
  )
}

function refuseOldNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number)
  if (major < 20 || (major === 20 && minor < 19)) {
    throw new Error(
      `Node.js 20.19 or later is needed; this is ${process.versions.node}. Install a newer one and try again.`,
    )
  }
}

/** Runs npm by the very script that runs us, where it says which; by name otherwise. */
function npm(words) {
  const script = process.env.npm_execpath
  // What has to be compiled is compiled on every core.
  const options = { env: { ELECTRON_SKIP_BINARY_DOWNLOAD: '1', JOBS: 'max' } }
  return script?.endsWith('.js') ? runNode([script, ...words], options) : run('npm', words, options)
}

/** Installs the packages of the lock file when they are missing or have changed. The desktop window's binary is left for later. */
export async function installPackages() {
  refuseOldNode()
  const wanted = wantedStamp()
  if (textOf(stampFile) === wanted) return
  if (!alreadyThere()) {
    say('Packages are missing or have changed. The first time, sqlite3 may have to be compiled (about two minutes).')
    const code = await step('installing packages (npm ci)', () => npm(['ci', '--no-audit', '--no-fund']))
    if (code !== 0)
      throw new Error('npm could not install the packages. Its own message is above; mend that and try again.')
  }
  writeFileSync(stampFile, wanted)
}
