/** Reading of the tables GSUB and GPOS (ISO/IEC 14496-22:2019, 6.2), as far as plain Latin text needs it. */

/** One table of a lookup, with the kind the lookup says, extension subtables followed. */
export interface LookupTable {
  readonly kind: number
  readonly table: Buffer
}

/** Lookup tables of the named features for Latin script and no particular language, in the order they are applied. */
export function lookupTables(
  layout: Buffer | undefined,
  features: readonly string[],
  extensionKind: number,
): LookupTable[][] {
  if (layout === undefined) return []
  const system = defaultLanguage(layout.subarray(layout.readUInt16BE(4)))
  if (system === null) return []
  const list = layout.subarray(layout.readUInt16BE(6))
  const indexes = new Set<number>()
  for (let at = 6; at < 6 + system.readUInt16BE(4) * 2; at += 2) {
    const record = 2 + system.readUInt16BE(at) * 6
    if (!features.includes(list.toString('latin1', record, record + 4))) continue
    const feature = list.subarray(list.readUInt16BE(record + 4))
    for (const index of numbers(feature, 2, feature.readUInt16BE(2))) indexes.add(index)
  }
  const lookups = layout.subarray(layout.readUInt16BE(8))
  return [...indexes]
    .sort((a, b) => a - b)
    .map((index) => {
      const lookup = lookups.subarray(lookups.readUInt16BE(2 + index * 2))
      const kind = lookup.readUInt16BE(0)
      return numbers(lookup, 4, lookup.readUInt16BE(4)).map((offset) => {
        const table = lookup.subarray(offset)
        if (kind !== extensionKind) return { kind, table }
        return { kind: table.readUInt16BE(2), table: table.subarray(table.readUInt32BE(4)) }
      })
    })
}

function defaultLanguage(scripts: Buffer): Buffer | null {
  for (let at = 2; at < 2 + scripts.readUInt16BE(0) * 6; at += 6) {
    if (scripts.toString('latin1', at, at + 4) !== 'latn') continue
    const script = scripts.subarray(scripts.readUInt16BE(at + 4))
    const offset = script.readUInt16BE(0)
    return offset === 0 ? null : script.subarray(offset)
  }
  return null
}

/** `count` numbers of two bytes that follow the one at `at`. */
export const numbers = (table: Buffer, at: number, count: number): number[] =>
  Array.from({ length: count }, (_, index) => table.readUInt16BE(at + 2 + index * 2))

/** Place of a glyph in a coverage table, -1 when it is not covered. */
export function coverageIndex(table: Buffer, glyphId: number): number {
  const byRange = table.readUInt16BE(0) === 2
  const range = rangeOf(table, 2, byRange ? 6 : 2, glyphId)
  if (range === null) return -1
  if (!byRange) return (range - 4) / 2
  return table.readUInt16BE(range + 4) + glyphId - table.readUInt16BE(range)
}

/** Class of a glyph in a class definition, 0 when none is given. */
export function classOf(table: Buffer, glyphId: number): number {
  if (table.readUInt16BE(0) === 1) {
    const index = glyphId - table.readUInt16BE(2)
    return index >= 0 && index < table.readUInt16BE(4) ? table.readUInt16BE(6 + index * 2) : 0
  }
  const range = rangeOf(table, 2, 6, glyphId)
  return range === null ? 0 : table.readUInt16BE(range + 4)
}

/** Offset of the row, of `width` bytes in a sorted list counted at `countAt`, that holds a glyph; null when none does. */
export function rangeOf(table: Buffer, countAt: number, width: number, glyphId: number): number | null {
  let [low, high] = [0, table.readUInt16BE(countAt) - 1]
  while (low <= high) {
    const middle = (low + high) >> 1
    const at = countAt + 2 + middle * width
    const last = width === 6 ? table.readUInt16BE(at + 2) : table.readUInt16BE(at)
    if (glyphId < table.readUInt16BE(at)) high = middle - 1
    else if (glyphId > last) low = middle + 1
    else return at
  }
  return null
}
