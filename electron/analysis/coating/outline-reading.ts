import type { FillerDraws } from './field-draws.ts'
import type { NextReadingTerms } from './next-reading.ts'

/** A place whose reading would settle most of the outline: area now expected on the wrong side of it, and after the reading. */
export interface OutlineSpot {
  readonly node: number
  readonly beforeMm2: number
  readonly afterMm2: number
}

/** Sets of equally many draws by what they would read, and places tried. */
const BINS = 8
const MOST_TRIED = 80

/**
 * The place whose reading is expected to leave least area misclassified as filler or not: over sets of draws that would read
 * alike, the lesser of the chances of either is added up over the nodes (C. Chevalier et al., Technometrics 56 (2014) 455-465,
 * for the criterion; here over draws instead of a closed form). Tried at the nodes most in doubt. Null when nothing is in doubt.
 */
export function outlineSpot(
  drawn: FillerDraws,
  weights: Float64Array,
  candidates: Uint8Array,
  deeperThanUm: number,
  terms: NextReadingTerms,
): OutlineSpot | null {
  const words = Math.ceil(drawn.draws / 32)
  const deeper = exceedingBits(drawn, deeperThanUm, words)
  const doubt = Float64Array.from({ length: drawn.nodes }, (_, node) => {
    const share = countBits(deeper, node * words, words) / drawn.draws
    return Math.min(share, 1 - share)
  })
  const beforeMm2 = doubt.reduce((sum, value, node) => sum + value * (weights[node] as number), 0)
  const tried = Array.from(doubt.keys())
    .filter((node) => candidates[node] === 1 && (doubt[node] as number) > 0)
    .sort((one, other) => (doubt[other] as number) - (doubt[one] as number))
  const step = Math.max(1, Math.floor(Math.min(tried.length, 4 * MOST_TRIED) / MOST_TRIED))
  let best: OutlineSpot | null = null
  for (let at = 0; at < Math.min(tried.length, step * MOST_TRIED); at += step) {
    const node = tried[at] as number
    const afterMm2 = areaInDoubt(drawn, deeper, weights, binBits(drawn, node, terms, words), words)
    if (best === null || afterMm2 < best.afterMm2) best = { node, beforeMm2, afterMm2 }
  }
  return best
}

function exceedingBits({ fillerUm, draws, nodes }: FillerDraws, deeperThanUm: number, words: number): Int32Array {
  const bits = new Int32Array(nodes * words)
  for (let node = 0; node < nodes; node += 1)
    for (let d = 0; d < draws; d += 1)
      if ((fillerUm[node * draws + d] as number) > deeperThanUm) {
        const word = node * words + (d >> 5)
        bits[word] = (bits[word] as number) | (1 << (d & 31))
      }
  return bits
}

/** Draws by what they would read at a node: those that read paint together, the others by rank. */
function binBits({ fillerUm, draws }: FillerDraws, node: number, terms: NextReadingTerms, words: number): Int32Array[] {
  const shown = Float64Array.from({ length: draws }, (_, d) =>
    Math.min(terms.saturationUm, Math.max(terms.paintUm, fillerUm[node * draws + d] as number)),
  )
  const order = Array.from(shown.keys()).sort((one, other) => (shown[one] as number) - (shown[other] as number))
  const bins = Array.from({ length: BINS }, () => new Int32Array(words))
  let bin = 0
  order.forEach((d, rank) => {
    const alike = rank > 0 && shown[d] === shown[order[rank - 1] as number]
    if (!alike) bin = Math.max(bin, Math.floor((rank * BINS) / draws))
    const own = bins[bin] as Int32Array
    own[d >> 5] = (own[d >> 5] as number) | (1 << (d & 31))
  })
  return bins
}

function areaInDoubt(
  { nodes, draws }: FillerDraws,
  deeper: Int32Array,
  weights: Float64Array,
  bins: readonly Int32Array[],
  words: number,
): number {
  let area = 0
  for (const bin of bins) {
    const size = countBits(bin, 0, words)
    if (size === 0) continue
    for (let node = 0; node < nodes; node += 1) {
      let both = 0
      for (let word = 0; word < words; word += 1)
        both += ones((deeper[node * words + word] as number) & (bin[word] as number))
      area += ((weights[node] as number) * Math.min(both, size - both)) / draws
    }
  }
  return area
}

function countBits(bits: Int32Array, from: number, words: number): number {
  let sum = 0
  for (let word = from; word < from + words; word += 1) sum += ones(bits[word] as number)
  return sum
}

/** Ones in 32 bits (H. S. Warren, Hacker's Delight, 5-1). */
function ones(word: number): number {
  const pairs = word - ((word >>> 1) & 0x55555555)
  const fours = (pairs & 0x33333333) + ((pairs >>> 2) & 0x33333333)
  return Math.imul((fours + (fours >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24
}
