// Starts the bundle beside this file, `NAME.cjs` beside `NAME.mjs`, with what the build compiled of it: to read it through
// again at each start takes longer than many a command. Copied into `.built/` under the name of the bundle.
import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { setFlagsFromString } from 'node:v8'
import { Script } from 'node:vm'

const HASH_BYTES = 32
const path = import.meta.filename.replace(/\.mjs$/, '.cjs')
const text = readFileSync(path)

/** What was compiled of exactly this text; Node itself refuses what another version of it compiled. */
function compiled() {
  try {
    const kept = readFileSync(path.replace(/\.cjs$/, '.compiled'))
    const own = createHash('sha256').update(text).digest()
    return own.equals(kept.subarray(0, HASH_BYTES)) ? kept.subarray(HASH_BYTES) : undefined
  } catch {
    return undefined
  }
}

const program = new Script(text.toString('utf8'), { filename: path, cachedData: compiled() })
// Commands other than the one that keeps a page open are over within a second or two: there code is made faster only when
// it has run four times as long as is usual, since until then that takes more time than it saves. Said after the program is
// loaded, because what was compiled holds only under the settings it was compiled under.
if (process.argv[2] !== 'open') setFlagsFromString('--interrupt-budget=540000')
program.runInThisContext()(createRequire(path), path)
