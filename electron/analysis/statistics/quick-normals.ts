import { type Draw, xoshiro128 } from '../sampling/seeded-draws.ts'

/** Layers of the stack of rectangles, where the lowest one ends, and the area of each. */
const LAYERS = 128
const EDGE = 3.442619855899
const LAYER_AREA = 9.91256303526217e-3

const widths = new Float64Array(LAYERS + 1)
const ratios = new Float64Array(LAYERS)
let height = Math.exp(-0.5 * EDGE * EDGE)
widths[0] = LAYER_AREA / height
widths[1] = EDGE
for (let layer = 2; layer < LAYERS; layer += 1) {
  widths[layer] = Math.sqrt(-2 * Math.log(LAYER_AREA / (widths[layer - 1] as number) + height))
  height = Math.exp(-0.5 * (widths[layer] as number) ** 2)
}
for (let layer = 0; layer < LAYERS; layer += 1)
  ratios[layer] = (widths[layer + 1] as number) / (widths[layer] as number)

/**
 * Standard normal numbers by a stack of rectangles: the ziggurat of Marsaglia and Tsang (J. Stat. Software 5 (2000) 8) with
 * layer and place drawn apart, as J. A. Doornik asks for (An Improved Ziggurat Method, Oxford, 2005); places have 32 bits.
 * Many are made at a time, in place, because a number handed back alone costs more than it takes to make.
 */
export class QuickNormals {
  readonly #next: () => number
  readonly #kept = new Float64Array(512)
  #used = 512

  constructor(draw: Draw) {
    const word = (): number => Math.floor(draw() * 0x100000000)
    this.#next = xoshiro128([word(), word(), word(), word() | 1])
  }

  /** Puts normal numbers into the first `count` places. */
  fill(target: Float64Array, count: number): void {
    const next = this.#next
    for (let at = 0; at < count; at += 1) {
      const layer = next() & (LAYERS - 1)
      const place = (next() - 0x80000000) / 0x80000000
      target[at] =
        Math.abs(place) < (ratios[layer] as number) ? place * (widths[layer] as number) : this.#outside(layer, place)
    }
  }

  /** One normal number. */
  readonly one: Draw = () => {
    if (this.#used === this.#kept.length) {
      this.fill(this.#kept, this.#kept.length)
      this.#used = 0
    }
    this.#used += 1
    return this.#kept[this.#used - 1] as number
  }

  #uniform(): number {
    return (this.#next() + 0.5) / 0x100000000
  }

  /** Where the place lies beyond the rectangle that is wholly below the curve. */
  #outside(first: number, start: number): number {
    let layer = first
    let place = start
    for (;;) {
      if (Math.abs(place) < (ratios[layer] as number)) return place * (widths[layer] as number)
      if (layer === 0) return place < 0 ? -this.#beyondEdge() : this.#beyondEdge()
      const x = place * (widths[layer] as number)
      const lower = Math.exp(-0.5 * ((widths[layer] as number) ** 2 - x * x))
      const upper = Math.exp(-0.5 * ((widths[layer + 1] as number) ** 2 - x * x))
      if (upper + this.#uniform() * (lower - upper) < 1) return x
      layer = this.#next() & (LAYERS - 1)
      place = 2 * this.#uniform() - 1
    }
  }

  #beyondEdge(): number {
    for (;;) {
      const x = -Math.log(this.#uniform()) / EDGE
      if (-2 * Math.log(this.#uniform()) > x * x) return EDGE + x
    }
  }
}
