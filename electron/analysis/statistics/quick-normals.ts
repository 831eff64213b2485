import { KernelMemory } from '../kernel/kernel-memory.ts'
import type { Draw } from '../sampling/seeded-draws.ts'

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

/** Normal numbers made at a time. */
const BATCH = 1024

/**
 * Standard normal numbers by a stack of rectangles, see `kernel/source/normals.ts`. Many are made at a time, because a number
 * handed back alone costs more than it takes to make.
 */
export class QuickNormals {
  readonly #memory = new KernelMemory(2 + widths.length + ratios.length + BATCH, 4)
  readonly #state = this.#memory.wholes(4)
  readonly #widths = this.#memory.numbers(widths.length)
  readonly #ratios = this.#memory.numbers(ratios.length)
  readonly #made = this.#memory.numbers(BATCH)
  readonly #kept = new Float64Array(512)
  #used = this.#kept.length

  constructor(draw: Draw) {
    const word = (): number => Math.floor(draw() * 0x100000000)
    this.#state.set([word(), word(), word(), word() | 1])
    this.#widths.set(widths)
    this.#ratios.set(ratios)
  }

  /** Puts normal numbers into the first `count` places. */
  fill(target: Float64Array, count: number): void {
    const [state, width, ratio] = [this.#state.byteOffset, this.#widths.byteOffset, this.#ratios.byteOffset]
    for (let from = 0; from < count; from += BATCH) {
      const some = Math.min(BATCH, count - from)
      this.#memory.kernel.fillNormals(state, width, ratio, this.#made.byteOffset, some)
      target.set(this.#made.subarray(0, some), from)
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
}
