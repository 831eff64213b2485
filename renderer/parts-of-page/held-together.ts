/** As wide as a space, and no line is broken at it. */
const HELD = '\u00a0'

const units = ['mm', 'cm', 'm', 'µm', 'mil', 'km', 'kg', 'cm³', 'cm²', 'm²', '%'].join('|')

/** Spaces of typed words at which a quantity would fall apart. */
const within = [
  // Thousands: 1 030.
  /(?<=(?<!\d)\d{1,3}) (?=\d{3}(?!\d))/gu,
  // A figure and its unit or its uncertainty: 12 mm, 22 ± 1, k = 2.
  new RegExp(`(?<=\\d) (?=(?:${units})(?![\\p{L}\\d]))`, 'gu'),
  / (?=±)|(?<=±) |(?<=\bk) (?== \d)|(?<=\bk =) (?=\d)/gu,
  // A letter of the registers and its number: E 18.
  /(?<=\b[A-Z]) (?=\d)/gu,
]

/** Words somebody typed, as they are printed: the same words, and no quantity in them is broken over two lines. */
export const heldTogether = (typed: string): string =>
  within.reduce((words, space) => words.replace(space, HELD), typed)
