import { readdirSync, readFileSync, statSync } from 'node:fs'
import { resolve } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { Connection } from '../../electron/record/connection.ts'
import { makeEmptyFile } from '../../electron/record/copy-record.ts'
import { migrations, versionOf } from '../../electron/record/migrations.ts'
import { createRecord, openRecord } from '../../electron/record/open-record.ts'
import { rebuildRecord } from '../../electron/record/rebuild.ts'
import { addFinding, beginning, findingDraft, scratchFolder, sender } from './sample-record.ts'
import { dumpTables } from './table-dump.ts'

let scratch: ReturnType<typeof scratchFolder>
beforeEach(() => {
  scratch = scratchFolder()
})
afterEach(() => scratch.remove())

/** A record as the program of that form left it: real bytes of the time, from `tests/fixtures/records`. */
async function recordOfVersion(version: number, path: string): Promise<void> {
  const left = resolve(import.meta.dirname, '..', 'fixtures', 'records', `form-${version}.sql`)
  makeEmptyFile(path)
  const file = await Connection.open(path, 'write')
  await file.script(readFileSync(left, 'utf8'))
  await file.close()
}

const version = async (path: string) => {
  const connection = await Connection.open(path, 'read')
  const found = await versionOf(connection)
  await connection.close()
  return found
}

describe('migrations', () => {
  it.each(migrations.slice(0, -1).map((migration) => migration.version))(
    'bring a record of version %i to the newest with nothing lost, and put a copy of the old file beside it',
    async (old) => {
      const path = scratch.file('sedge.wmk')
      await recordOfVersion(old, path)
      const before = await dumpTables(path)
      const record = await openRecord(path, { readOnly: false })
      const { particulars, commission, visit } = beginning
      expect(record.view()).toMatchObject({
        particulars: { ...particulars, title: 'Sedge coupé, 1961', dimensions: {} },
        commission,
        visits: [{ ...visit, number: 1 }],
        findings: [{ ...findingDraft, note: 'one', number: 1 }],
        journalNumber: 5,
      })
      await record.commit(addFinding('three'))
      expect((await record.verify()).sound).toBe(true)
      await record.close()
      expect(await version(path)).toBe(migrations.length)
      const copy = `${path}.before-${old + 1}`
      expect(await version(copy)).toBe(old)
      expect(await dumpTables(copy)).toEqual(before)
      expect(statSync(copy).mode & 0o777).toBe(0o600)
    },
  )

  it.each(migrations.slice(0, -1).map((migration) => migration.version))(
    'leave the journal of version %i able to undo, to do again and to rebuild',
    async (old) => {
      const path = scratch.file('sedge.wmk')
      await recordOfVersion(old, path)
      const record = await openRecord(path, { readOnly: false })
      const undone = await record.undo(sender())
      expect(undone.changes[0]?.after).toEqual(beginning.particulars)
      expect(record.view().particulars).toEqual(beginning.particulars)
      await record.redo(sender())
      expect(record.view().particulars).toEqual({ ...beginning.particulars, title: 'Sedge coupé, 1961' })
      const { entries } = await record.journal(null, 10)
      for (const change of entries.flatMap((entry) => entry.changes)) {
        if (change.register === 'particulars') expect(change.after).toMatchObject({ dimensions: {} })
      }
      await record.close()
      await rebuildRecord(path, scratch.file('rebuilt.wmk'))
      expect(await dumpTables(scratch.file('rebuilt.wmk'))).toEqual(await dumpTables(path))
    },
  )

  it('make the same tables in an old record as in a new one', async () => {
    const path = scratch.file('sedge.wmk')
    await recordOfVersion(1, path)
    await (await openRecord(path, { readOnly: false })).close()
    await (await createRecord(`${path}.now`, beginning)).close()
    const tablesOf = async (file: string) => {
      const connection = await Connection.open(file, 'read')
      const rows = await connection.all('SELECT name, sql FROM sqlite_schema ORDER BY name')
      await connection.close()
      return rows
    }
    expect(await tablesOf(path)).toEqual(await tablesOf(`${path}.now`))
  })

  it('ask for an older record to be opened for writing once, rather than change it while reading', async () => {
    const path = scratch.file('sedge.wmk')
    await recordOfVersion(1, path)
    const before = readFileSync(path)
    await expect(openRecord(path, { readOnly: true })).rejects.toMatchObject({
      problem: { code: 'record-read-only', message: expect.stringMatching(/earlier version/) },
    })
    expect(readFileSync(path).equals(before)).toBe(true)
  })

  it('that fail half-way leave the record at the version before, whole, with the copy beside it', async () => {
    const path = scratch.file('sedge.wmk')
    const record = await createRecord(path, beginning)
    const view = record.view()
    await record.close()
    const failing = { version: migrations.length + 1, sql: 'CREATE TABLE half (a TEXT) STRICT; CREATE TABLE half (b);' }
    const opening = openRecord(path, { readOnly: false, known: [...migrations, failing] })
    await expect(opening).rejects.toMatchObject({ problem: { code: 'internal' } })
    expect(await version(path)).toBe(migrations.length)
    expect(readdirSync(scratch.folder).sort()).toEqual(['sedge.wmk', `sedge.wmk.before-${migrations.length + 1}`])
    const again = await openRecord(path, { readOnly: false })
    expect(again.view()).toEqual(view)
    await again.close()
  })

  it('keep an older copy and take the next free name', async () => {
    const path = scratch.file('sedge.wmk')
    await (await createRecord(path, beginning)).close()
    const failing = { version: migrations.length + 1, sql: 'CREATE TABLE;' }
    for (let count = 0; count < 2; count += 1) {
      await openRecord(path, { readOnly: false, known: [...migrations, failing] }).catch(() => undefined)
    }
    const next = migrations.length + 1
    expect(readdirSync(scratch.folder).sort()).toEqual([
      'sedge.wmk',
      `sedge.wmk.before-${next}`,
      `sedge.wmk.before-${next}.1`,
    ])
  })
})
