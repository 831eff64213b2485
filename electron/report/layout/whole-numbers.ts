/** A number written in groups of three, as typed: "2 500", "12 040 000"; the space may be a thin one. */
const GROUPED = /(?<![\p{L}\d.,])\d{1,3}(?:[ \u2009]\d{3})+(?!\d)/gu
const MAYBE_GROUPED = /\d[ \u2009]\d{3}/
/** More groups than this, a thousand millions, are a row of numbers rather than one. */
const MOST_GROUPS = 4
const GROUP = 4

/**
 * Places of a text, counted in UTF-16 units, where a line must not end although a space stands before them: inside a
 * number whose thousands were typed apart. The text itself keeps the spaces that were typed.
 */
export function placesInsideNumbers(text: string): ReadonlySet<number> | null {
  if (!MAYBE_GROUPED.test(text)) return null
  const places = new Set<number>()
  for (const { 0: number, index } of text.matchAll(GROUPED)) {
    const groups = Math.ceil(number.length / GROUP)
    if (groups > MOST_GROUPS) continue
    for (let back = 1; back < groups; back++) places.add(index + number.length - back * GROUP + 1)
  }
  return places
}
