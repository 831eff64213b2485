import { exp, log } from './env'

/** Where the lowest layer of the stack of rectangles ends, and the number of layers less one. */
const EDGE: f64 = 3.442619855899
const LAST_LAYER: u32 = 127
const HALF: f64 = 1.0 / 2147483648.0

/** One word of xoshiro128** (Blackman and Vigna, ACM Trans. Math. Softw. 47 (2021) 36; public domain). */
function word(state: usize): u32 {
  const a = load<u32>(state)
  const b = load<u32>(state, 4)
  const c = load<u32>(state, 8) ^ a
  const d = load<u32>(state, 12) ^ b
  store<u32>(state, a ^ d)
  store<u32>(state, b ^ c, 4)
  store<u32>(state, c ^ (b << 9), 8)
  store<u32>(state, rotl<u32>(d, 11), 12)
  return rotl<u32>(b * 5, 7) * 9
}

/** A number above nought and below one. */
function uniform(state: usize): f64 {
  return (f64(word(state)) + 0.5) / 4294967296.0
}

/** Where a word lies between minus one and one. */
function placeOf(drawn: u32): f64 {
  return f64(i32(drawn ^ 0x80000000)) * HALF
}

/**
 * Puts so many standard normal numbers at `out` by a stack of rectangles: the ziggurat of Marsaglia and Tsang (J. Stat. Software 5
 * (2000) 8) with layer and place drawn apart, as J. A. Doornik asks for (An Improved Ziggurat Method, Oxford, 2005). `state`
 * holds four words that are not all nought, `widths` the ends of 128 layers and of none, `ratios` the share of each that is wholly below the curve.
 */
export function fillNormals(state: usize, widths: usize, ratios: usize, out: usize, count: i32): void {
  for (const end = out + count * 8; out < end; out += 8) {
    const layer = word(state) & LAST_LAYER
    const place = placeOf(word(state))
    const value =
      Math.abs(place) < load<f64>(ratios + layer * 8)
        ? place * load<f64>(widths + layer * 8)
        : outside(state, widths, ratios, layer, place)
    store<f64>(out, value)
  }
}

/** Where the place lies beyond the rectangle that is wholly below the curve. */
function outside(state: usize, widths: usize, ratios: usize, layer: u32, place: f64): f64 {
  while (true) {
    const width = load<f64>(widths + layer * 8)
    if (Math.abs(place) < load<f64>(ratios + layer * 8)) return place * width
    if (layer === 0) return place < 0 ? -beyondEdge(state) : beyondEdge(state)
    const x = place * width
    const next = load<f64>(widths + layer * 8, 8)
    const lower = exp(-0.5 * (width * width - x * x))
    const upper = exp(-0.5 * (next * next - x * x))
    if (upper + uniform(state) * (lower - upper) < 1) return x
    layer = word(state) & LAST_LAYER
    place = 2 * uniform(state) - 1
  }
}

function beyondEdge(state: usize): f64 {
  while (true) {
    const x = -log(uniform(state)) / EDGE
    if (-2 * log(uniform(state)) > x * x) return EDGE + x
  }
}
