import type { Places } from './covariance.ts'

/** Places of the nodes' box that one cell holds in the end. */
const PER_CELL = 2

/** Places put one after the other into square cells, to find the nearest of those already there. */
export class PlaceCells {
  readonly #left: number
  readonly #low: number
  readonly #side: number
  readonly #columns: number
  readonly #rows: number
  /** Last place put into each cell, and for each place the one put in before it; -1 for none. */
  readonly #last: Int32Array
  readonly #earlier: Int32Array
  #squares = new Float64Array(0)

  constructor(
    readonly x: Float64Array,
    readonly y: Float64Array,
    box: Places,
    /** How many of the places will be put in. */
    expected: number = x.length,
  ) {
    this.#left = least(box.x)
    this.#low = least(box.y)
    const width = Math.max(1e-9, -least(box.x.map((value) => -value)) - this.#left)
    const height = Math.max(1e-9, -least(box.y.map((value) => -value)) - this.#low)
    this.#side = Math.max(Math.sqrt((PER_CELL * width * height) / expected), (width + height) / expected)
    this.#columns = Math.floor(width / this.#side) + 1
    this.#rows = Math.floor(height / this.#side) + 1
    this.#last = new Int32Array(this.#columns * this.#rows).fill(-1)
    this.#earlier = new Int32Array(x.length).fill(-1)
  }

  /** A place outside the box goes into the cell at its edge, which is never further away than the place itself. */
  #column(place: number): number {
    return clamped(Math.floor(((this.x[place] as number) - this.#left) / this.#side), this.#columns)
  }

  #row(place: number): number {
    return clamped(Math.floor(((this.y[place] as number) - this.#low) / this.#side), this.#rows)
  }

  add(place: number): void {
    const cell = this.#row(place) * this.#columns + this.#column(place)
    this.#earlier[place] = this.#last[cell] as number
    this.#last[cell] = place
  }

  /** Fills in the nearest places to a place, nearest first; what is left over stays as it was. */
  nearest(place: number, found: Int32Array): void {
    if (this.#squares.length !== found.length) this.#squares = new Float64Array(found.length)
    const squares = this.#squares.fill(Number.POSITIVE_INFINITY)
    const column = this.#column(place)
    const row = this.#row(place)
    const rings = Math.max(this.#columns, this.#rows)
    for (let ring = 0; ring < rings; ring += 1) {
      const from = Math.max(0, row - ring)
      const to = Math.min(this.#rows - 1, row + ring)
      for (let r = from; r <= to; r += 1) {
        const whole = r === row - ring || r === row + ring
        const step = whole || ring === 0 ? 1 : 2 * ring
        for (let c = column - ring; c <= column + ring; c += step)
          if (c >= 0 && c < this.#columns) this.#look(place, r * this.#columns + c, found, squares)
      }
      if ((squares[squares.length - 1] as number) <= (ring * this.#side) ** 2) return
    }
  }

  #look(place: number, cell: number, found: Int32Array, squares: Float64Array): void {
    const end = found.length - 1
    const ownX = this.x[place] as number
    const ownY = this.y[place] as number
    for (let other = this.#last[cell] as number; other >= 0; other = this.#earlier[other] as number) {
      const dx = (this.x[other] as number) - ownX
      const dy = (this.y[other] as number) - ownY
      const square = dx * dx + dy * dy
      if (square >= (squares[end] as number)) continue
      let slot = end
      while (slot > 0 && (squares[slot - 1] as number) > square) {
        squares[slot] = squares[slot - 1] as number
        found[slot] = found[slot - 1] as number
        slot -= 1
      }
      squares[slot] = square
      found[slot] = other
    }
  }
}

const clamped = (cell: number, cells: number): number => Math.max(0, Math.min(cells - 1, cell))

const least = (values: Float64Array): number =>
  values.reduce((smallest, value) => Math.min(smallest, value), Number.POSITIVE_INFINITY)
