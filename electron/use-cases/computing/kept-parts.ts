/** A part of an input that a thread keeps: sent with its value once, by its key from then on. */
export interface KeptPart {
  readonly field: string
  readonly key: string
  /** Undefined when the thread has it. */
  readonly value?: unknown
}

/** Both sides forget all parts when there are more, so that neither need ask the other. */
const MOST_KEPT = 8
const nameOf = ({ field, key }: KeptPart): string => `${field} ${key}`

/** The asking side: which parts the thread has. */
export class PartsSent {
  readonly #names = new Set<string>()
  #threadNumber = 0

  /** The input without the part, and the part: with its value only when the thread has not had it yet. */
  without(
    input: object,
    { field, key }: { readonly field: string; readonly key: string },
    threadNumber: number,
  ): readonly [object, KeptPart] {
    if (threadNumber !== this.#threadNumber) this.#names.clear()
    this.#threadNumber = threadNumber
    const { [field]: value, ...rest } = input as Readonly<Record<string, unknown>>
    const name = nameOf({ field, key })
    if (this.#names.has(name)) return [rest, { field, key }]
    if (this.#names.size >= MOST_KEPT) this.#names.clear()
    this.#names.add(name)
    return [rest, { field, key, value }]
  }
}

/** The answering side: the parts themselves. */
export class PartsKept {
  readonly #parts = new Map<string, unknown>()

  /** The whole input again. */
  whole(input: unknown, kept: KeptPart | null): unknown {
    if (kept === null) return input
    const name = nameOf(kept)
    if (kept.value !== undefined) {
      if (this.#parts.size >= MOST_KEPT) this.#parts.clear()
      this.#parts.set(name, kept.value)
    }
    return { ...(input as object), [kept.field]: this.#parts.get(name) }
  }
}
