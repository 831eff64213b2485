/** The compiled kernel in base 64, put here when the program is bundled and when tests are run: see build/steps/kernel.mjs. */
declare const NUMERIC_KERNEL: string

/**
 * What the kernel in `source/` offers; its files say what each function does. Everything is handed over by its place in the
 * kernel's memory, the `byteOffset` of a view taken from it.
 */
export interface Kernel {
  dot(one: number, other: number, count: number): number
  quadraticForm(matrix: number, w: number, n: number): number
  columnProducts(x: number, rows: number, strips: number, vector: number, out: number): void
  columnSquares(x: number, rows: number, strips: number, out: number): void
  intoBlocks(matrix: number, n: number, factor: number): void
  fromBlocks(factor: number, n: number, matrix: number): void
  inverseFromBlocks(factor: number, n: number, strips: number, inverse: number): void
  factorBlocks(factor: number, blocks: number, least: number): number
  solveStrips(factor: number, first: number, end: number, x: number, rows: number, strips: number): void
  covarianceStrips(
    structures: number,
    count: number,
    x: number,
    y: number,
    n: number,
    rows: number,
    targetX: number,
    targetY: number,
    strips: number,
    room: number,
    out: number,
  ): void
  nodeWeights(
    x: number,
    y: number,
    first: number,
    nodes: number,
    before: number,
    size: number,
    structures: number,
    count: number,
    own: number,
    sill: number,
    least: number,
    rooms: number,
    weights: number,
    deviations: number,
  ): void
  nearestPredictions(
    x: number,
    y: number,
    read: number,
    variance: number,
    targetX: number,
    targetY: number,
    targets: number,
    near: number,
    size: number,
    structures: number,
    count: number,
    own: number,
    sill: number,
    least: number,
    rooms: number,
    values: number,
    variances: number,
  ): number
  fillNormals(state: number, widths: number, ratios: number, out: number, count: number): void
  drawNode(
    field: number,
    stride: number,
    draws: number,
    before: number,
    weights: number,
    size: number,
    deviation: number,
    sum: number,
    own: number,
  ): void
}

const PAGE = 65_536
/** The kernel's own constants lie below. */
const START = 4096

let compiled: WebAssembly.Module | null = null

/** Compiled when it is first asked for, since most of what the program does never needs it. */
function kernelModule(): WebAssembly.Module {
  compiled ??= new WebAssembly.Module(Uint8Array.from(atob(NUMERIC_KERNEL), (letter) => letter.charCodeAt(0)))
  return compiled
}

/**
 * A kernel with memory of its own, of a size told beforehand, so that views of it stay good and all of it is given back once
 * nothing looks at it.
 */
export class KernelMemory {
  readonly kernel: Kernel
  readonly #memory: WebAssembly.Memory
  #used = START

  /** `numbers` is the count of 64-bit numbers all takings together need; two more are added for each of `takings`. */
  constructor(numbers: number, takings: number) {
    this.#memory = new WebAssembly.Memory({ initial: Math.ceil((START + 8 * numbers + 16 * takings) / PAGE) })
    const { exports } = new WebAssembly.Instance(kernelModule(), {
      env: { memory: this.#memory, exp: Math.exp, log: Math.log },
    })
    this.kernel = exports as unknown as Kernel
  }

  /** A stretch of noughts not given out before. */
  numbers(count: number): Float64Array {
    return new Float64Array(this.#memory.buffer, this.#take(8 * count), count)
  }

  singles(count: number): Float32Array {
    return new Float32Array(this.#memory.buffer, this.#take(4 * count), count)
  }

  wholes(count: number): Int32Array {
    return new Int32Array(this.#memory.buffer, this.#take(4 * count), count)
  }

  #take(bytes: number): number {
    const place = this.#used
    this.#used += 16 * Math.ceil(bytes / 16)
    return place
  }
}

/** Numbers the blocks of a lower triangle of n rows take, see `source/triangle.ts`. */
export const numbersOfBlocks = (n: number): number => 8 * blocksOf(n) * (blocksOf(n) + 1)

/** Blocks of four rows that hold n rows. */
export const blocksOf = (n: number): number => Math.ceil(n / 4)

/** Place of a row's number on the diagonal among the numbers of the blocks. */
export const diagonalInBlocks = (row: number): number => {
  const block = Math.floor(row / 4)
  return 8 * block * (block + 1) + 4 * row + (row % 4)
}

/** Numbers of room a pair of small systems of so many places needs, with `sides` right-hand sides. */
export const roomOfPairs = (size: number, sides: number): number =>
  2 * (3 * (size + 1) + size + (size + 1) * (size + 2) + sides * size)
