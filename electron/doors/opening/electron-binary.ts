import { spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'

const DAY_MS = 86_400_000
const FETCH_LIMIT_MS = 600_000

export interface BinaryPlaces {
  /** Folder of the installed `electron` package. */
  readonly packageFolder: string
  /** Remembers that fetching failed, so that not every start tries again. */
  readonly failureFile: string
}

/** Where the package lies, and where a failure is remembered. */
export function binaryPlaces(builtFolder: string): BinaryPlaces {
  const require = createRequire(join(builtFolder, 'command.mjs'))
  return {
    packageFolder: dirname(require.resolve('electron/package.json')),
    failureFile: join(builtFolder, 'window-not-fetched'),
  }
}

/** Path of the binary when it is there. */
export function presentBinary({ packageFolder }: BinaryPlaces): string | null {
  try {
    const path: unknown = createRequire(join(packageFolder, 'package.json'))('./index.js')
    return typeof path === 'string' && existsSync(path) ? path : null
  } catch {
    return null
  }
}

const failedToday = (file: string): boolean => existsSync(file) && Date.now() - statSync(file).mtimeMs < DAY_MS

/**
 * Fetches the binary by the package's own script, on the first wish for a window; answers null or the reason it could
 * not. After a failure it is tried again a day later, or at once when insisted.
 */
export function fetchBinary(places: BinaryPlaces, insist: boolean, say: (line: string) => void): string | null {
  if (!insist && failedToday(places.failureFile)) return 'tried within the last day; --window tries again now'
  say('Fetching the desktop window once (about 110 MB) ...')
  const { ELECTRON_SKIP_BINARY_DOWNLOAD: _skip, ...env } = process.env
  const outcome = spawnSync(process.execPath, [join(places.packageFolder, 'install.js')], {
    env,
    encoding: 'utf8',
    timeout: FETCH_LIMIT_MS,
    stdio: ['ignore', 'ignore', 'pipe'],
  })
  if (outcome.status === 0 && presentBinary(places) !== null) {
    rmSync(places.failureFile, { force: true })
    return null
  }
  mkdirSync(dirname(places.failureFile), { recursive: true })
  writeFileSync(places.failureFile, '')
  const reason = (outcome.stderr ?? '')
    .split('\n')
    .find((line) => /error/i.test(line))
    ?.trim()
  return reason?.slice(0, 160) ?? 'the download did not finish'
}
