import { isDeepStrictEqual } from 'node:util'
import { CellFault, type CellKind, changeDay, condition, jsonList } from './cell-text.ts'

/** A list in one cell, its entries parted by strokes: `H12 = engine: h | L17 = engine: l`. */
const BETWEEN = ' | '

interface Marks {
  readonly text: string
  readonly means: unknown
  readonly words: string
}
interface Stretch {
  readonly first: number
  readonly last: number
  readonly means: unknown
  readonly from: unknown
  readonly until: unknown
}

/** One of several entries of a list, in words of its own; what they cannot say stands as JSON, which is told by its bracket. */
const listOf = <Entry>(write: (entry: Entry) => string, read: (piece: string) => Entry): CellKind => {
  const readAll = (written: string): unknown =>
    written.trimStart().startsWith('[')
      ? jsonList.read(written)
      : written
          .split('|')
          .map((piece) => piece.trim())
          .filter((piece) => piece !== '')
          .map(read)
  return {
    read: readAll,
    write: (value) => {
      const entries = value as readonly Entry[]
      const plain = entries.map(write).join(BETWEEN)
      return says(readAll, plain, entries) ? plain : jsonList.write(value)
    },
    empty: [],
    anyText: true,
  }
}

/** Whether words, read again, are the entries they were written for. */
function says(read: (written: string) => unknown, written: string, entries: unknown): boolean {
  try {
    return isDeepStrictEqual(read(written), entries)
  } catch (fault) {
    if (fault instanceof CellFault) return false
    throw fault
  }
}

/** Texts side by side: `- | /`. */
export const texts: CellKind = listOf(
  (text: string) => text,
  (piece) => piece,
)

/** What each mark means, with words in brackets where one wants them: `SC = works: north (North) | SM = works: south`. */
export const markRows: CellKind = listOf(
  ({ text, means, words }: Marks) => {
    const meant = condition.write(means)
    return [text, ...(meant === '' ? [] : [`= ${meant}`]), ...(words === '' ? [] : [`(${words})`])].join(' ')
  },
  (piece) => {
    const found = /^(.+?)(?:\s+=\s*([^()]*?))?(?:\s+\((.*)\))?$/.exec(piece)
    if (found === null) throw new CellFault(`“${piece}” is no mark.`, 'Write it like this: SC = works: north (North).')
    const [, text = '', means = '', words = ''] = found
    return { text, means: means === '' ? {} : condition.read(means), words }
  },
)

/** Figures given out, and on what cars: `1001-2640 from 1956-03-01 until 1956-12-31 = body: open`. */
export const stretches: CellKind = listOf(
  ({ first, last, means, from, until }: Stretch) => {
    const meant = condition.write(means)
    return [
      `${first}-${last}`,
      ...(from === null ? [] : [`from ${changeDay.write(from)}`]),
      ...(until === null ? [] : [`until ${changeDay.write(until)}`]),
      ...(meant === '' ? [] : [`= ${meant}`]),
    ].join(' ')
  },
  (piece) => {
    const found = /^(\d+)\s*-\s*(\d+)(?:\s+from\s+(\S+))?(?:\s+until\s+(\S+))?(?:\s+=\s*(.*))?$/.exec(piece)
    if (found === null)
      throw new CellFault(`“${piece}” is no stretch of figures.`, 'Write it like this: 1001-2640 until 1956-12-31.')
    const [, first, last, from, until, means = ''] = found
    const day = (written: string | undefined) => (written === undefined ? null : changeDay.read(written))
    return {
      first: Number(first),
      last: Number(last),
      means: means === '' ? {} : condition.read(means),
      from: day(from),
      until: day(until),
    }
  },
)
