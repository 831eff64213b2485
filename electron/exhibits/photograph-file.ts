import { stat } from 'node:fs/promises'
import { basename } from 'node:path'
import type { RequestInput } from '../../shared-types/contract.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import { MOST_BYTES } from './photograph-work.ts'

export type PhotographSource = RequestInput<'exhibits.import'>['sources'][number]

/** A photograph as a file of this machine; `temporary` when it was handed in and is to be thrown away afterwards. */
export interface PhotographFile {
  readonly path: string
  readonly fileName: string
  readonly temporary: boolean
}

export const refusedPhotograph = (fileName: string, why: string): ProblemError =>
  new ProblemError('photograph-refused', `"${fileName}" was not taken in. ${why}`, { field: 'sources' })

/** Name by which a source is called before it has been found. */
export const nameOfSource = (source: PhotographSource): string =>
  source.from === 'file' ? basename(source.path) : 'a file handed in'

/** Finds a source on disk, an upload by asking the door for it; throws `not-found`. */
export async function photographFile(
  source: PhotographSource,
  upload: (id: string) => Promise<{ readonly path: string; readonly fileName: string }>,
): Promise<PhotographFile> {
  if (source.from === 'upload') return { ...(await upload(source.upload)), temporary: true }
  return { path: source.path, fileName: basename(source.path), temporary: false }
}

/** Length and time of change of a file, to tell whether it stayed the same; throws `photograph-refused`. */
export async function photographMark({ path, fileName }: PhotographFile): Promise<string> {
  const found = await stat(path).catch(() => {
    throw refusedPhotograph(fileName, 'There is no such file, or it may not be read. Choose it again.')
  })
  if (!found.isFile()) throw refusedPhotograph(fileName, 'It is no file. Choose the photographs in it.')
  if (found.size === 0) throw refusedPhotograph(fileName, 'The file is empty. Copy it from the camera again.')
  if (found.size > MOST_BYTES) {
    throw refusedPhotograph(fileName, `It is longer than ${MOST_BYTES / 1024 / 1024} MB. Save it smaller.`)
  }
  return `${found.size} ${found.mtimeMs}`
}
