import type { SheetNumber } from '../../../shared-types/reference-fact.ts'
import { figuresChance, textChance } from './figures-likelihood.ts'
import { plainNumber } from './read-sheet-number.ts'

type Place = SheetNumber['places'][number]

/** What may stand at each place on cars of one sort: share of each row or stretch; null where nothing is known of it. */
export type NumberClass = readonly (readonly number[] | null)[]

/** A piece of the number as it may have been read off one place: how long, and its chance under each row of the place. */
interface Piece {
  readonly length: number
  readonly chances: readonly number[]
}

/** Where no stretches are given, any figures. */
const anyFigures = ({ maxDigits }: { readonly maxDigits: number }) => [{ first: 0, last: 10 ** maxDigits - 1 }]

function piecesAt(place: Place, read: string, grammar: SheetNumber): readonly Piece[] {
  const plain = (text: string) => plainNumber(text, grammar)
  switch (place.kind) {
    case 'fixed': {
      const ways = place.texts.length + (place.optional ? 1 : 0)
      const pieces = place.texts.map(plain).flatMap((text): Piece[] => {
        const chance = read.length < text.length ? 0 : textChance(read, text, grammar.misread)
        return [{ length: text.length, chances: [chance / ways] }]
      })
      return place.optional ? [...pieces, { length: 0, chances: [1 / ways] }] : pieces
    }
    case 'marks': {
      const texts = place.rows.map(({ text }) => plain(text))
      return [...new Set(texts.map(({ length }) => length))]
        .filter((length) => length <= read.length)
        .map((length) => ({
          length,
          chances: texts.map((text) => (text.length === length ? textChance(read, text, grammar.misread) : 0)),
        }))
    }
    case 'sequence': {
      const stretches = place.stretches.length === 0 ? anyFigures(place) : place.stretches
      const lengths = Array.from({ length: place.maxDigits - place.minDigits + 1 }, (_, more) => place.minDigits + more)
      return lengths
        .filter((length) => length <= read.length)
        .map((length) => {
          const figures = read.slice(0, length)
          return {
            length,
            chances: stretches.map((stretch) => figuresChance(figures, stretch, place.minDigits, grammar.misread)),
          }
        })
    }
  }
}

/** Shares where nothing is known: marks alike, figures as many as were given out in each stretch. */
function sharesOfAny(place: Place): readonly number[] {
  if (place.kind === 'fixed') return [1]
  if (place.kind === 'marks') return place.rows.map(() => 1 / place.rows.length)
  const stretches = place.stretches.length === 0 ? anyFigures(place) : place.stretches
  const sizes = stretches.map(({ first, last }) => last - first + 1)
  const all = sizes.reduce((sum, size) => sum + size, 0)
  return sizes.map((size) => size / all)
}

/**
 * Likelihood of a number as read for each sort of car: over every number the car may have left with, every way the characters
 * were misread or could not be read (`?`), and the share of cars whose number is no longer their own, when it may be any
 * number of the form. The places of one number stand and fall together. All 0 when no number of the form has this length.
 * @param misreadTimes how many times more often characters are misread than on the car itself
 */
export function numberLikelihood(
  asRead: string,
  grammar: SheetNumber,
  classes: readonly NumberClass[],
  misreadTimes = 1,
): readonly number[] {
  const own = { ...grammar, misread: Math.min(1, grammar.misread * misreadTimes) }
  const read = plainNumber(asRead, own)
  const pieces = own.places.map((place) =>
    Array.from({ length: read.length + 1 }, (_, at) => piecesAt(place, read.slice(at), own)),
  )
  const any = own.places.map(sharesOfAny)
  const chanceOf = (shares: NumberClass): number => {
    // Chance of what stands from each character on, the last place first.
    let from: readonly number[] = Array.from({ length: read.length + 1 }, (_, at) => (at === read.length ? 1 : 0))
    for (let place = own.places.length - 1; place >= 0; place -= 1) {
      const known = shares[place] ?? any[place] ?? []
      const after = from
      from = after.map((_, at) =>
        (pieces[place]?.[at] ?? []).reduce((sum, { length, chances }) => {
          const rest = after[at + length] ?? 0
          if (rest === 0) return sum
          return sum + rest * known.reduce((total, share, row) => total + share * (chances[row] as number), 0)
        }, 0),
      )
    }
    return from[0] as number
  }
  const ofAny = chanceOf(own.places.map(() => null))
  return classes.map((shares) => (1 - own.replaced) * chanceOf(shares) + own.replaced * ofAny)
}
