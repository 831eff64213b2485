import { createHash, randomInt } from 'node:crypto'
import { Readable } from 'node:stream'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { ByteStore, RenderingKind } from './car-record.ts'
import type { Connection } from './connection.ts'
import { damaged, withProblems } from './storage-problems.ts'
import type { WriterQueue } from './writer-queue.ts'

const CHUNK = 1024 * 1024

/** Cuts a stream into chunks of exactly 1 MiB, the last one shorter. */
async function* chunksOf(bytes: Readable): AsyncGenerator<Buffer> {
  let parts: Buffer[] = []
  let length = 0
  for await (const piece of bytes) {
    let rest = Buffer.from(piece as Uint8Array)
    while (length + rest.length >= CHUNK) {
      const room = CHUNK - length
      yield Buffer.concat([...parts, rest.subarray(0, room)])
      rest = rest.subarray(room)
      parts = []
      length = 0
    }
    if (rest.length > 0) parts.push(rest)
    length += rest.length
  }
  if (length > 0) yield Buffer.concat(parts)
}

/** Clears away what was still arriving when the program last ended. */
export const clearArriving = (writer: Connection): Promise<void> =>
  writer.run('DELETE FROM byte_strings WHERE sha256 IS NULL')

/** Stores the large byte strings of the record at `path`: written through the one queue, read beside it. */
export class RecordBytes implements ByteStore {
  readonly #path: string
  readonly #queue: WriterQueue
  readonly #reader: Connection

  constructor(path: string, queue: WriterQueue, reader: Connection) {
    this.#path = path
    this.#queue = queue
    this.#reader = reader
  }

  async put(bytes: Readable): Promise<{ sha256: string; byteLength: number }> {
    const id = randomInt(2 ** 47)
    const hash = createHash('sha256')
    let byteLength = 0
    let position = 0
    try {
      await this.#queue.write((writer) => writer.run('INSERT INTO byte_strings (id) VALUES (?)', id))
      for await (const chunk of chunksOf(bytes)) {
        hash.update(chunk)
        byteLength += chunk.length
        const at = position
        await this.#queue.write((writer) =>
          writer.run('INSERT INTO byte_chunks (byte_string, position, bytes) VALUES (?, ?, ?)', id, at, chunk),
        )
        position += 1
      }
      const sha256 = hash.digest('hex')
      await this.#queue.write((writer) => name(writer, id, sha256, byteLength))
      return { sha256, byteLength }
    } catch (fault) {
      bytes.destroy()
      // What cannot be cleared now (a full disk) is cleared when the record is next opened.
      await this.#queue
        .write((writer) => writer.run('DELETE FROM byte_strings WHERE id = ?', id))
        .catch(() => undefined)
      throw fault
    }
  }

  async has(sha256: string): Promise<boolean> {
    return (await this.#named(sha256)) !== null
  }

  read(sha256: string): Readable {
    return Readable.from(this.#chunks(sha256), { objectMode: false, highWaterMark: CHUNK })
  }

  async putRendering(
    original: string,
    kind: RenderingKind,
    bytes: Uint8Array,
    size: { widthPx: number; heightPx: number },
  ): Promise<void> {
    if (!(await this.has(original))) throw missing()
    await this.#queue.write((writer) =>
      writer.run(
        'INSERT OR REPLACE INTO renderings (original, kind, width_px, height_px, bytes) VALUES (?, ?, ?, ?, ?)',
        original,
        kind,
        size.widthPx,
        size.heightPx,
        bytes,
      ),
    )
  }

  async rendering(original: string, kind: RenderingKind) {
    const row = await this.#get('SELECT * FROM renderings WHERE original = ? AND kind = ?', original, kind)
    if (!row) return null
    return { bytes: row.bytes as Uint8Array, widthPx: Number(row.width_px), heightPx: Number(row.height_px) }
  }

  async renderingSizes(kind: RenderingKind) {
    const rows = await withProblems(this.#path, () =>
      this.#reader.all('SELECT original, width_px, height_px FROM renderings WHERE kind = ?', kind),
    )
    return new Map(
      rows.map((row) => [String(row.original), { widthPx: Number(row.width_px), heightPx: Number(row.height_px) }]),
    )
  }

  #get(sql: string, ...values: (string | number)[]) {
    return withProblems(this.#path, () => this.#reader.get(sql, ...values))
  }

  async #named(sha256: string): Promise<{ id: number; byteLength: number } | null> {
    const row = await this.#get('SELECT id, byte_length FROM byte_strings WHERE sha256 = ?', sha256)
    return row ? { id: Number(row.id), byteLength: Number(row.byte_length) } : null
  }

  async *#chunks(sha256: string): AsyncGenerator<Uint8Array> {
    const found = await this.#named(sha256)
    if (!found) throw missing()
    const hash = createHash('sha256')
    for (let position = 0; position * CHUNK < found.byteLength; position += 1) {
      const row = await this.#get(
        'SELECT bytes FROM byte_chunks WHERE byte_string = ? AND position = ?',
        found.id,
        position,
      )
      if (!row) throw damaged(this.#path, null)
      hash.update(row.bytes as Uint8Array)
      yield row.bytes as Uint8Array
    }
    if (hash.digest('hex') !== sha256) throw damaged(this.#path, null)
  }
}

const missing = () =>
  new ProblemError('not-found', 'This record does not hold those bytes. Import the photograph or document again.')

/** Gives an arrived string its name, or drops it when the same bytes are there already. */
async function name(writer: Connection, id: number, sha256: string, byteLength: number): Promise<void> {
  if (await writer.get('SELECT 1 FROM byte_strings WHERE sha256 = ?', sha256)) {
    await writer.run('DELETE FROM byte_strings WHERE id = ?', id)
  } else {
    await writer.run('UPDATE byte_strings SET sha256 = ?, byte_length = ? WHERE id = ?', sha256, byteLength, id)
  }
}
