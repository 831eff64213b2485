import { createHash } from 'node:crypto'
import { once } from 'node:events'
import type { Writable } from 'node:stream'
import { promisify } from 'node:util'
import { deflate } from 'node:zlib'
import { PDFContext, type PDFDict, PDFHexString, type PDFObject, type PDFRef } from './pdf-objects.ts'

const deflated = promisify<Uint8Array, Buffer>(deflate)

const OBJECTS_IN_A_STREAM = 200
/** Streams compressed at one time: each takes a quarter of a megabyte while it is. */
const COMPRESSED_AT_ONCE = 4
/** Bytes handed to the output at one time, so that many small pieces cost no more than their bytes. */
const WRITTEN_AT_ONCE = 1024 * 1024
/** Bytes the output may have before it, so that it has work while this program has other. */
const MOST_BEFORE_OUTPUT = 8 * 1024 * 1024
/** Widths of the three fields of a cross-reference row: kind, place, index. Five bytes reach a terabyte. */
const CROSS_REFERENCE_WIDTHS = [1, 5, 2] as const

/** A stream on its way into the file. */
interface Coming {
  readonly ref: PDFRef
  readonly dictionary: PDFDict
  readonly bytes: Promise<Buffer>
}

const END_OF_STREAM = Buffer.from('\nendstream\nendobj\n', 'latin1')

type Place = { readonly offset: number } | { readonly inStream: number; readonly index: number }

/**
 * Writes a PDF 1.7 file object by object (ISO 32000-1, 7.5.7 object streams and 7.5.8 cross-reference stream), so that
 * no more than a few pictures are ever held. Counts and hashes what it writes; waits whenever the output falls behind.
 * Streams to be compressed are few and small: they are compressed beside other work, and written in the order they came
 * when the file is finished, behind those written at once.
 */
export class ObjectWriter {
  readonly context = PDFContext.create()
  readonly #output: Writable
  readonly #hash = createHash('sha256')
  readonly #places = new Map<number, Place>()
  readonly #coming: Coming[] = []
  readonly #lanes: Promise<unknown>[] = []
  #offset = 0
  #waiting: { readonly ref: PDFRef; readonly text: string }[] = []
  #held: Uint8Array[] = []
  #heldLength = 0
  #failure: Error | null = null

  constructor(output: Writable) {
    this.#output = output
    output.once('error', (error) => {
      this.#failure = error
    })
  }

  /** Writes the first line and the comment that marks the file as binary. */
  async begin(): Promise<void> {
    await this.#put(Buffer.from('%PDF-1.7\n%\xE2\xE3\xCF\xD3\n', 'latin1'))
  }

