import { realpathSync, rmSync, statSync } from 'node:fs'
import { resolve } from 'node:path'
import type { Commission, Particulars, VisitDraft } from '../../shared-types/car.ts'
import { clearArriving } from './byte-store.ts'
import type { CarRecord } from './car-record.ts'
import { Connection } from './connection.ts'
import { makeEmptyFile } from './copy-record.ts'
import { APPLICATION_ID, checkFile, noteOpen } from './file-check.ts'
import { chainHash, type JournalRow, lastRow, NO_HASH, seal } from './journal.ts'
import { journalled, stepsOf } from './journalled-changes.ts'
import { bringUpToDate, type Migration, migrate, migrations, refuseNewer, refuseOlder } from './migrations.ts'
import { readCounters } from './number-counters.ts'
import { RecordImage } from './record-image.ts'
import { RecordOnDisk } from './record-on-disk.ts'
import { damaged, withProblems } from './storage-problems.ts'
import { emptyStacks } from './undo-stacks.ts'
import { takeWriterLock } from './writer-lock.ts'

/** What a record begins with. It becomes the first journal row, so that the journal alone can rebuild the record. */
export interface Beginning {
  readonly commandId: string
  readonly particulars: Particulars
  readonly commission: Commission
  readonly visit: VisitDraft
  readonly who: string
  readonly at: string
}

const CREATE = 'records.create'
const PAGE_LENGTH = 16_384
/** Pages the log may grow to before it is folded into the file: 4 MB. */
const LOG_PAGES = 256

/** Makes the file, mode 0600, with all tables and no rows. Throws `record-exists` and leaves an existing file alone. */
export async function makeFile(path: string, known: readonly Migration[] = migrations): Promise<Connection> {
  makeEmptyFile(path)
  let connection: Connection | null = null
  try {
    connection = await Connection.open(path, 'write')
    await connection.pragma(`page_size = ${PAGE_LENGTH}`)
    await connection.pragma(`application_id = ${APPLICATION_ID}`)
    await connection.pragma('foreign_keys = ON')
    await migrate(connection, known)
    return connection
  } catch (fault) {
    await connection?.close().catch(() => undefined)
    rmSync(path, { force: true })
    throw fault
  }
}

function firstRow({ commandId, particulars, commission, visit, who, at }: Beginning): JournalRow {
  const first = { ...visit, number: 1 }
  const changes = journalled(RecordImage.empty(), [
    { register: 'particulars', key: 'the', after: particulars },
    { register: 'commission', key: 'the', after: commission },
    { register: 'visits', key: '1', after: first },
  ])
  return seal(
    {
      ...emptyStacks,
      number: 1,
      commandId,
      at,
      who,
      command: CREATE,
      input: { particulars, commission, visit },
      changes,
      label: `Record begun: ${particulars.title}`,
      given: null,
      taken: { visits: 1 },
      undoes: null,
    },
    NO_HASH,
  )
}

/**
 * Makes a new record and opens it. Throws `record-exists` when there is a file of that name, `disk-full`,
 * `record-read-only` when the folder may not be written. Nothing is left behind when it fails.
 */
export async function createRecord(path: string, first: Beginning): Promise<CarRecord> {
  const row = firstRow(first)
  await withProblems(path, async () => {
    const connection = await makeFile(path)
    try {
      await connection.transaction(stepsOf(row))
      await connection.close()
    } catch (fault) {
      await connection.close().catch(() => undefined)
      rmSync(path, { force: true })
      throw fault
    }
  })
  return openRecord(path, { readOnly: false })
}

/** The last row, its own hash recomputed; the whole chain is for `verify`, since it takes as long as the journal is. */
async function soundHead(path: string, reader: Connection): Promise<JournalRow> {
  const head = await lastRow(reader)
  if (!head || head.hash !== chainHash(head.previousHash, head.text)) throw damaged(path, null)
  return head
}

/**
 * A program that died while the file itself was being written (on its way into the log or out of it) leaves a rollback
 * journal. Only a connection that may write can roll back, and until one did SQLite lets nobody read: it answers
 * SQLITE_READONLY_ROLLBACK (sqlite.org/rescode.html). Rolling back restores what was there, and so harms no file.
 */
async function rollBackBroken(file: string): Promise<void> {
  const broken = statSync(`${file}-journal`, { throwIfNoEntry: false })
  if (broken === undefined || broken.size === 0) return
  const connection = await Connection.open(file, 'write')
  try {
    await connection.pragma('user_version')
  } finally {
    await connection.close()
  }
}

/** From here on the file is written: commits go to a log beside it, each forced to the disk before it is answered. */
async function beginWriting(writer: Connection): Promise<void> {
  await writer.pragma('journal_mode = WAL')
  await writer.pragma('synchronous = FULL')
  await writer.pragma('foreign_keys = ON')
  await writer.pragma(`wal_autocheckpoint = ${LOG_PAGES}`)
  await clearArriving(writer)
}

/** Folds the log into the file and goes back to one file. Where a reader is still at it, the next to open does it. */
async function endWriting(writer: Connection): Promise<void> {
  await writer.pragma('wal_checkpoint(TRUNCATE)')
  await writer.pragma('journal_mode = DELETE').catch(() => undefined)
  await writer.close()
}

/**
 * Opens the record at `path`. Every file that cannot be opened is refused with a problem of its own and left as it is:
 * `record-missing`, `record-foreign`, `record-newer`, `record-damaged`, `record-unreadable`, `record-read-only`, and
 * `record-in-use` when another open record has the right to write. A record opened to read stands as it stood then.
 */
export async function openRecord(
  path: string,
  { readOnly, known = migrations }: { readonly readOnly: boolean; readonly known?: readonly Migration[] },
): Promise<CarRecord> {
  checkFile(path, { readOnly })
  const file = realpathSync(resolve(path))
  return withProblems(file, async () => {
    const lock = readOnly ? null : await takeWriterLock(file)
    const forget = noteOpen(file)
    let reader: Connection | null = null
    let writer: Connection | null = null
    const leave = async () => {
      try {
        await reader?.close()
        if (writer) await endWriting(writer)
      } finally {
        forget()
        await lock?.release()
      }
    }
    try {
      await rollBackBroken(file)
      // A reading connection looks first: it cannot change a file that turns out to be newer or damaged.
      reader = await Connection.open(file, 'read')
      await refuseNewer(file, reader, known)
      await soundHead(file, reader)
      if (readOnly) await refuseOlder(file, reader, known)
      else await migrated(file, known)
      const head = await soundHead(file, reader)
      const image = await RecordImage.read(reader)
      const counters = await readCounters(reader)
      if (!readOnly) {
        writer = await Connection.open(file, 'write')
        await beginWriting(writer)
      }
      return await RecordOnDisk.on({ path: file, readOnly, writer, reader, image, counters, head, leave })
    } catch (fault) {
      await leave().catch(() => undefined)
      throw fault
    }
  })
}

async function migrated(file: string, known: readonly Migration[]): Promise<void> {
  const writer = await Connection.open(file, 'write')
  try {
    await bringUpToDate(file, writer, known)
  } finally {
    await writer.close()
  }
}
