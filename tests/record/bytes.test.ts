import { createHash, randomBytes } from 'node:crypto'
import { Readable } from 'node:stream'
import { buffer } from 'node:stream/consumers'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { CarRecord } from '../../electron/record/car-record.ts'
import { Connection } from '../../electron/record/connection.ts'
import { createRecord, openRecord } from '../../electron/record/open-record.ts'
import { addFinding, beginning, scratchFolder } from './sample-record.ts'

const MEGABYTE = 1024 * 1024
let scratch: ReturnType<typeof scratchFolder>
let record: CarRecord
beforeEach(async () => {
  scratch = scratchFolder()
  record = await createRecord(scratch.file('sedge.wmk'), beginning)
})
afterEach(async () => {
  await record.close()
  scratch.remove()
})

const hashOf = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex')
/** A stream in pieces of an odd length, so that chunk borders never fall on piece borders. */
const streamed = (bytes: Uint8Array) =>
  Readable.from(
    (function* () {
      for (let at = 0; at < bytes.length; at += 70_001) yield bytes.subarray(at, at + 70_001)
    })(),
  )

async function counted(table: string): Promise<number> {
  const connection = await Connection.open(scratch.file('sedge.wmk'), 'read')
  const row = await connection.get(`SELECT count(*) AS rows FROM ${table}`)
  await connection.close()
  return Number(row?.rows)
}

describe('large bytes', () => {
  it.each([0, 1, MEGABYTE - 1, MEGABYTE, MEGABYTE + 1, 3 * MEGABYTE, 5 * MEGABYTE + 17])(
    'come back exactly as they went in: %i bytes',
    async (length) => {
      const bytes = randomBytes(length)
      expect(await record.bytes.put(streamed(bytes))).toEqual({ sha256: hashOf(bytes), byteLength: length })
      expect((await buffer(record.bytes.read(hashOf(bytes)))).equals(bytes)).toBe(true)
      expect(await counted('byte_chunks')).toBe(Math.ceil(length / MEGABYTE))
    },
  )

  it('are stored once, however often they come', async () => {
    const bytes = randomBytes(2 * MEGABYTE)
    const both = await Promise.all([record.bytes.put(streamed(bytes)), record.bytes.put(streamed(bytes))])
    expect(both[0]).toEqual(both[1])
    expect(await counted('byte_strings')).toBe(1)
    expect(await counted('byte_chunks')).toBe(2)
  })

  it('leave nothing behind when the stream fails or is cancelled half-way', async () => {
    const failing = Readable.from(
      (function* () {
        yield randomBytes(2 * MEGABYTE)
        throw new Error('the card was pulled out')
      })(),
    )
    await expect(record.bytes.put(failing)).rejects.toThrow('the card was pulled out')
    const cancelled = new Readable({ read() {} })
    cancelled.push(randomBytes(2 * MEGABYTE))
    const putting = record.bytes.put(cancelled)
    setTimeout(() => cancelled.destroy(new Error('cancelled')), 30)
    await expect(putting).rejects.toThrow('cancelled')
    expect(await counted('byte_strings')).toBe(0)
    expect(await counted('byte_chunks')).toBe(0)
  })

  it('that were still arriving when the program died are cleared away at the next opening', async () => {
    const connection = await Connection.open(scratch.file('sedge.wmk'), 'write')
    await connection.script(
      'INSERT INTO byte_strings (id) VALUES (7); INSERT INTO byte_chunks VALUES (7, 0, zeroblob(9))',
    )
    await connection.close()
    await record.close()
    record = await openRecord(scratch.file('sedge.wmk'), { readOnly: false })
    expect(await counted('byte_strings')).toBe(0)
    expect(await counted('byte_chunks')).toBe(0)
  })

  it('that are not there are refused by name of the case', async () => {
    const missing = { problem: { code: 'not-found' } }
    await expect(buffer(record.bytes.read('0'.repeat(64)))).rejects.toMatchObject(missing)
    expect(await record.bytes.has('0'.repeat(64))).toBe(false)
    expect(await record.bytes.rendering('0'.repeat(64), 'thumbnail')).toBeNull()
    const size = { widthPx: 1, heightPx: 1 }
    await expect(record.bytes.putRendering('0'.repeat(64), 'report', randomBytes(3), size)).rejects.toMatchObject(
      missing,
    )
  })

  it('that were altered on the disk are not handed out as sound', async () => {
    const { sha256 } = await record.bytes.put(streamed(randomBytes(2 * MEGABYTE)))
    const connection = await Connection.open(scratch.file('sedge.wmk'), 'write')
    await connection.run('UPDATE byte_chunks SET bytes = zeroblob(1048576) WHERE position = 1')
    await connection.close()
    await expect(buffer(record.bytes.read(sha256))).rejects.toMatchObject({ problem: { code: 'record-damaged' } })
  })

  it('keep their renderings, and a rendering made again replaces the one before', async () => {
    const { sha256 } = await record.bytes.put(streamed(randomBytes(10)))
    await record.bytes.putRendering(sha256, 'thumbnail', new Uint8Array([1, 2, 3]), { widthPx: 4, heightPx: 3 })
    await record.bytes.putRendering(sha256, 'thumbnail', new Uint8Array([9]), { widthPx: 40, heightPx: 30 })
    const rendering = await record.bytes.rendering(sha256, 'thumbnail')
    expect([...(rendering?.bytes ?? [])]).toEqual([9])
    expect(rendering).toMatchObject({ widthPx: 40, heightPx: 30 })
    expect([...(await record.bytes.renderingSizes('thumbnail'))]).toEqual([[sha256, { widthPx: 40, heightPx: 30 }]])
    expect((await record.bytes.renderingSizes('report')).size).toBe(0)
    expect(await record.bytes.rendering(sha256, 'report')).toBeNull()
  })

  it('arrive while commands go on, and cost little memory: 128 MB through less than 80 MB', async () => {
    const before = process.memoryUsage().rss
    let highest = before
    const watching = setInterval(() => {
      highest = Math.max(highest, process.memoryUsage().rss)
    }, 5)
    const piece = randomBytes(256 * 1024)
    const putting = record.bytes.put(Readable.from(Array.from({ length: 512 }, () => piece)))
    for (let count = 0; count < 20; count += 1) await record.commit(addFinding(`while bytes arrive ${count}`))
    const { sha256, byteLength } = await putting
    let read = 0
    for await (const chunk of record.bytes.read(sha256)) read += (chunk as Uint8Array).length
    clearInterval(watching)
    expect([byteLength, read]).toEqual([128 * MEGABYTE, 128 * MEGABYTE])
    expect((highest - before) / MEGABYTE).toBeLessThan(80)
    expect(record.view().findings).toHaveLength(20)
  })
})
