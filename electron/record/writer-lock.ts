import { chmodSync, closeSync, openSync, rmSync, statSync } from 'node:fs'
import { hostname } from 'node:os'
import { basename } from 'node:path'
import { ProblemError } from '../../shared-types/problem-error.ts'
import { Connection, StorageFault } from './connection.ts'
import { inUse, readOnly } from './storage-problems.ts'

/** Who writes a record now. */
interface Holder {
  readonly program: string
  readonly pid: number
  readonly host: string
  readonly since: string
}

const PROGRAM = 'Witnessmark'
const ATTEMPTS = 20

function makeIfMissing(lockPath: string): void {
  try {
    // Only a file that was not there is opened here: closing a descriptor of a held lock would drop it.
    closeSync(openSync(lockPath, 'wx', 0o600))
    chmodSync(lockPath, 0o600)
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code !== 'EEXIST') throw readOnly(lockPath.replace(/-lock$/, ''), fault)
  }
}

const inodeOf = (path: string) => statSync(path, { bigint: true, throwIfNoEntry: false })?.ino ?? null

async function readHolder(connection: Connection): Promise<Holder | null> {
  const row = await connection.get('SELECT program, pid, host, since FROM holder')
  if (!row) return null
  return { program: String(row.program), pid: Number(row.pid), host: String(row.host), since: String(row.since) }
}

async function refusal(path: string, connection: Connection): Promise<ProblemError> {
  const holder = await readHolder(connection).catch(() => null)
  if (!holder) return inUse(path, null)
  const here = holder.pid === process.pid && holder.host === hostname()
  const who = here ? 'this program' : `${holder.program} (process ${holder.pid} on ${holder.host})`
  return new ProblemError(
    'record-in-use',
    `“${basename(path)}” is open in ${who} since ${holder.since}. Close it there, or open it to read.`,
    { instead: ['open to read'] },
  )
}

/** Writes the holder's name and takes the lock; null when another one got in between. */
async function claim(connection: Connection, holder: Holder): Promise<true | null> {
  await connection.script('BEGIN IMMEDIATE')
  await connection.script(
    'CREATE TABLE IF NOT EXISTS holder (the INTEGER PRIMARY KEY CHECK (the = 1), program TEXT, pid INTEGER, host TEXT, since TEXT)',
  )
  await connection.run(
    'INSERT OR REPLACE INTO holder VALUES (1, ?, ?, ?, ?)',
    holder.program,
    holder.pid,
    holder.host,
    holder.since,
  )
  await connection.script('COMMIT; BEGIN IMMEDIATE')
  const now = await readHolder(connection)
  return now?.pid === holder.pid && now.since === holder.since ? true : null
}

/** The right to write one record, held by one open record at a time, on one machine or over a network folder. */
export interface WriterLock {
  release(): Promise<void>
}

/**
 * Takes the right to write the record at `path`, or throws `record-in-use` naming who has it.
 *
 * The lock is a second, tiny SQLite file beside the record, on which a write transaction is held open: the operating
 * system drops it when the process dies, whatever way, so a crash locks nobody out though the small file stays. A
 * waiting process can read who holds it, since a reserved lock lets readers in. The record itself cannot carry the
 * lock: it must be writable and readable by others the while.
 */
export async function takeWriterLock(path: string): Promise<WriterLock> {
  const lockPath = `${path}-lock`
  const holder: Holder = { program: PROGRAM, pid: process.pid, host: hostname(), since: new Date().toISOString() }
  for (let attempt = 0; attempt < ATTEMPTS; attempt += 1) {
    makeIfMissing(lockPath)
    const inode = inodeOf(lockPath)
    let connection: Connection | null = null
    try {
      connection = await Connection.open(lockPath, 'write')
      await connection.pragma('busy_timeout = 100')
      await connection.pragma('synchronous = OFF')
      const got = await claim(connection, holder)
      // The holder before us may have removed the file while we waited; then ours has no name and others miss it.
      if (got && inode !== null && inodeOf(lockPath) === inode) return releasable(lockPath, connection)
    } catch (fault) {
      if (!(fault instanceof StorageFault)) throw fault
      if (fault.kind === 'busy' && connection) throw await refusal(path, connection).finally(() => connection?.close())
      if (fault.kind === 'read-only') throw readOnly(path, fault)
      // A lock file that is no database cannot be in anybody's hands: whoever held it had to read it first.
      if (fault.kind === 'foreign' || fault.kind === 'damaged') rmSync(lockPath, { force: true })
      else if (fault.kind !== 'cannot-open') throw fault
    }
    await connection?.close().catch(() => undefined)
  }
  throw inUse(path, null)
}

function releasable(lockPath: string, connection: Connection): WriterLock {
  return {
    async release() {
      // Removed while still held, so that nobody can take a file that is about to lose its name. Where an open file
      // cannot be removed (Windows), it goes after closing, or stays and is taken again next time.
      const remove = () => rmSync(lockPath, { force: true })
      try {
        remove()
        await connection.close()
      } catch {
        await connection.close()
        try {
          remove()
        } catch {
          // Another program took it meanwhile: it is theirs now.
        }
      }
    },
  }
}
