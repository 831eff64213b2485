/** A source of numbers, 0 included and 1 not. */
export type Draw = () => number

/**
 * Repeatable uniform numbers from four 32-bit words that are not all zero: xoshiro128** (Blackman and Vigna, ACM Trans.
 * Math. Softw. 47 (2021) 36; public domain). Whole numbers from 0 to 2^32 - 1.
 */
export function xoshiro128(words: readonly [number, number, number, number]): () => number {
  let [a, b, c, d] = words
  return () => {
    const result = Math.imul(turned(Math.imul(b, 5), 7), 9) >>> 0
    const shifted = b << 9
    c ^= a
    d ^= b
    b ^= c
    a ^= d
    c ^= shifted
    d = turned(d, 11)
    return result
  }
}

const turned = (word: number, by: number): number => (word << by) | (word >>> (32 - by))

/** Uniform numbers with 53 random bits from any text as a seed, spread by FNV-1a and splitmix32. */
export function seededDraw(seed: string): Draw {
  let hash = 0x811c9dc5
  for (const character of seed) hash = Math.imul(hash ^ (character.codePointAt(0) ?? 0), 0x01000193)
  const word = () => {
    hash = (hash + 0x9e3779b9) | 0
    let mixed = hash ^ (hash >>> 16)
    mixed = Math.imul(mixed, 0x21f0aaad)
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97)
    return (mixed ^ (mixed >>> 15)) | 0
  }
  const next = xoshiro128([word(), word(), word(), word()])
  return () => ((next() >>> 5) * 0x4000000 + (next() >>> 6)) / 0x20000000000000
}

/** Standard normal numbers, two from every two uniform ones (Box and Muller, Ann. Math. Stat. 29 (1958) 610-611). */
export function normalDraw(draw: Draw): Draw {
  let kept: number | null = null
  return () => {
    if (kept !== null) {
      const second = kept
      kept = null
      return second
    }
    const radius = Math.sqrt(-2 * Math.log(1 - draw()))
    const angle = 2 * Math.PI * draw()
    kept = radius * Math.sin(angle)
    return radius * Math.cos(angle)
  }
}
