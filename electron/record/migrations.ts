import { readdirSync, readFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { ProblemError } from '../../shared-types/problem-error.ts'
import { resourcePath } from '../places-on-disk.ts'
import type { Connection } from './connection.ts'
import { copyRecord, freeNameBeside } from './copy-record.ts'

/** One numbered step of the file's form; `sql` runs once, inside a transaction of its own. */
export interface Migration {
  readonly version: number
  readonly sql: string
}

/** The migrations of a folder, `001-words.sql` and on, without gaps. */
export function readMigrations(folder: string): readonly Migration[] {
  const names = readdirSync(folder)
    .filter((name) => /^\d{3}-[a-z-]+\.sql$/.test(name))
    .sort()
  return names.map((name, index) => {
    const version = Number(name.slice(0, 3))
    if (version !== index + 1) throw new Error(`Migration ${index + 1} is missing before ${name}.`)
    return { version, sql: readFileSync(join(folder, name), 'utf8') }
  })
}

export const migrations = readMigrations(resourcePath('migrations'))

/** Version of a record's form: the number of the last migration it has been through (SQLite's `user_version`). */
export const versionOf = async (connection: Connection): Promise<number> =>
  Number(await connection.pragma('user_version'))

/** Runs the migrations after the file's own version. Forward only; each is done wholly or not at all. */
export async function migrate(connection: Connection, known: readonly Migration[] = migrations): Promise<void> {
  const version = await versionOf(connection)
  for (const migration of known.slice(version)) {
    try {
      await connection.script(
        `BEGIN IMMEDIATE;\n${migration.sql}\nPRAGMA user_version = ${migration.version};\nCOMMIT;`,
      )
    } catch (fault) {
      await connection.script('ROLLBACK').catch(() => undefined)
      throw fault
    }
  }
}

/** Refuses a file whose form this program does not know yet. */
export async function refuseNewer(path: string, connection: Connection, known: readonly Migration[]): Promise<void> {
  const version = await versionOf(connection)
  if (version <= known.length) return
  throw new ProblemError(
    'record-newer',
    `“${basename(path)}” was written by a newer version of this program (form ${version}; this one knows ` +
      `${known.length}) and was left as it is. Update the program, then open it again.`,
  )
}

/** Brings an older record up to date, after a copy of it has been put beside the file as `….before-2`. */
export async function bringUpToDate(path: string, writer: Connection, known: readonly Migration[]): Promise<void> {
  const version = await versionOf(writer)
  if (version === known.length) return
  await copyRecord(path, freeNameBeside(path, `before-${version + 1}`))
  await migrate(writer, known)
}

/** Refuses an older record where it may only be read: it has to be brought up to date first. */
export async function refuseOlder(path: string, reader: Connection, known: readonly Migration[]): Promise<void> {
  if ((await versionOf(reader)) === known.length) return
  throw new ProblemError(
    'record-read-only',
    `“${basename(path)}” was written by an earlier version of this program and must be brought up to date before it ` +
      'can be read. Open it for writing once; a copy of the old file is kept beside it.',
  )
}
