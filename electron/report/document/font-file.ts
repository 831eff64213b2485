import { readFileSync } from 'node:fs'

/** Measures of a face in its own units, as the font descriptor of a PDF names them. */
export interface FontMeasures {
  readonly unitsPerEm: number
  readonly boundingBox: readonly [number, number, number, number]
  readonly italicAngle: number
  readonly ascent: number
  readonly descent: number
  readonly capHeight: number
  readonly xHeight: number
}

const NAME_POSTSCRIPT = 6
const PLATFORM_UNICODE_BMP = 0x0003_0001
const PLATFORM_UNICODE_FULL = 0x0003_000a

/**
 * A TrueType file, read table by table as it is asked (ISO/IEC 14496-22:2019, Open Font Format). It is trusted: only
 * files shipped with the program are opened.
 */
export class FontFile {
  readonly bytes: Buffer
  readonly measures: FontMeasures
  readonly glyphCount: number
  readonly #tables = new Map<string, Buffer>()
  readonly #metrics: Buffer
  readonly #metricCount: number
  readonly #character: (codePoint: number) => number
  readonly #glyphs = new Map<number, number>()

  constructor(path: string) {
    this.bytes = readFileSync(path)
    const count = this.bytes.readUInt16BE(4)
    for (let at = 12; at < 12 + count * 16; at += 16) {
      const start = this.bytes.readUInt32BE(at + 8)
      const tag = this.bytes.toString('latin1', at, at + 4)
      this.#tables.set(tag, this.bytes.subarray(start, start + this.bytes.readUInt32BE(at + 12)))
    }
    const [head, lines, metrics] = [this.needed('head'), this.needed('hhea'), this.needed('OS/2')]
    this.measures = {
      unitsPerEm: head.readUInt16BE(18),
      boundingBox: [head.readInt16BE(36), head.readInt16BE(38), head.readInt16BE(40), head.readInt16BE(42)],
      italicAngle: this.needed('post').readInt32BE(4) / 65536,
      ascent: lines.readInt16BE(4),
      descent: lines.readInt16BE(6),
      xHeight: metrics.readInt16BE(86),
      capHeight: metrics.readInt16BE(88),
    }
    this.glyphCount = this.needed('maxp').readUInt16BE(4)
    this.#metrics = this.needed('hmtx')
    this.#metricCount = lines.readUInt16BE(34)
    this.#character = characterMap(this.needed('cmap'))
  }

  /** Bytes of a table, or undefined when the face has none of that name. */
  table(tag: string): Buffer | undefined {
    return this.#tables.get(tag)
  }

  /** Bytes of a table no face can do without. */
  needed(tag: string): Buffer {
    const table = this.#tables.get(tag)
    if (table === undefined) throw new Error(`The font file has no table ${tag}.`)
    return table
  }

  /** Glyph of a character, 0 when the face has none. */
  glyphOf(codePoint: number): number {
    let glyphId = this.#glyphs.get(codePoint)
    if (glyphId === undefined) {
      glyphId = this.#character(codePoint)
      this.#glyphs.set(codePoint, glyphId)
    }
    return glyphId
  }

  /** Advance width of a glyph in the face's own units. */
  advanceOf(glyphId: number): number {
    return this.#metrics.readUInt16BE(Math.min(glyphId, this.#metricCount - 1) * 4)
  }

  /** The name the face goes by inside a PDF. */
  get postscriptName(): string {
    const table = this.needed('name')
    const texts = table.readUInt16BE(4)
    for (let at = 6; at < 6 + table.readUInt16BE(2) * 12; at += 12) {
      if (table.readUInt16BE(at + 6) !== NAME_POSTSCRIPT) continue
      const start = texts + table.readUInt16BE(at + 10)
      // Either one byte or two to a character; the name itself is ASCII.
      return table.toString('latin1', start, start + table.readUInt16BE(at + 8)).replaceAll('\0', '')
    }
    throw new Error('The font file has no PostScript name.')
  }
}

/** The best Unicode subtable of `cmap`: format 12 where there is one, else format 4. */
function characterMap(table: Buffer): (codePoint: number) => number {
  const found = new Map<number, Buffer>()
  for (let at = 4; at < 4 + table.readUInt16BE(2) * 8; at += 8) {
    found.set(table.readUInt32BE(at), table.subarray(table.readUInt32BE(at + 4)))
  }
  const full = found.get(PLATFORM_UNICODE_FULL)
  if (full !== undefined && full.readUInt16BE(0) === 12) return (codePoint) => fromGroups(full, codePoint)
  const basic = found.get(PLATFORM_UNICODE_BMP)
  if (basic === undefined || basic.readUInt16BE(0) !== 4) throw new Error('The font file maps no Unicode characters.')
  return (codePoint) => fromSegments(basic, codePoint)
}

function fromGroups(table: Buffer, codePoint: number): number {
  let [low, high] = [0, table.readUInt32BE(12) - 1]
  while (low <= high) {
    const middle = (low + high) >> 1
    const at = 16 + middle * 12
    if (codePoint < table.readUInt32BE(at)) high = middle - 1
    else if (codePoint > table.readUInt32BE(at + 4)) low = middle + 1
    else return table.readUInt32BE(at + 8) + codePoint - table.readUInt32BE(at)
  }
  return 0
}

function fromSegments(table: Buffer, codePoint: number): number {
  const doubled = table.readUInt16BE(6)
  if (codePoint > 0xffff) return 0
  for (let at = 14; at < 14 + doubled; at += 2) {
    if (codePoint > table.readUInt16BE(at)) continue
    const first = table.readUInt16BE(at + doubled + 2)
    if (codePoint < first) return 0
    const delta = table.readUInt16BE(at + 2 * doubled + 2)
    const place = at + 3 * doubled + 2
    const offset = table.readUInt16BE(place)
    if (offset === 0) return (codePoint + delta) & 0xffff
    const glyph = table.readUInt16BE(place + offset + (codePoint - first) * 2)
    return glyph === 0 ? 0 : (glyph + delta) & 0xffff
  }
  return 0
}
