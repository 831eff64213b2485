/** A cell that does not say what its column holds. */
export class CellFault extends Error {
  constructor(
    readonly what: string,
    readonly cure: string,
  ) {
    super(what)
    this.name = 'CellFault'
  }
}

/** How one kind of content stands in a cell of a table. `read` gets text that is not empty; an empty cell is `empty`. */
export interface CellKind {
  readonly write: (value: unknown) => string
  readonly read: (text: string) => unknown
  readonly empty: unknown
  /** Set where any text may stand, which a spreadsheet could take for a formula. */
  readonly anyText?: true
}

type Named<Value> = Readonly<Record<string, Value>>

/**
 * A spreadsheet would take text that begins like this for a formula: it gets an apostrophe before it, which is taken off
 * again when the table is read.
 */
const LIKE_A_FORMULA = /^['=+\-@\t\r]/
export const shielded = (text: string): string => (LIKE_A_FORMULA.test(text) ? `'${text}` : text)
export const unshielded = (text: string): string => (/^'['=+\-@\t\r]/.test(text) ? text.slice(1) : text)

/** Text that has a sensible default, or must be there. */
export const text: CellKind = { write: String, read: (written) => written, empty: undefined, anyText: true }
/** Text that must be there, but may be empty. */
export const textOrEmpty: CellKind = { ...text, empty: '' }
/** Text where an empty cell means that there is none. */
export const textOrNone: CellKind = {
  ...text,
  write: (value) => (value === null ? '' : String(value)),
  empty: null,
}

const numberOf = (written: string): number => {
  // A spreadsheet may write numbers with a decimal comma.
  const number = Number(written.trim().replace(/^(-?\d+),(\d+)$/, '$1.$2'))
  if (written.trim() === '' || Number.isNaN(number))
    throw new CellFault(`“${written}” is no number.`, 'Write figures alone.')
  return number
}
export const number: CellKind = { write: String, read: numberOf, empty: undefined }
export const numberOrNone: CellKind = {
  write: (value) => (value === null ? '' : String(value)),
  read: numberOf,
  empty: null,
}

export const yesOrNo: CellKind = {
  write: (value) => (value === true ? 'yes' : 'no'),
  read: (written) => {
    if (!['yes', 'no'].includes(written)) throw new CellFault(`“${written}” is neither yes nor no.`, 'Write yes or no.')
    return written === 'yes'
  },
  empty: undefined,
}

const words = (written: string): string[] => written.split(/[\s,]+/).filter((word) => word !== '')
const pieces = (written: string): string[] =>
  written
    .split(';')
    .map((piece) => piece.trim())
    .filter((piece) => piece !== '')

/** Names side by side: `q1 q2`. */
export const names: CellKind = { write: (value) => (value as readonly string[]).join(' '), read: words, empty: [] }

const splitAt = (piece: string, mark: string, wanted: string): readonly [string, string] => {
  const at = piece.indexOf(mark)
  if (at < 0) throw new CellFault(`“${piece}” has no “${mark.trim()}”.`, `Write it like this: ${wanted}.`)
  return [piece.slice(0, at).trim(), piece.slice(at + mark.length).trim()]
}

/** What a car must meet: `series: plain fine; gearbox: four`. Empty: every car. */
export const condition: CellKind = {
  write: (value) =>
    Object.entries(value as Named<readonly string[]>)
      .map(([name, values]) => `${name}: ${values.join(' ')}`)
      .join('; '),
  read: (written) =>
    Object.fromEntries(
      pieces(written).map((piece) => {
        const [name, values] = splitAt(piece, ':', 'series: plain fine; gearbox: four')
        return [name, words(values)]
      }),
    ),
  empty: {},
}

/** A day, or the days a change is known by: `1958-03-01`, `1958-03-01..1958-05-31`. */
export const changeDay: CellKind = {
  write: (value) => {
    if (value === null) return ''
    if (typeof value === 'string') return value
    const { earliest, latest } = value as { earliest: string; latest: string }
    return `${earliest}..${latest}`
  },
  read: (written) => {
    if (!written.includes('..')) return written
    const [earliest, latest] = splitAt(written, '..', '1958-03-01..1958-05-31')
    return { earliest, latest }
  },
  empty: null,
}

