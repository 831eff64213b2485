import { rmSync } from 'node:fs'
import { basename } from 'node:path'
import { ProblemError } from '../../shared-types/problem-error.ts'
import { Connection } from './connection.ts'
import { checkFile, noteOpen } from './file-check.ts'
import { everyRow, NO_HASH, rowIsSound } from './journal.ts'
import { stepsOf } from './journalled-changes.ts'
import { makeFile } from './open-record.ts'
import { withProblems } from './storage-problems.ts'

/** Replays the journal in pieces of so many rows a transaction. */
const PIECE = 500

async function replayJournal(source: string, from: Connection, to: Connection): Promise<number> {
  let hash = NO_HASH
  let number = 0
  await to.run('BEGIN')
  for await (const row of everyRow(from)) {
    number += 1
    if (!rowIsSound(row, number, hash)) {
      throw new ProblemError(
        'record-damaged',
        `The journal of “${basename(source)}” does not hold at row ${number}: it was damaged or altered there. Nothing ` +
          'was rebuilt; open a backup made before that row.',
      )
    }
    for (const [sql, ...values] of stepsOf(row)) await to.run(sql, ...values)
    hash = row.hash
    if (number % PIECE === 0) {
      await to.run('COMMIT')
      await to.run('BEGIN')
    }
  }
  await to.run('COMMIT')
  return number
}

/** Copies the large bytes, which are source and not derived, one chunk at a time. */
async function copyBytes(from: Connection, to: Connection): Promise<void> {
  for (const { id, sha256, byte_length } of await from.all('SELECT * FROM byte_strings WHERE sha256 IS NOT NULL')) {
    await to.run('INSERT INTO byte_strings VALUES (?, ?, ?)', id ?? null, sha256 ?? null, byte_length ?? null)
    for (let position = 0; ; position += 1) {
      const chunk = await from.get(
        'SELECT bytes FROM byte_chunks WHERE byte_string = ? AND position = ?',
        id ?? null,
        position,
      )
      if (!chunk) break
      await to.run('INSERT INTO byte_chunks VALUES (?, ?, ?)', id ?? null, position, chunk.bytes ?? null)
    }
  }
  for (const { original, kind } of await from.all('SELECT original, kind FROM renderings')) {
    const row = await from.get(
      'SELECT * FROM renderings WHERE original = ? AND kind = ?',
      original ?? null,
      kind ?? null,
    )
    if (row) await to.run('INSERT INTO renderings VALUES (?, ?, ?, ?, ?)', ...Object.values(row))
  }
}

/**
 * Makes every table of a record again from its journal, in a new file, and copies the large bytes. Serves repair when
 * tables are damaged but the journal holds, and the test that the tables say what the journal says. Answers the
 * number of journal rows. Throws `record-damaged` at the first row that breaks the chain; leaves nothing behind then.
 */
export async function rebuildRecord(source: string, target: string): Promise<number> {
  checkFile(source, { readOnly: true })
  return withProblems(source, async () => {
    const forget = noteOpen(source)
    const from = await Connection.open(source, 'read')
    const to = await makeFile(target).catch(async (fault) => {
      await from.close()
      forget()
      throw fault
    })
    try {
      const rows = await replayJournal(source, from, to)
      await copyBytes(from, to)
      await to.close()
      return rows
    } catch (fault) {
      await to.close().catch(() => undefined)
      rmSync(target, { force: true })
      throw fault
    } finally {
      await from.close().catch(() => undefined)
      forget()
    }
  })
}
