import type { SheetNumber } from '../../../shared-types/reference-fact.ts'

/** One way to read a number: the row chosen at each place of marks, and the figures in sequence. */
export interface NumberWay {
  /** By place of the grammar: the row of marks. */
  readonly marks: readonly { readonly place: number; readonly row: number }[]
  readonly sequences: readonly { readonly place: number; readonly text: string; readonly stretch: number | null }[]
}

export interface NumberReading {
  readonly ways: readonly NumberWay[]
  /** Why it does not fit, and from which place on; null when it fits. */
  readonly why: string | null
}

/** Ways kept: more say no more. */
const MOST_WAYS = 200
const separators = /[\s.\-/·]/g

/** A number as it is compared: capitals, and without separators where they say nothing. */
export function plainNumber(text: string, { passOverSeparators }: Pick<SheetNumber, 'passOverSeparators'>): string {
  const upper = text.toUpperCase().trim()
  return passOverSeparators ? upper.replace(separators, '') : upper
}

/** True when the marks stand at a place of what was read; `?` stands for a character that could not be read. */
const standsAt = (text: string, read: string, at: number): boolean =>
  at + text.length <= read.length &&
  [...text].every((mark, offset) => read[at + offset] === '?' || read[at + offset] === mark)

/** Every way a number as read fits the grammar of a sheet. */
export function readSheetNumber(asRead: string, grammar: SheetNumber): NumberReading {
  const plain = (text: string) => plainNumber(text, grammar)
  const read = plain(asRead)
  const ways: NumberWay[] = []
  let furthest = { at: 0, wanted: 'its first mark', from: 0 }
  /** @param from where what was read begins, when it is more than the one character at which it fails. */
  const miss = (at: number, wanted: string, from = at) => {
    if (at >= furthest.at) furthest = { at, wanted, from }
  }
  const follow = (place: number, at: number, way: NumberWay): void => {
    if (ways.length >= MOST_WAYS) return
    const own = grammar.places[place]
    if (own === undefined) {
      if (at === read.length) ways.push(way)
      else miss(at, 'its end')
      return
    }
    switch (own.kind) {
      case 'fixed': {
        const fits = own.texts.map(plain).filter((text) => standsAt(text, read, at))
        if (fits.length === 0 && !own.optional) miss(at, `one of ${own.texts.join(', ')}`)
        for (const text of fits) follow(place + 1, at + text.length, way)
        if (own.optional) follow(place + 1, at, way)
        return
      }
      case 'marks': {
        const fits = own.rows.flatMap(({ text }, row) => (standsAt(plain(text), read, at) ? [row] : []))
        if (fits.length === 0) miss(at, `the ${own.name}: ${own.rows.map(({ text }) => text).join(', ')}`)
        for (const row of fits)
          follow(place + 1, at + plain(own.rows[row]?.text ?? '').length, {
            ...way,
            marks: [...way.marks, { place, row }],
          })
        return
      }
      case 'sequence': {
        const run = /^[0-9?]*/.exec(read.slice(at, at + own.maxDigits))?.[0].length ?? 0
        if (run < own.minDigits) miss(at + run, `the ${own.name} in ${own.minDigits} figures or more`)
        for (let length = own.minDigits; length <= run; length += 1) {
          const text = read.slice(at, at + length)
          const stretches = stretchesOf(text, own.stretches)
          if (stretches.length === 0 && own.stretches.length > 0)
            miss(at + length - 1, `a ${own.name} that was issued`, at)
          const known: readonly (number | null)[] = own.stretches.length === 0 ? [null] : stretches
          for (const stretch of known)
            follow(place + 1, at + length, { ...way, sequences: [...way.sequences, { place, text, stretch }] })
        }
      }
    }
  }
  follow(0, 0, { marks: [], sequences: [] })
  const found = read.slice(furthest.from, furthest.at + 1)
  const stands =
    read[furthest.at] === undefined
      ? `It ends at place ${furthest.at + 1}`
      : `${found} stands in place ${furthest.from + 1}`
  return { ways, why: ways.length > 0 ? null : `${stands} where ${furthest.wanted} is wanted.` }
}

/** Stretches some completion of the figures lies in. */
function stretchesOf(
  text: string,
  stretches: readonly { readonly first: number; readonly last: number }[],
): readonly number[] {
  const least = Number(text.replaceAll('?', '0'))
  const most = Number(text.replaceAll('?', '9'))
  return stretches.flatMap(({ first, last }, at) => (first <= most && least <= last ? [at] : []))
}

/** Places, from 1, of the single characters that could be misread so that the number would have the form. */
export function fitsButFor(asRead: string, grammar: SheetNumber): readonly number[] {
  const read = plainNumber(asRead, grammar)
  return [...read].flatMap((_, at) => {
    const without = `${read.slice(0, at)}?${read.slice(at + 1)}`
    return readSheetNumber(without, grammar).ways.length > 0 ? [at + 1] : []
  })
}
