import { createHash } from 'node:crypto'
import { once } from 'node:events'
import type { Writable } from 'node:stream'
import { deflateSync } from 'node:zlib'
import { PDFContext, type PDFDict, PDFHexString, type PDFObject, type PDFRef } from './pdf-objects.ts'

const OBJECTS_IN_A_STREAM = 200
/** Widths of the three fields of a cross-reference row: kind, place, index. Five bytes reach a terabyte. */
const CROSS_REFERENCE_WIDTHS = [1, 5, 2] as const

type Place = { readonly offset: number } | { readonly inStream: number; readonly index: number }

/**
 * Writes a PDF 1.7 file object by object (ISO 32000-1, 7.5.7 object streams and 7.5.8 cross-reference stream), so that
 * no more than one picture is ever held. Counts and hashes what it writes; waits whenever the output is full.
 */
export class ObjectWriter {
  readonly context = PDFContext.create()
  readonly #output: Writable
  readonly #hash = createHash('sha256')
  readonly #places = new Map<number, Place>()
  #offset = 0
  #waiting: { readonly ref: PDFRef; readonly text: string }[] = []
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
  async write(ref: PDFRef, object: PDFObject | string): Promise<void> {
    this.#waiting.push({ ref, text: object.toString() })
    if (this.#waiting.length >= OBJECTS_IN_A_STREAM) await this.#writeWaiting()
  }

  /** Writes a stream at once; `bytes` are passed through as they are. */
  async writeStream(ref: PDFRef, dictionary: PDFDict, bytes: Uint8Array): Promise<void> {
    dictionary.set(this.context.obj('Length'), this.context.obj(bytes.length))
    this.#places.set(ref.objectNumber, { offset: this.#offset })
    const head = `${ref.objectNumber} 0 obj\n${dictionary.toString()}\nstream\n`
    await this.#put(Buffer.from(head, 'latin1'), bytes, Buffer.from('\nendstream\nendobj\n', 'latin1'))
  }

  /** Writes a stream compressed by zlib. */
  async writeCompressed(ref: PDFRef, dictionary: PDFDict, bytes: Uint8Array): Promise<void> {
    dictionary.set(this.context.obj('Filter'), this.context.obj('FlateDecode'))
    await this.writeStream(ref, dictionary, deflateSync(bytes))
  }

  /** Writes what waits, the cross-references and the trailer. The file's identifier follows from all bytes before it. */
  async finish(root: PDFRef, information: PDFRef): Promise<{ readonly byteLength: number; readonly sha256: string }> {
    await this.#writeWaiting()
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
    })
    await this.writeCompressed(ref, dictionary, this.#crossReferences(ref.objectNumber + 1))
    await this.#put(Buffer.from(`startxref\n${start}\n%%EOF\n`, 'latin1'))
    return { byteLength: this.#offset, sha256: this.#hash.digest('hex') }
  }

  async #writeWaiting(): Promise<void> {
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
    await this.writeCompressed(ref, this.context.obj({ Type: 'ObjStm', N: objects.length, First: head.length }), body)
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

  /** Hands pieces to the output as one write; they are hashed while the output is busy with them. */
  async #put(...pieces: readonly Uint8Array[]): Promise<void> {
    if (this.#failure !== null) throw this.#failure
    const output = this.#output
    output.cork()
    for (const piece of pieces) output.write(piece)
    output.uncork()
    for (const piece of pieces) {
      this.#hash.update(piece)
      this.#offset += piece.length
    }
    if (output.writableNeedDrain) await once(output, 'drain')
  }
}
