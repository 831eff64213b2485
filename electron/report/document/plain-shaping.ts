import type { FontFile } from './font-file.ts'
import { classOf, coverageIndex, type LookupTable, lookupTables, numbers, rangeOf } from './layout-tables.ts'

const PAIR_ADJUSTMENT = 2
const LIGATURE = 4
const EXTENSION = { substitution: 7, positioning: 9 } as const
/** The only value plain kerning needs: a change of the first glyph's advance. */
const ADVANCE_ALONE = 0x0004

interface Ligature {
  readonly glyphId: number
  /** Glyphs after the first. */
  readonly rest: readonly number[]
}

/** A glyph and how many glyphs of the text it stands for. */
export interface PlainGlyph {
  readonly glyphId: number
  readonly replaces: number
}

/**
 * Ligatures and pair kerning of plain Latin text, read straight from a face's tables. Combining marks, alternates in
 * context and other scripts need the whole shaping engine; a face whose tables hold more than is read here says so in
 * `complete` and is left to the engine too.
 */
export class PlainShaping {
  readonly complete: boolean
  readonly #kerning: readonly (readonly Buffer[])[]
  readonly #ligatures: ReadonlyMap<number, readonly Ligature[]>
  readonly #pairs = new Map<number, number>()

  constructor(font: FontFile) {
    const joins = lookupTables(font.table('GSUB'), ['liga', 'clig', 'calt', 'rlig', 'rclt'], EXTENSION.substitution)
    const kerning = lookupTables(font.table('GPOS'), ['kern'], EXTENSION.positioning)
    this.complete = joins.flat().every(({ kind }) => kind === LIGATURE) && kerning.flat().every(onlyAdvance)
    this.#ligatures = this.complete ? readLigatures(joins) : new Map()
    this.#kerning = this.complete ? kerning.map((lookup) => lookup.map(({ table }) => table)) : []
  }

  /** Glyphs joined where the face has a ligature; the longest it lists first is taken. */
  joined(glyphIds: readonly number[]): PlainGlyph[] {
    const glyphs: PlainGlyph[] = []
    for (let at = 0; at < glyphIds.length; ) {
      const first = glyphIds[at] ?? 0
      const found = this.#ligatures
        .get(first)
        ?.find(({ rest }) => rest.every((glyphId, index) => glyphIds[at + 1 + index] === glyphId))
      glyphs.push({ glyphId: found?.glyphId ?? first, replaces: 1 + (found?.rest.length ?? 0) })
      at += 1 + (found?.rest.length ?? 0)
    }
    return glyphs
  }

  /** What is added to the advance of `left` when `right` follows, in the face's own units. */
  kerning(left: number, right: number): number {
    const key = left * 65536 + right
    let value = this.#pairs.get(key)
    if (value === undefined) {
      value = this.#kerning.reduce((sum, tables) => sum + fromFirst(tables, left, right), 0)
      this.#pairs.set(key, value)
    }
    return value
  }
}

const onlyAdvance = ({ kind, table }: LookupTable): boolean =>
  kind === PAIR_ADJUSTMENT && table.readUInt16BE(4) === ADVANCE_ALONE && table.readUInt16BE(6) === 0

function readLigatures(lookups: readonly (readonly LookupTable[])[]): Map<number, readonly Ligature[]> {
  const ligatures = new Map<number, readonly Ligature[]>()
  for (const { table } of lookups.flat()) {
    const coverage = table.subarray(table.readUInt16BE(2))
    const sets = numbers(table, 4, table.readUInt16BE(4))
    for (const glyphId of coveredGlyphs(coverage)) {
      const set = table.subarray(sets[coverageIndex(coverage, glyphId)] ?? 0)
      const own = numbers(set, 0, set.readUInt16BE(0)).map((offset) => {
        const at = set.subarray(offset)
        return { glyphId: at.readUInt16BE(0), rest: numbers(at, 2, at.readUInt16BE(2) - 1) }
      })
      ligatures.set(glyphId, [...(ligatures.get(glyphId) ?? []), ...own])
    }
  }
  return ligatures
}

function coveredGlyphs(coverage: Buffer): number[] {
  const count = coverage.readUInt16BE(2)
  if (coverage.readUInt16BE(0) === 1) return numbers(coverage, 2, count)
  return Array.from({ length: count }, (_, index) => 4 + index * 6).flatMap((at) => {
    const first = coverage.readUInt16BE(at)
    return Array.from({ length: coverage.readUInt16BE(at + 2) - first + 1 }, (_, step) => first + step)
  })
}

/** The value of the first table of a lookup that has the pair: pairs one by one (format 1), or by class (format 2). */
function fromFirst(tables: readonly Buffer[], left: number, right: number): number {
  for (const table of tables) {
    const index = coverageIndex(table.subarray(table.readUInt16BE(2)), left)
    if (index < 0) continue
    if (table.readUInt16BE(0) === 1) {
      const pairs = table.subarray(table.readUInt16BE(10 + index * 2))
      const row = rangeOf(pairs, 0, 4, right)
      if (row === null) continue
      return pairs.readInt16BE(row + 2)
    }
    const leftClass = classOf(table.subarray(table.readUInt16BE(8)), left)
    const rightClass = classOf(table.subarray(table.readUInt16BE(10)), right)
    return table.readInt16BE(16 + (leftClass * table.readUInt16BE(14) + rightClass) * 2)
  }
  return 0
}
