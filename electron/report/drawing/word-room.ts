interface Box {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly foot: number
}

/** Size of a word with the paper around it, mm. */
interface WordSize {
  readonly width: number
  readonly height: number
}

const CLEAR_MM = 0.4

const meet = (one: Box, other: Box): boolean =>
  one.left < other.right && other.left < one.right && one.top < other.foot && other.top < one.foot

/** Room for words on a drawing, mm on the page: none stands on a mark, on another word or beyond the sides of the field. */
export class WordRoom {
  readonly #taken: Box[] = []

  constructor(private readonly field: { readonly left: number; readonly right: number }) {}

  /** A mark that no word may cover. */
  take(x: number, y: number, radius: number): void {
    this.#taken.push({ left: x - radius, right: x + radius, top: y - radius, foot: y + radius })
  }

  /** The first free place around a mark: right, left, then below and above it; null when every one is taken. */
  beside({ width, height }: WordSize, x: number, y: number, radius: number): { left: number; foot: number } | null {
    const near = radius + CLEAR_MM
    const [right, left, middle] = [x + near, x - near - width, x - width / 2]
    const [above, level, below] = [y - near / 2, y + height / 2, y + near / 2 + height]
    return this.#firstFree({ width, height }, [
      [right, above],
      [left, above],
      [right, below],
      [left, below],
      [right, level],
      [left, level],
      [middle, y - near],
      [middle, y + near + height],
    ])
  }

  /** The first free place of those a word may have, its middle at a point; null when every one is taken. */
  atFirst({ width, height }: WordSize, middles: readonly { readonly x: number; readonly y: number }[]) {
    return this.#firstFree(
      { width, height },
      middles.map(({ x, y }) => [x - width / 2, y + height / 2]),
    )
  }

  #firstFree({ width, height }: WordSize, places: readonly (readonly [number, number])[]) {
    for (const [left, foot] of places) {
      const box = { left, right: left + width, top: foot - height, foot }
      const inside = box.left >= this.field.left && box.right <= this.field.right
      if (!inside || this.#taken.some((other) => meet(box, other))) continue
      this.#taken.push(box)
      return { left, foot }
    }
    return null
  }
}
