import { createHash, randomUUID } from 'node:crypto'
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { deserialize, serialize } from 'node:v8'
import type { Circuit } from '../../analysis/identity/circuit.ts'
import type { CircuitShelf } from '../../analysis/identity/compiled-once.ts'

/** All circuits together; the ones not used for longest go first. */
const MOST_BYTES = 64 * 2 ** 20
/** Raised when circuits are built or stored in another way, so that old ones are not found. */
const FORM = 1
const HASH_BYTES = 32

const hashOf = (bytes: string | Uint8Array) => createHash('sha256').update(bytes).digest()

/**
 * Circuits kept in a folder of the program, each under the hash of all that went into it, with a hash of its own bytes
 * before them. A damaged or unreadable file is as good as none, and a full disk is no fault: the circuit is compiled again.
 */
export function circuitsOnDisk(folder: string, mostBytes: number = MOST_BYTES): CircuitShelf {
  const pathOf = (model: string) => join(folder, `${hashOf(`${FORM} ${model}`).toString('hex')}.circuit`)
  return {
    find: (model) => {
      const path = pathOf(model)
      try {
        const bytes = readFileSync(path)
        const body = bytes.subarray(HASH_BYTES)
        if (!hashOf(body).equals(bytes.subarray(0, HASH_BYTES))) return null
        const now = new Date()
        utimesSync(path, now, now)
        return deserialize(body) as Circuit
      } catch {
        return null
      }
    },
    keep: (model, circuit) => {
      try {
        const body = serialize(circuit)
        if (body.length + HASH_BYTES > mostBytes) return
        mkdirSync(folder, { recursive: true, mode: 0o700 })
        const path = pathOf(model)
        const unfinished = `${path}.${randomUUID()}`
        writeFileSync(unfinished, Buffer.concat([hashOf(body), body]), { mode: 0o600 })
        renameSync(unfinished, path)
        makeRoom(folder, mostBytes)
      } catch {
        // Kept or not, the answer is the same.
      }
    },
  }
}

/** Takes away what has not been used for longest until the rest is small enough. */
function makeRoom(folder: string, mostBytes: number): void {
  const files = readdirSync(folder)
    .map((name) => join(folder, name))
    .map((path) => ({ path, about: statSync(path) }))
    .toSorted((one, other) => other.about.mtimeMs - one.about.mtimeMs)
  let bytes = 0
  for (const { path, about } of files) {
    bytes += about.size
    if (bytes > mostBytes) rmSync(path, { force: true })
  }
}