const NOTHING = '(none)'
const writeShares = (shares: Named<number>, between: string): string =>
  Object.entries(shares)
    .map(([name, share]) => `${name} ${share}`)
    .join(between) || NOTHING
const readShares = (written: string, split: RegExp): Named<number> =>
  written === NOTHING
    ? {}
    : Object.fromEntries(
        written
          .split(split)
          .map((piece) => piece.trim())
          .filter((piece) => piece !== '')
          .map((piece) => {
            const [name, share] = splitAt(piece, ' ', 'welded 0.3; screwed 0.7')
            return [name, numberOf(share)]
          }),
      )

/** One value, or several with their shares: `welded`, `welded 0.3; screwed 0.7`. */
export const shown: CellKind = {
  write: (value) =>
    value === null ? '' : typeof value === 'string' ? value : writeShares(value as Named<number>, '; '),
  read: (written) => (/^[^\s;]+$/.test(written) && written !== NOTHING ? written : readShares(written, /;/)),
  empty: null,
}

/** Rows of shares by name: `early: early 0.9, late 0.1; late: late 1`. */
const writeRows = (rows: Named<Named<number>>): string =>
  Object.entries(rows)
    .map(([name, shares]) => `${name}: ${writeShares(shares, ', ')}`)
    .join('; ') || NOTHING
const readRows = (written: string): Named<Named<number>> =>
  written === NOTHING
    ? {}
    : Object.fromEntries(
        pieces(written).map((piece) => {
          const [name, shares] = splitAt(piece, ':', 'early: early 0.9, late 0.1; late: late 1')
          return [name, readShares(shares, /,/)]
        }),
      )
export const shareRows: CellKind = {
  write: (value) => writeRows(value as Named<Named<number>>),
  read: readRows,
  empty: {},
}
/** One share for all misreadings alike, or rows. */
export const misreading: CellKind = {
  write: (value) => (typeof value === 'number' ? String(value) : writeRows(value as Named<Named<number>>)),
  read: (written) => (written.includes(':') || written === NOTHING ? readRows(written) : numberOf(written)),
  empty: 0,
}

/** Share replaced, and what is fitted then: `0.1: three 0.7; four 0.3`. Empty: never. */
export const replacement: CellKind = {
  write: (value) => {
    if (value === null) return ''
    const { share, by } = value as { share: number; by: Named<number> }
    return `${share}: ${writeShares(by, '; ')}`
  },
  read: (written) => {
    const [share, by] = splitAt(written, ':', '0.1: three 0.7; four 0.3')
    return { share: numberOf(share), by: readShares(by, /;/) }
  },
  empty: null,
}

/** Two things side by side in one cell, under their keys; empty: null. */
const pair = (first: string, second: string, mark: string, wanted: string, secondIsNumber: boolean): CellKind => ({
  write: (value) => {
    if (value === null) return ''
    const both = value as Named<unknown>
    return `${String(both[first])}${mark}${String(both[second])}`
  },
  read: (written) => {
    const [one, other] = splitAt(written, mark, wanted)
    return { [first]: numberOf(one), [second]: secondIsNumber ? numberOf(other) : other }
  },
  empty: null,
})
export const measure = pair('mean', 'standardDeviation', ' ± ', '12.5 ± 0.2', true)
export const daysBefore = pair('least', 'most', '..', '5..60', true)
export const price = pair('amount', 'currency', ' ', '12.5 pounds', false)

/** Content no table has columns for, as JSON (RFC 8259). */
export const json: CellKind = {
  write: (value) => (value === null ? '' : JSON.stringify(value)),
  read: (written) => {
    try {
      return JSON.parse(written) as unknown
    } catch {
      throw new CellFault('It is no JSON.', 'Copy a cell that is, and change it.')
    }
  },
  empty: null,
}
/** The same for a list; an empty cell is an empty one. */
export const jsonList: CellKind = {
  ...json,
  write: (value) => ((value as readonly unknown[]).length === 0 ? '' : JSON.stringify(value)),
  empty: [],
}
