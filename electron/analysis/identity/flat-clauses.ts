import type { IndexedClause } from './identity-model.ts'
import type { ValueClasses } from './value-classes.ts'

/** Bits of a word: classes of a variable are bits in one or more 32-bit words. */
const WORD = 32

/** Clauses over value classes in flat arrays; a literal is a variable and a mask of the classes it allows. */
export interface FlatClauses {
  /** First word of each variable, and the number of words at the end. */
  readonly wordAt: Int32Array
  /** All classes of every variable. */
  readonly all: Int32Array
  readonly items: readonly (string | null)[]
  readonly start: Int32Array
  readonly variable: Int32Array
  /** First word of each literal's mask in `masks`. */
  readonly maskAt: Int32Array
  readonly masks: Int32Array
  /** Per variable: its clauses, and beside each its own literal there. */
  readonly clausesOf: readonly Int32Array[]
  readonly literalsOf: readonly Int32Array[]
}

const setBit = (words: Int32Array, from: number, bit: number) => {
  const word = from + (bit >> 5)
  words[word] = (words[word] as number) | (1 << (bit & (WORD - 1)))
}

/** Bits of the classes whose values are allowed. */
function maskOf({ members }: ValueClasses, allowed: Uint8Array): Int32Array {
  const mask = new Int32Array(Math.ceil(members.length / WORD))
  members.forEach((values, own) => {
    if (allowed[values[0] as number] === 1) setBit(mask, 0, own)
  })
  return mask
}

/** One literal per variable: literals of a clause over the same variable become one. */
function merged(clause: IndexedClause): ReadonlyMap<number, Uint8Array> {
  const found = new Map<number, Uint8Array>()
  for (const { variable, allowed } of clause.literals) {
    const before = found.get(variable)
    found.set(variable, before === undefined ? allowed : allowed.map((each, at) => each | (before[at] as number)))
  }
  return found
}

/** Flattens clauses; those that always hold are left out. */
export function flatClauses(clauses: readonly IndexedClause[], classes: readonly ValueClasses[]): FlatClauses {
  const wordAt = new Int32Array(classes.length + 1)
  classes.forEach(({ members }, variable) => {
    wordAt[variable + 1] = (wordAt[variable] as number) + Math.ceil(members.length / WORD)
  })
  const all = new Int32Array(wordAt[classes.length] as number)
  classes.forEach(({ members }, variable) => {
    members.forEach((_, own) => {
      setBit(all, wordAt[variable] as number, own)
    })
  })
  const items: (string | null)[] = []
  const start = [0]
  const variables: number[] = []
  const maskAt: number[] = []
  const masks: number[] = []
  const clausesOf: number[][] = classes.map(() => [])
  const literalsOf: number[][] = classes.map(() => [])
  for (const clause of clauses) {
    const literals = merged(clause)
    if ([...literals.values()].some((allowed) => allowed.every((each) => each === 1))) continue
    const number = items.push(clause.item) - 1
    for (const [variable, allowed] of literals) {
      clausesOf[variable]?.push(number)
      literalsOf[variable]?.push(variables.length)
      variables.push(variable)
      maskAt.push(masks.length)
      masks.push(...maskOf(classes[variable] as ValueClasses, allowed))
    }
    start.push(variables.length)
  }
  return {
    wordAt,
    all,
    items,
    start: Int32Array.from(start),
    variable: Int32Array.from(variables),
    maskAt: Int32Array.from(maskAt),
    masks: Int32Array.from(masks),
    clausesOf: clausesOf.map((each) => Int32Array.from(each)),
    literalsOf: literalsOf.map((each) => Int32Array.from(each)),
  }
}
