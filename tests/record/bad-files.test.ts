import { chmodSync, cpSync, mkdirSync, readdirSync, readFileSync, statSync, truncateSync, writeFileSync } from 'node:fs'
import { Readable } from 'node:stream'
import { afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { Connection } from '../../electron/record/connection.ts'
import { createRecord, openRecord } from '../../electron/record/open-record.ts'
import { addFinding, beginning, scratchFolder } from './sample-record.ts'
import { bundleSurveyChild, runChild } from './second-process.ts'
import { dumpTables } from './table-dump.ts'

let scratch: ReturnType<typeof scratchFolder>
let path: string
const PAGE = 16_384
/** Somebody who is not root, since root may read and write everything. */
const NOBODY = process.getuid?.() === 0 ? { uid: 65_534, gid: 65_534 } : {}

beforeAll(bundleSurveyChild)
beforeEach(async () => {
  scratch = scratchFolder()
  path = scratch.file('sedge.wmk')
  const record = await createRecord(path, beginning)
  for (let count = 0; count < 60; count += 1) await record.commit(addFinding(`finding ${count} `.repeat(40)))
  await record.close()
})
afterEach(() => {
  vi.restoreAllMocks()
  scratch.remove()
})

async function alter(sql: string): Promise<void> {
  const connection = await Connection.open(path, 'write')
  await connection.script(sql)
  await connection.close()
}
const overwrite = (at: number, length: number) => {
  const bytes = readFileSync(path)
  bytes.fill(0xa5, at, at + length)
  writeFileSync(path, bytes)
}
async function pageOf(name: string): Promise<number> {
  const connection = await Connection.open(path, 'read')
  const row = await connection.get('SELECT rootpage FROM sqlite_schema WHERE name = ?', name)
  await connection.close()
  return Number(row?.rootpage)
}

const bad: readonly [what: string, spoil: () => unknown, code: string, words: RegExp][] = [
  [
    'a text file',
    () => writeFileSync(path, 'Dear Sir, the car is as new.'.repeat(99)),
    'record-foreign',
    /not a car record/,
  ],
  [
    'a picture of a few bytes',
    () => writeFileSync(path, Buffer.from([0xff, 0xd8, 0xff])),
    'record-foreign',
    /not a car record/,
  ],
  ['another program’s database', () => alter('PRAGMA application_id = 7'), 'record-foreign', /not a car record/],
  ['an empty file', () => truncateSync(path, 0), 'record-damaged', /is empty/],
  ['a file cut off in the middle', () => truncateSync(path, statSync(path).size / 2), 'record-damaged', /shorter than/],
  ['a file cut off by one byte', () => truncateSync(path, statSync(path).size - 1), 'record-damaged', /shorter than/],
  ['a file cut off in its header', () => truncateSync(path, 40), 'record-damaged', /shorter than/],
  ['a newer form', () => alter('PRAGMA user_version = 99'), 'record-newer', /newer version/],
  ['a spoilt list of tables', () => overwrite(100, 8000), 'record-damaged', /is damaged/],
  [
    'a spoilt journal',
    async () => overwrite(((await pageOf('journal')) - 1) * PAGE, PAGE),
    'record-damaged',
    /is damaged/,
  ],
  [
    'a spoilt register',
    async () => overwrite(((await pageOf('findings')) - 1) * PAGE, PAGE),
    'record-damaged',
    /is damaged/,
  ],
  ['a record without its first rows', () => alter('DELETE FROM journal'), 'record-damaged', /is damaged/],
]

describe('a file that is no sound record', () => {
  it.each(bad)(
    '(%s) is refused with its own message, to write and to read, and left byte for byte',
    async (_, spoil, code, words) => {
      await spoil()
      const listed = readdirSync(scratch.folder)
      const before = readFileSync(path)
      for (const readOnly of [false, true]) {
        await expect(openRecord(path, { readOnly })).rejects.toMatchObject({
          problem: { code, message: expect.stringMatching(words) },
        })
      }
      expect(readFileSync(path).equals(before)).toBe(true)
      expect(readdirSync(scratch.folder)).toEqual(listed)
    },
  )

  it('(no longer there) is refused by name, and none is made', async () => {
    await expect(openRecord(scratch.file('gone.wmk'), { readOnly: false })).rejects.toMatchObject({
      problem: { code: 'record-missing', message: expect.stringMatching(/no file “gone.wmk”/) },
    })
    expect(readdirSync(scratch.folder)).toEqual(['sedge.wmk'])
  })

  it('(a folder) is refused as a folder', async () => {
    mkdirSync(scratch.file('folder.wmk'))
    await expect(openRecord(scratch.file('folder.wmk'), { readOnly: false })).rejects.toMatchObject({
      problem: { code: 'record-foreign', message: expect.stringMatching(/is a folder/) },
    })
  })

  it('(unreadable) is refused to whoever may not read it', async () => {
    chmodSync(scratch.folder, 0o755)
    chmodSync(path, 0o000)
    expect(await runChild('read', path, NOBODY)).toMatchObject({
      code: 'record-unreadable',
      message: expect.stringMatching(/may not be read/),
    })
  })

  it('(read-only) is refused to write with the way out, and opens to read', async () => {
    chmodSync(scratch.folder, 0o755)
    chmodSync(path, 0o444)
    const before = readFileSync(path)
    expect(await runChild('write', path, NOBODY)).toMatchObject({
      code: 'record-read-only',
      message: expect.stringMatching(/Open it to read, or copy it/),
    })
    expect(await runChild('read', path, NOBODY)).toEqual({ opened: 61 })
    expect(readFileSync(path).equals(before)).toBe(true)
    expect(readdirSync(scratch.folder)).toEqual(['sedge.wmk'])
  })

  it('(in a folder one may not write) is refused to write, and opens to read', async () => {
    chmodSync(scratch.folder, 0o755)
    chmodSync(path, 0o666)
    if (process.getuid?.() !== 0) chmodSync(scratch.folder, 0o555)
    expect(await runChild('write', path, NOBODY)).toMatchObject({ code: 'record-read-only' })
    expect(await runChild('read', path, NOBODY)).toEqual({ opened: 61 })
    chmodSync(scratch.folder, 0o755)
  })

  it('that was copied while its log lay beside it opens with every acknowledged row, when the log is copied too', async () => {
    const record = await openRecord(path, { readOnly: false })
    await record.commit(addFinding('in the log only'))
    cpSync(path, scratch.file('copy.wmk'))
    cpSync(`${path}-wal`, scratch.file('copy.wmk-wal'))
    await record.close()
    const copy = await openRecord(scratch.file('copy.wmk'), { readOnly: true })
    expect(copy.view().findings.at(-1)?.note).toBe('in the log only')
    await copy.close()
  })

  it.each([false, true])(
    'that was half written when the program died stands as before (opened to read: %s)',
    async (readOnly) => {
      const before = await dumpTables(path)
      const writing = await Connection.open(path, 'write')
      // The file is written before the commit, as when the cache is full; the rollback journal then lies ready beside it.
      await writing.pragma('synchronous = OFF')
      await writing.pragma('cache_size = 1')
      await writing.script("BEGIN; UPDATE findings SET note = note || 'half written'")
      const torn = scratch.file('torn.wmk')
      cpSync(path, torn)
      cpSync(`${path}-journal`, `${torn}-journal`)
      await writing.script('ROLLBACK')
      await writing.close()
      expect(readFileSync(torn).includes('half written')).toBe(true)
      const record = await openRecord(torn, { readOnly })
      expect(record.view().findings).toHaveLength(60)
      expect((await record.verify()).sound).toBe(true)
      await record.close()
      expect(await dumpTables(torn)).toEqual(before)
    },
  )
})

describe('a full disk', () => {
  it('refuses the change, keeps everything before it, and goes on when there is room again', async () => {
    const opening = vi.spyOn(Connection, 'open')
    const record = await openRecord(path, { readOnly: false })
    const opened = await Promise.all(opening.mock.results.map(({ value }) => value as Promise<Connection>))
    const writer = opened[opening.mock.calls.findLastIndex(([file, mode]) => file === record.path && mode === 'write')]
    if (!writer) throw new Error('The record opened no writing connection.')
    const pages = Number(await writer.pragma('page_count'))
    const view = record.view()
    const tables = await dumpTables(path)
    await writer.pragma(`max_page_count = ${pages}`)
    const full = { problem: { code: 'disk-full', message: expect.stringMatching(/Free some\s+space/) } }
    await expect(record.commit(addFinding('x'.repeat(90_000)))).rejects.toMatchObject(full)
    await expect(record.bytes.put(Readable.from([Buffer.alloc(3_000_000)]))).rejects.toMatchObject(full)
    expect(record.view()).toBe(view)
    expect(await dumpTables(path)).toEqual(tables)
    await writer.pragma('max_page_count = 1000000')
    expect((await record.commit(addFinding('room again'))).number).toBe(61)
    expect((await record.verify()).sound).toBe(true)
    await record.close()
  })
})
