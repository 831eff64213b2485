import { closeSync, fsyncSync, openSync, rmSync, statSync } from 'node:fs'
import { basename } from 'node:path'
import { ProblemError } from '../../shared-types/problem-error.ts'
import { Connection } from './connection.ts'

/** Makes an empty file that only its owner may read; throws `record-exists` rather than touch one that is there. */
export function makeEmptyFile(path: string): void {
  try {
    closeSync(openSync(path, 'wx', 0o600))
  } catch (fault) {
    const code = (fault as NodeJS.ErrnoException).code
    if (code === 'EEXIST') {
      throw new ProblemError(
        'record-exists',
        `There is already a file “${basename(path)}”, and it was left as it is. Choose another name.`,
      )
    }
    if (code === 'ENOENT' || code === 'ENOTDIR') {
      throw new ProblemError('record-missing', 'The folder for this file does not exist. Choose another folder.')
    }
    if (code === 'ENOSPC') throw new ProblemError('disk-full', 'The disk is full. Free some space and do it again.')
    throw new ProblemError(
      'record-read-only',
      `“${basename(path)}” cannot be made in this folder. Choose a folder that you may write to.`,
      { cause: fault },
    )
  }
}

/**
 * Copies an open record into a new file of mode 0600, with every acknowledged row, by VACUUM INTO. Never a copy of
 * the file: without its log that would lose acknowledged rows. A connection of its own leaves readers and writer free.
 */
export async function copyRecord(source: string, target: string): Promise<void> {
  makeEmptyFile(target)
  try {
    const connection = await Connection.open(source, 'read')
    try {
      await connection.run('VACUUM INTO ?', target)
    } finally {
      await connection.close()
    }
    // SQLite does not synchronise what VACUUM INTO wrote (sqlite.org/lang_vacuum.html).
    const file = openSync(target, 'r+')
    fsyncSync(file)
    closeSync(file)
  } catch (fault) {
    rmSync(target, { force: true })
    throw fault
  }
}

/** A name beside the record that is not taken: `sedge.wmk.before-2`, `sedge.wmk.before-2.1`... */
export function freeNameBeside(path: string, ending: string): string {
  for (let count = 0; ; count += 1) {
    const name = `${path}.${ending}${count === 0 ? '' : `.${count}`}`
    if (statSync(name, { throwIfNoEntry: false }) === undefined) return name
  }
}
