import { existsSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { Readable } from 'node:stream'
import { buffer } from 'node:stream/consumers'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { Connection } from '../../electron/record/connection.ts'
import { createRecord, openRecord } from '../../electron/record/open-record.ts'
import { rebuildRecord } from '../../electron/record/rebuild.ts'
import { addFinding, amendFinding, beginning, scratchFolder, sender, withdrawFinding } from './sample-record.ts'
import { dumpTables } from './table-dump.ts'

let scratch: ReturnType<typeof scratchFolder>
let path: string
let photograph: string
beforeEach(async () => {
  scratch = scratchFolder()
  path = scratch.file('sedge.wmk')
  const record = await createRecord(path, beginning)
  for (let count = 0; count < 40; count += 1) await record.commit(addFinding(`finding ${count}`))
  await record.commit(amendFinding(3, 'amended'))
  await record.commit(withdrawFinding(40))
  await record.undo(sender())
  await record.undo(sender())
  await record.redo(sender())
  photograph = (await record.bytes.put(Readable.from([Buffer.alloc(2_300_000, 'grain')]))).sha256
  await record.bytes.putRendering(photograph, 'report', Buffer.from('small'), { widthPx: 3, heightPx: 2 })
  await record.close()
})
afterEach(() => scratch.remove())

describe('a record rebuilt from its journal', () => {
  it('has every table as the record itself has it, bytes and renderings included, and goes on from there', async () => {
    const target = scratch.file('rebuilt.wmk')
    expect(await rebuildRecord(path, target)).toBe(46)
    const tables = await dumpTables(path)
    expect(Object.keys(tables).length).toBe(23)
    expect(await dumpTables(target)).toEqual(tables)
    expect(statSync(target).mode & 0o777).toBe(0o600)
    const record = await openRecord(target, { readOnly: false })
    expect((await record.commit(addFinding('next'))).number).toBe(41)
    expect((await buffer(record.bytes.read(photograph))).length).toBe(2_300_000)
    await record.close()
  })

  it('stands again when a register’s own table was spoilt', async () => {
    const tables = await dumpTables(path)
    const connection = await Connection.open(path, 'read')
    const root = Number((await connection.get("SELECT rootpage FROM sqlite_schema WHERE name = 'findings'"))?.rootpage)
    await connection.close()
    const bytes = readFileSync(path)
    bytes.fill(0xa5, (root - 1) * 16_384, root * 16_384)
    writeFileSync(path, bytes)
    await expect(openRecord(path, { readOnly: true })).rejects.toMatchObject({ problem: { code: 'record-damaged' } })
    await rebuildRecord(path, scratch.file('rebuilt.wmk'))
    expect(await dumpTables(scratch.file('rebuilt.wmk'))).toEqual(tables)
  })

  it('is not made from a journal that does not hold, and nothing is left behind', async () => {
    const connection = await Connection.open(path, 'write')
    await connection.run(`UPDATE journal SET content = replace(content, 'finding 7', 'finding 9') WHERE number = 9`)
    await connection.close()
    await expect(rebuildRecord(path, scratch.file('rebuilt.wmk'))).rejects.toMatchObject({
      problem: { code: 'record-damaged', message: expect.stringMatching(/row 9/) },
    })
    expect(existsSync(scratch.file('rebuilt.wmk'))).toBe(false)
  })

  it('refuses to overwrite a file', async () => {
    await expect(rebuildRecord(path, path)).rejects.toMatchObject({ problem: { code: 'record-exists' } })
  })
})

describe('a backup', () => {
  it('holds every acknowledged row while the record is open and written, and may be read by its owner alone', async () => {
    const record = await openRecord(path, { readOnly: false })
    await record.commit(addFinding('still in the log'))
    await record.backup(scratch.file('copy.wmk'))
    expect(await dumpTables(scratch.file('copy.wmk'))).toEqual(await dumpTables(path))
    expect(statSync(scratch.file('copy.wmk')).mode & 0o777).toBe(0o600)
    await expect(record.backup(scratch.file('copy.wmk'))).rejects.toMatchObject({ problem: { code: 'record-exists' } })
    await record.close()
    const copy = await openRecord(scratch.file('copy.wmk'), { readOnly: true })
    expect((await copy.verify()).sound).toBe(true)
    await copy.close()
  })
})
