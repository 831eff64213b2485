import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync } from 'node:fs'
import { join } from 'node:path'
import { root } from './running.mjs'

const folder = ['electron', 'analysis', 'kernel', 'source']
/** No runtime and no imports but memory: whoever calls hands over places in it. Warnings of vectors between files are known. */
const options = [
  ...['-O3', '--noAssert', '--runtime', 'stub', '--importMemory', '--enable', 'simd', '--use', 'abort='],
  ...['--disableWarning', '112'],
]

/** What the compiled kernel depends on: its sources, the compiler and how it is asked. */
function stampOf() {
  const hash = createHash('sha256')
  const lock = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8'))
  hash.update(`${lock.packages['node_modules/assemblyscript'].version} ${options.join(' ')}\n`)
  for (const name of readdirSync(join(root, ...folder)).sort())
    hash.update(`${name}\n`).update(readFileSync(join(root, ...folder, name)))
  return hash.digest('hex').slice(0, 24)
}

/** The numeric kernel as WebAssembly in base 64; compiled when its sources are not those it was last compiled from. */
export async function numericKernel() {
  const kept = join(root, '.built', 'kernel')
  const target = join(kept, `${stampOf()}.wasm`)
  if (!existsSync(target)) {
    const { main } = await import('assemblyscript/asc')
    const fresh = `.built/kernel/${process.pid}.wasm`
    mkdirSync(kept, { recursive: true })
    const source = [...folder, 'index.ts'].join('/')
    const { error, stderr } = await main([source, '--baseDir', root, '-o', fresh, ...options])
    if (error) throw new Error(`The numeric kernel could not be compiled: ${error.message}\n${stderr.toString()}`)
    renameSync(join(root, fresh), target)
  }
  return readFileSync(target).toString('base64')
}
