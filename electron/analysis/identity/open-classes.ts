import type { FlatClauses } from './flat-clauses.ts'

/** Where a literal stands against the classes still open: none of them, some, all of them. */
export const FALSE = 0
export const OPEN = 1
export const TRUE = 2

/** The classes of every variable still open while variables are being decided; changes are kept on a trail. */
export class OpenClasses {
  readonly clauses: FlatClauses
  readonly open: Int32Array
  readonly #trailWords: number[] = []
  readonly #trailValues: number[] = []
  readonly #queue: number[] = []

  constructor(clauses: FlatClauses) {
    this.clauses = clauses
    this.open = clauses.all.slice()
  }

  /** How far the trail has come; `undo` goes back there. */
  get mark(): number {
    return this.#trailWords.length
  }

  undo(mark: number): void {
    while (this.#trailWords.length > mark)
      this.open[this.#trailWords.pop() as number] = this.#trailValues.pop() as number
  }

  /** Whether a literal holds, fails, or stands open. */
  literal(literal: number): number {
    const { variable, wordAt, maskAt, masks } = this.clauses
    const own = variable[literal] as number
    const end = wordAt[own + 1] as number
    let at = maskAt[literal] as number
    let within = 0
    let without = 0
    for (let word = wordAt[own] as number; word < end; word++, at++) {
      const open = this.open[word] as number
      const mask = masks[at] as number
      within |= open & mask
      without |= open & ~mask
    }
    if (within === 0) return FALSE
    return without === 0 ? TRUE : OPEN
  }

  /** Keeps of a variable only the classes of `masks` from `at` on; answers whether any is left. */
  keep(variable: number, masks: Int32Array, at: number): boolean {
    const end = this.clauses.wordAt[variable + 1] as number
    let left = 0
    let changed = false
    for (let word = this.clauses.wordAt[variable] as number, own = at; word < end; word++, own++) {
      const before = this.open[word] as number
      const after = before & (masks[own] as number)
      left |= after
      if (after === before) continue
      this.#trailWords.push(word)
      this.#trailValues.push(before)
      this.open[word] = after
      changed = true
    }
    if (changed) this.#queue.push(variable)
    return left !== 0
  }

  /** Bits of a clause's open literals (of the first 31); -1 when it holds already. */
  openLiterals(clause: number): number {
    const from = this.clauses.start[clause] as number
    const end = this.clauses.start[clause + 1] as number
    let bits = 0
    for (let literal = from; literal < end; literal++) {
      const state = this.literal(literal)
      if (state === TRUE) return -1
      if (state === OPEN) bits |= 1 << Math.min(literal - from, 30)
    }
    return bits
  }

  /** Draws every consequence of a single open literal; false when some clause can no longer hold. */
  propagate(): boolean {
    const { clausesOf } = this.clauses
    while (this.#queue.length > 0) {
      for (const clause of clausesOf[this.#queue.pop() as number] as Int32Array)
        if (!this.consider(clause)) {
          this.#queue.length = 0
          return false
        }
    }
    return true
  }

  /** Draws the consequence of one clause: when a single literal is open it must hold. */
  consider(clause: number): boolean {
    const { start, variable, masks, maskAt } = this.clauses
    const end = start[clause + 1] as number
    let only = -1
    for (let literal = start[clause] as number; literal < end; literal++) {
      const state = this.literal(literal)
      if (state === TRUE) return true
      if (state === FALSE) continue
      // Two open literals say nothing yet, unless a later one holds, which says nothing either.
      if (only >= 0) return true
      only = literal
    }
    return only >= 0 && this.keep(variable[only] as number, masks, maskAt[only] as number)
  }
}
