import { createWriteStream, existsSync } from 'node:fs'
import { readFile, rename, rm } from 'node:fs/promises'
import { resolve } from 'node:path'
import { text } from 'node:stream/consumers'
import { pipeline } from 'node:stream/promises'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { Served } from '../behind-the-door.ts'
import type { Surroundings } from './verb.ts'

const noJson = (what: string) =>
  new ProblemError('input-refused', `${what} is not JSON. Give one JSON value, encoded as UTF-8.`)

function parsed(given: string, what: string): unknown {
  try {
    return JSON.parse(given)
  } catch {
    throw noJson(what)
  }
}

/** JSON from a file, or from the input when the file is left out or `-`. */
export async function jsonFrom(around: Surroundings, file: string | undefined): Promise<unknown> {
  if (file === undefined || file === '-') return parsed(await text(around.input), 'The input')
  const path = resolve(around.here, file)
  const given = await readFile(path, 'utf8').catch(() => {
    throw new ProblemError('not-found', `There is no file ${path} that can be read.`)
  })
  return parsed(given, path)
}

/** Writes a document whole or not at all; an existing file is kept unless it may be replaced. */
export async function writeServed(served: Served, path: string, mayReplace: boolean): Promise<void> {
  if (!mayReplace && existsSync(path)) {
    served.bytes.destroy()
    throw new ProblemError('record-exists', `${path} is there already. Choose another path, or say --replace.`)
  }
  const unfinished = `${path}.unfinished-${process.pid}`
  try {
    await pipeline(served.bytes, createWriteStream(unfinished))
    await rename(unfinished, path)
  } catch (cause) {
    await rm(unfinished, { force: true })
    throw cause
  }
}
