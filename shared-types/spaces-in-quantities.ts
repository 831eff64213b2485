const units = ['mm', 'cm', 'm', 'µm', 'mil', 'km', 'kg', 'cm³', 'cm²', 'm²', '%'].join('|')

/** A number whose thousands were typed apart: "2 500", "12 040 000"; the space may be a thin one. */
const GROUPED = /(?<![\p{L}\d.,])\d{1,3}(?:[ \u2009]\d{3})+(?!\d)/gu
/** A number with more groups than this, a thousand millions, is a row of numbers rather than one. */
const MOST_GROUPS = 4

const others = [
  // A figure and its unit: 12 mm.
  new RegExp(`(?<=\\d)[ \\u2009](?=(?:${units})(?![\\p{L}\\d]))`, 'gu'),
  // Its uncertainty and the factor of that: 22 ± 1, k = 2.
  / (?=±)|(?<=±) |(?<=\bk) (?== \d)|(?<=\bk =) (?=\d)/gu,
  // A letter of the registers and its number: E 18.
  /(?<=\b[A-Z]) (?=\d)/gu,
]

/** Nearly all texts hold none of these, and are told by one look. */
const MAYBE = /\d[ \u2009](?:\d|\p{L}|%)|±|\bk =|\b[A-Z] \d/u

/**
 * Places, counted in UTF-16 units, of the spaces of typed words at which a quantity would fall apart over two lines: inside
 * a number, before its unit, round its uncertainty, between a letter and its number. Common practice of setting type.
 */
export function spacesInQuantities(typed: string): ReadonlySet<number> {
  const spaces = new Set<number>()
  if (!MAYBE.test(typed)) return spaces
  for (const { 0: number, index } of typed.matchAll(GROUPED)) {
    const inside = [...number.matchAll(/[ \u2009]/g)]
    if (inside.length < MOST_GROUPS) for (const space of inside) spaces.add(index + space.index)
  }
  for (const pattern of others) for (const { index } of typed.matchAll(pattern)) spaces.add(index)
  return spaces
}
