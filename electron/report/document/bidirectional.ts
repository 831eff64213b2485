import { createRequire } from 'node:module'
import type { Bidi } from 'bidi-js'

const requirePackage = createRequire(import.meta.url)
let loaded: Bidi | null = null

/** The Unicode bidirectional algorithm, loaded with the first text that is read from right to left. */
function algorithm(): Bidi {
  loaded ??= (requirePackage('bidi-js') as () => Bidi)()
  return loaded
}

/** Letters read from right to left: Hebrew, Arabic and their presentation forms. */
const RIGHT_TO_LEFT = /[\u0590-\u08FF\uFB1D-\uFDFF\uFE70-\uFEFC]/
/** Isolates as the program itself sets them around words of the record. */
const ISOLATES = /[\u2066-\u2069]/g

export const readsRightToLeft = (text: string): boolean => RIGHT_TO_LEFT.test(text)

/** A text that cannot disturb the order of the words around it (UAX #9, first strong isolate). */
export const isolatedText = (text: string): string => `\u2068${text}\u2069`

/** The spelled name of a character, which runs from left to right in whatever it stands. */
export const isolatedName = (name: string): string => `\u2066${name}\u2069`

export const withoutIsolates = (text: string): string => text.replace(ISOLATES, '')

/** Embedding level of each UTF-16 unit of a text set in a line that runs from left to right (UAX #9, P2 to I2). */
export const embeddingLevels = (text: string): Uint8Array => algorithm().getEmbeddingLevels(text, 'ltr').levels

/** The character whose glyph is drawn for a bracket in text that runs from right to left (UAX #9, L4). */
export const mirrored = (character: string): string => algorithm().getMirroredCharacter(character) ?? character

/** Order in which the pieces of one line stand from left to right, by their levels (UAX #9, L2). */
export function visualOrder(levels: readonly number[]): number[] {
  const order = levels.map((_, index) => index)
  for (let level = Math.max(...levels); level > 0; level--) {
    for (let at = 0; at < order.length; at++) {
      let end = at
      while (end < order.length && (levels[order[end] ?? 0] ?? 0) >= level) end += 1
      order.splice(at, end - at, ...order.slice(at, end).reverse())
      if (end > at) at = end
    }
  }
  return order
}