  /** Takes an object that is no stream, or its text; it is written together with its neighbours, compressed. */
  write(ref: PDFRef, object: PDFObject | string): void {
    this.#waiting.push({ ref, text: object.toString() })
    if (this.#waiting.length >= OBJECTS_IN_A_STREAM) this.#gatherWaiting()
  }

  /** Writes a stream at once; `bytes` are passed through as they are. */
  async writeStream(ref: PDFRef, dictionary: PDFDict, bytes: Uint8Array): Promise<void> {
    dictionary.set(this.context.obj('Length'), this.context.obj(bytes.length))
    this.#places.set(ref.objectNumber, { offset: this.#offset })
    const head = `${ref.objectNumber} 0 obj\n${dictionary.toString()}\nstream\n`
    await this.#put(Buffer.from(head, 'latin1'), bytes, END_OF_STREAM)
  }

  /** Takes a stream that is passed through as it is when the file is finished. */
  writeLater(ref: PDFRef, dictionary: PDFDict, bytes: Buffer): void {
    this.#coming.push({ ref, dictionary, bytes: Promise.resolve(bytes) })
  }

  /** Takes a stream, to be compressed by zlib. */
  writeCompressed(ref: PDFRef, dictionary: PDFDict, bytes: Uint8Array): void {
    dictionary.set(this.context.obj('Filter'), this.context.obj('FlateDecode'))
    const lane = this.#coming.length % COMPRESSED_AT_ONCE
    const compressed = Promise.resolve(this.#lanes[lane]).then(() => deflated(bytes))
    // What goes wrong is told when its turn comes to be written.
    compressed.catch(() => undefined)
    this.#lanes[lane] = compressed
    this.#coming.push({ ref, dictionary, bytes: compressed })
  }

  /** Writes what waits, the cross-references and the trailer. The file's identifier follows from all bytes before it. */
  async finish(root: PDFRef, information: PDFRef): Promise<{ readonly byteLength: number; readonly sha256: string }> {
    this.#gatherWaiting()
    for (const { ref, dictionary, bytes } of this.#coming) await this.writeStream(ref, dictionary, await bytes)
    await this.#handOver()
    const start = this.#offset
    const ref = this.context.nextRef()
    this.#places.set(ref.objectNumber, { offset: start })
    const identifier = PDFHexString.of(this.#hash.copy().digest('hex').slice(0, 32))
    const dictionary = this.context.obj({
      Type: 'XRef',
      Size: ref.objectNumber + 1,
      W: [...CROSS_REFERENCE_WIDTHS],
      Root: root,
      Info: information,
      ID: [identifier, identifier],
      Filter: 'FlateDecode',
    })
    await this.writeStream(ref, dictionary, await deflated(this.#crossReferences(ref.objectNumber + 1)))
    await this.#put(Buffer.from(`startxref\n${start}\n%%EOF\n`, 'latin1'))
    await this.#handOver()
    return { byteLength: this.#offset, sha256: this.#hash.digest('hex') }
  }

  #gatherWaiting(): void {
    const objects = this.#waiting
    if (objects.length === 0) return
    this.#waiting = []
    const ref = this.context.nextRef()
    let length = 0
    const starts = objects.map(({ ref: own, text }, index) => {
      const start = `${own.objectNumber} ${length}`
      length += text.length + 1
      this.#places.set(own.objectNumber, { inStream: ref.objectNumber, index })
      return start
    })
    const head = `${starts.join(' ')}\n`
    const body = Buffer.from(head + objects.map(({ text }) => `${text}\n`).join(''), 'latin1')
    this.writeCompressed(ref, this.context.obj({ Type: 'ObjStm', N: objects.length, First: head.length }), body)
  }

  #crossReferences(size: number): Uint8Array {
    const [kindWidth, placeWidth, indexWidth] = CROSS_REFERENCE_WIDTHS
    const width = kindWidth + placeWidth + indexWidth
    const rows = Buffer.alloc(size * width)
    rows.writeUInt16BE(0xffff, kindWidth + placeWidth)
    for (const [number, place] of this.#places) {
      const at = number * width
      const compressed = 'inStream' in place
      rows.writeUInt8(compressed ? 2 : 1, at)
      rows.writeUIntBE(compressed ? place.inStream : place.offset, at + kindWidth, placeWidth)
      rows.writeUInt16BE(compressed ? place.index : 0, at + kindWidth + placeWidth)
    }
    return rows
  }

  /** Takes pieces of the file, one after the other, and hands them over when they have become many. */
  async #put(...pieces: readonly Uint8Array[]): Promise<void> {
    for (const piece of pieces) {
      this.#held.push(piece)
      this.#heldLength += piece.length
      this.#offset += piece.length
    }
    if (this.#heldLength >= WRITTEN_AT_ONCE) await this.#handOver()
  }

  /** Hands what is held to the output as one write; it is hashed while the output is busy with it. */
  async #handOver(): Promise<void> {
    if (this.#failure !== null) throw this.#failure
    const output = this.#output
    const held = this.#held
    this.#held = []
    this.#heldLength = 0
    output.cork()
    for (const piece of held) output.write(piece)
    output.uncork()
    for (const piece of held) this.#hash.update(piece)
    if (output.writableNeedDrain && output.writableLength >= MOST_BEFORE_OUTPUT) await once(output, 'drain')
  }
}
