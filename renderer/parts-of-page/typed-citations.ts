export interface TypedCitations {
  /** Numbers that stand in the record, each once, in the order they were typed. */
  readonly numbers: number[]
  /** Words that are no number of a row. */
  readonly unknown: string[]
}

/** Numbers of exhibits or findings as typed: `E4, 12 e7`. `letter` is the one that may stand before a number. */
export function typedCitations(text: string, letter: 'E' | 'F', known: readonly number[]): TypedCitations {
  const before = new RegExp(`^${letter}`, 'i')
  const words = text.split(/[\s,;]+/).filter((word) => word !== '' && word.toUpperCase() !== letter)
  const read = words.map((word) => ({ word, number: Number(word.replace(before, '')) }))
  return {
    numbers: [...new Set(read.filter(({ number }) => known.includes(number)).map(({ number }) => number))],
    unknown: read.filter(({ number }) => !known.includes(number)).map(({ word }) => word),
  }
}
