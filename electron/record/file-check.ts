import { accessSync, closeSync, constants, openSync, readSync, type Stats, statSync } from 'node:fs'
import { basename } from 'node:path'
import { ProblemError } from '../../shared-types/problem-error.ts'
import { damaged, foreign, readOnly, unreadable } from './storage-problems.ts'

/** "WMK1": the mark of a car record in the header of its file (SQLite's `application_id`). */
export const APPLICATION_ID = 0x574d4b31
const MAGIC = 'SQLite format 3\0'
const HEADER_LENGTH = 100

/** Files this process has open through SQLite, by device and inode, with how often. */
const openHere = new Map<string, number>()
const identityOf = (path: string) => {
  const { dev, ino } = statSync(path, { bigint: true })
  return `${dev}:${ino}`
}

/** Notes that SQLite has the file open here; the answer takes the note back. */
export function noteOpen(path: string): () => void {
  const identity = identityOf(path)
  openHere.set(identity, (openHere.get(identity) ?? 0) + 1)
  return () => {
    const left = (openHere.get(identity) ?? 1) - 1
    if (left > 0) openHere.set(identity, left)
    else openHere.delete(identity)
  }
}

function statOf(path: string): Stats {
  try {
    return statSync(path)
  } catch (fault) {
    const code = (fault as NodeJS.ErrnoException).code
    if (code === 'EACCES' || code === 'EPERM') throw unreadable(path, fault)
    throw new ProblemError(
      'record-missing',
      `There is no file “${basename(path)}” any more. Look for it where it was moved to, and open it from there.`,
      { cause: fault },
    )
  }
}

function mustAllow(path: string, wish: number, refuse: typeof readOnly): void {
  try {
    accessSync(path, wish)
  } catch (fault) {
    throw refuse(path, fault)
  }
}

function readHeader(path: string): Buffer {
  const header = Buffer.alloc(HEADER_LENGTH)
  const file = openSync(path, 'r')
  try {
    return header.subarray(0, readSync(file, header, 0, HEADER_LENGTH, 0))
  } finally {
    closeSync(file)
  }
}

/** True when rows wait in a log beside the file: then the header may lag behind what SQLite will read. */
function hasLog(path: string): boolean {
  const log = statSync(`${path}-wal`, { throwIfNoEntry: false })
  return log !== undefined && log.size > 0
}

/** Offsets of the header fields: sqlite.org/fileformat2.html, section 1.3. */
function checkHeader(path: string, header: Buffer, fileLength: number): void {
  const begins = header.toString('latin1', 0, Math.min(header.length, MAGIC.length))
  if (begins !== MAGIC.slice(0, begins.length)) throw foreign(path, null)
  const written = header.length === HEADER_LENGTH ? header.readUInt16BE(16) : 0
  const pageLength = written === 1 ? 65_536 : written
  const pages = header.length === HEADER_LENGTH ? header.readUInt32BE(28) : 0
  if (header.length < HEADER_LENGTH || (fileLength < pageLength * pages && !hasLog(path))) {
    throw new ProblemError(
      'record-damaged',
      `“${basename(path)}” is shorter than it says it is: part of it is missing, as after a copy that was cut off. It ` +
        'was left as it is. Copy it again from where it came from, or open a backup.',
    )
  }
  if (header.readUInt32BE(68) !== APPLICATION_ID) throw foreign(path, null)
  if (pageLength < 512 || (pageLength & (pageLength - 1)) !== 0) throw damaged(path, null)
}

/**
 * Refuses what cannot be a car record before SQLite touches it, so that it stays as it is, byte for byte.
 *
 * The header is read through Node only while SQLite does not have the same file open in this process: closing any
 * descriptor of a file drops every POSIX lock the process holds on it (fcntl, POSIX.1-2017).
 */
export function checkFile(path: string, wish: { readonly readOnly: boolean }): void {
  const stats = statOf(path)
  if (stats.isDirectory()) {
    throw new ProblemError(
      'record-foreign',
      `“${basename(path)}” is a folder, not a car record. Choose the file (.wmk) inside it.`,
    )
  }
  if (!stats.isFile()) throw foreign(path, null)
  mustAllow(path, constants.R_OK, unreadable)
  if (!wish.readOnly) mustAllow(path, constants.W_OK, readOnly)
  if (stats.size === 0) {
    throw new ProblemError(
      'record-damaged',
      `“${basename(path)}” is empty: there is nothing in it. It was left as it is. Open a backup, or make a new record ` +
        'under another name.',
    )
  }
  if (!openHere.has(`${stats.dev}:${stats.ino}`)) checkHeader(path, readHeader(path), stats.size)
}
