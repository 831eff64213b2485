import type { DateCodeElement, DateCodeField, DateCodeGrammar } from '../../../shared-types/date-code-grammar.ts'

/** What one place of the code says. A year is a set of years: `value` and, for letters, how often the row begins anew. */
export interface Said {
  readonly field: DateCodeField
  readonly text: string
  readonly value: number
  readonly meaning: string
  /** For a year: every how many years the same mark comes again; null for a whole year. */
  readonly comesAgain: number | null
}

export interface Matches {
  readonly ways: readonly (readonly Said[])[]
  /** Why the code does not fit, from the furthest place reached; null when it fits. */
  readonly why: string | null
  readonly bounded: boolean
}

/** Steps after which a grammar is followed no further, and ways kept: enough for any code of sixty characters we know of. */
const MOST_STEPS = 20_000
const MOST_WAYS = 200

const separators = /[\s.\-/·]/g

/** Every way a code can be divided among the elements of a checked grammar. */
export function matchDateCode(asRead: string, grammar: DateCodeGrammar): Matches {
  const plain = (text: string) => {
    const upper = text.toUpperCase().trim()
    return grammar.passOverSeparators ? upper.replace(separators, '') : upper
  }
  const code = plain(asRead)
  const ways: Said[][] = []
  let steps = 0
  let furthest = { at: 0, wanted: 'its first mark' }

  const miss = (at: number, wanted: string) => {
    if (at >= furthest.at) furthest = { at, wanted }
  }
  const follow = (elements: readonly DateCodeElement[], at: number, said: readonly Said[], then: Follow): void => {
    steps += 1
    if (steps > MOST_STEPS || ways.length >= MOST_WAYS) return
    const [element, ...rest] = elements
    if (element === undefined) {
      then(at, said)
      return
    }
    const onwards: Follow = (place, now) => follow(rest, place, now, then)
    if (element.kind === 'piece') {
      follow(grammar.pieces[element.name] ?? [], at, said, onwards)
      if (element.optional) onwards(at, said)
    } else if (element.kind === 'repeated') {
      const again = (times: number, place: number, now: readonly Said[]): void => {
        if (times >= element.atLeast) onwards(place, now)
        if (times < (element.atMost ?? 0))
          follow(grammar.pieces[element.name] ?? [], place, now, (next, more) => again(times + 1, next, more))
      }
      again(0, at, said)
    } else if (element.kind === 'fixed') {
      const fits = element.texts.map(plain).filter((text) => code.startsWith(text, at))
      if (fits.length === 0 && !element.optional) miss(at, `one of ${element.texts.join(', ')}`)
      for (const text of fits) onwards(at + text.length, said)
      if (element.optional) onwards(at, said)
    } else {
      const readings = readingsAt(element, code, at, plain)
      if (readings.length === 0) miss(at, wantedBy(element))
      for (const reading of readings) onwards(at + reading.text.length, [...said, reading])
    }
  }
  follow(grammar.elements, 0, [], (at, said) => {
    if (at === code.length) ways.push([...said])
    else miss(at, 'the end of the code')
  })
  const found = code[furthest.at]
  const why =
    ways.length > 0
      ? null
      : `${found === undefined ? `The code ends at place ${furthest.at + 1}` : `${found} stands in place ${furthest.at + 1}`} where ${furthest.wanted} is wanted.`
  return { ways, why, bounded: steps > MOST_STEPS || ways.length >= MOST_WAYS }
}

type Follow = (at: number, said: readonly Said[]) => void
type Valued = Extract<DateCodeElement, { kind: 'figures' | 'letters' | 'table' }>

const wantedBy = (element: Valued): string => {
  if (element.kind === 'figures') return `the ${element.field} in figures`
  return element.kind === 'letters'
    ? `the ${element.field}, one of the letters ${element.letters},`
    : `the ${element.field} of the maker’s table`
}

function readingsAt(element: Valued, code: string, at: number, plain: (text: string) => string): Said[] {
  const { field } = element
  const say = (text: string, value: number, meaning: string, comesAgain: number | null): Said => ({
    field,
    text,
    value,
    meaning,
    comesAgain,
  })
  switch (element.kind) {
    case 'figures': {
      const run = /^[0-9]*/.exec(code.slice(at, at + element.maxDigits))?.[0].length ?? 0
      const lengths = Array.from(
        { length: Math.max(0, run - element.minDigits + 1) },
        (_, more) => element.minDigits + more,
      )
      return lengths.map((length) => {
        const text = code.slice(at, at + length)
        const again = field === 'year' && length < 4 ? 10 ** length : null
        return say(text, Number(text), again === null ? text : `${field} ending in ${text}`, again)
      })
    }
    case 'letters': {
      const letter = code[at]
      const place = letter === undefined ? -1 : element.letters.toUpperCase().indexOf(letter)
      if (letter === undefined || place < 0) return []
      const again = element.repeats ? element.letters.length : null
      return [say(letter, element.first + place, String(element.first + place), again)]
    }
    case 'table':
      return element.rows
        .filter((row) => plain(row.text).length > 0 && code.startsWith(plain(row.text), at))
        .map(({ text, value, words }) =>
          say(plain(text), value, words === '' ? String(value) : words, shortYear(field, value)),
        )
  }
}

/** A year of a table below 100 is a year without its decade or century. */
const shortYear = (field: DateCodeField, value: number): number | null =>
  field === 'year' && value < 100 ? (value < 10 ? 10 : 100) : null
