import type { FontFile } from './font-file.ts'

/** Bits of a composite glyph's component (ISO/IEC 14496-22:2019, 5.3.3). */
const COMPONENT = { words: 0x0001, scale: 0x0008, more: 0x0020, twoScales: 0x0040, matrix: 0x0080 } as const
/** Tables a PDF reader may need besides those written anew (ISO 32000-1, 9.9). */
const COPIED = ['cvt ', 'fpgm', 'prep', 'maxp', 'hhea'] as const
/** What the sum over a whole font file must come to, less its own field. */
const WHOLE_SUM = 0xb1b0afba

/**
 * The face cut down to some glyphs, as a TrueType file for embedding. Glyphs keep their numbers, so that a glyph made
 * of others still finds them; outlines of all other glyphs are left out.
 */
export function fontSubset(font: FontFile, wanted: Iterable<number>): Uint8Array {
  const [place, outlines] = [glyphPlaces(font), font.needed('glyf')]
  const outlineOf = (glyphId: number): Buffer => outlines.subarray(place(glyphId), place(glyphId + 1))
  const kept = new Set([0, ...wanted])
  for (const glyphId of kept) for (const part of components(outlineOf(glyphId))) kept.add(part)

  const location = Buffer.alloc((font.glyphCount + 1) * 4)
  const pieces: Buffer[] = []
  let length = 0
  for (let glyphId = 0; glyphId <= font.glyphCount; glyphId++) {
    location.writeUInt32BE(length, glyphId * 4)
    if (!kept.has(glyphId)) continue
    const piece = padded(outlineOf(glyphId))
    pieces.push(piece)
    length += piece.length
  }
  const head = Buffer.from(font.needed('head'))
  head.writeUInt32BE(0, 8)
  head.writeInt16BE(1, 50)
  const tables = new Map<string, Buffer>([
    ['glyf', Buffer.concat(pieces)],
    ['head', head],
    ['hmtx', metricsOf(font, kept)],
    ['loca', location],
  ])
  for (const tag of COPIED) {
    const table = font.table(tag)
    if (table !== undefined) tables.set(tag, table)
  }
  return assembled(tables)
}

/** Where a glyph's outline begins in `glyf`, and the one before it ends. */
function glyphPlaces(font: FontFile): (glyphId: number) => number {
  const location = font.needed('loca')
  const long = font.needed('head').readInt16BE(50) === 1
  return (glyphId) => (long ? location.readUInt32BE(glyphId * 4) : location.readUInt16BE(glyphId * 2) * 2)
}

/** Glyphs a composite glyph is made of. */
function components(outline: Buffer): number[] {
  if (outline.length === 0 || outline.readInt16BE(0) >= 0) return []
  const found: number[] = []
  let at = 10
  for (let flags: number = COMPONENT.more; (flags & COMPONENT.more) !== 0; ) {
    flags = outline.readUInt16BE(at)
    found.push(outline.readUInt16BE(at + 2))
    at += (flags & COMPONENT.words) === 0 ? 6 : 8
    if ((flags & COMPONENT.scale) !== 0) at += 2
    else if ((flags & COMPONENT.twoScales) !== 0) at += 4
    else if ((flags & COMPONENT.matrix) !== 0) at += 8
  }
  return found
}

/** The table of advances with those of other glyphs blanked, which then compress to nothing. */
function metricsOf(font: FontFile, kept: ReadonlySet<number>): Buffer {
  const metrics = font.needed('hmtx')
  const count = font.needed('hhea').readUInt16BE(34)
  const own = Buffer.alloc(metrics.length)
  const copy = (at: number, length: number) => metrics.copy(own, at, at, at + length)
  copy((count - 1) * 4, 2)
  for (const glyphId of kept) {
    if (glyphId < count) copy(glyphId * 4, 4)
    else copy(count * 4 + (glyphId - count) * 2, 2)
  }
  return own
}

const padded = (table: Buffer): Buffer => Buffer.concat([table, Buffer.alloc((4 - (table.length % 4)) % 4)])

function sum(table: Buffer): number {
  let total = 0
  for (let at = 0; at < table.length; at += 4) total = (total + table.readUInt32BE(at)) >>> 0
  return total
}

/** The tables under a directory, in order of their names, with the sums the format asks for. */
function assembled(tables: ReadonlyMap<string, Buffer>): Uint8Array {
  const names = [...tables.keys()].sort()
  const power = Math.floor(Math.log2(names.length))
  const directory = Buffer.alloc(12 + names.length * 16)
  directory.writeUInt32BE(0x00010000, 0)
  directory.writeUInt16BE(names.length, 4)
  directory.writeUInt16BE(2 ** power * 16, 6)
  directory.writeUInt16BE(power, 8)
  directory.writeUInt16BE((names.length - 2 ** power) * 16, 10)
  const bodies: Buffer[] = [directory]
  let offset = directory.length
  let headAt = 0
  let whole = 0
  for (const [index, name] of names.entries()) {
    const table = tables.get(name) ?? Buffer.alloc(0)
    const body = padded(table)
    const row = 12 + index * 16
    directory.write(name, row, 'latin1')
    const own = sum(body)
    whole += own
    directory.writeUInt32BE(own, row + 4)
    directory.writeUInt32BE(offset, row + 8)
    directory.writeUInt32BE(table.length, row + 12)
    if (name === 'head') headAt = offset
    bodies.push(body)
    offset += body.length
  }
  const file = Buffer.concat(bodies)
  file.writeUInt32BE((WHOLE_SUM - whole - sum(directory)) >>> 0, headAt + 8)
  return file
}
