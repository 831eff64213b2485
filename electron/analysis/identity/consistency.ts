import { type FlatClauses, flatClauses } from './flat-clauses.ts'
import type { IndexedClause, IndexedLiteral, IndexedVariable } from './identity-model.ts'

/** Items (by number) that cannot all stand, and the guesses the refutation leaned on. */
interface Refutation {
  readonly items: Set<number>
  readonly guesses: Set<number>
}

const GUESS = -1

/**
 * Whether some items can all stand: each item is a few clauses; clauses without item always stand. Search by cases with
 * consequences drawn at once; every refutation is traced back to the items it used, and guesses it did not use are skipped.
 */
export class Consistency {
  readonly #flat: FlatClauses
  readonly #itemOf: Int32Array
  readonly #clausesOfItem: readonly (readonly number[])[]
  readonly #background: readonly number[]
  readonly #active: Uint8Array
  readonly #open: Int32Array
  readonly #needed: Int32Array
  readonly #trailWord: number[] = []
  readonly #trailBits: number[] = []
  /** By trail entry: the clause that drew it, or GUESS less the depth of the guess. */
  readonly #trailReason: number[] = []
  readonly #trailVariable: number[] = []
  readonly #queue: number[] = []

  /** @param items clauses of each item. @param always clauses that stand whatever is asked. */
  constructor(
    variables: readonly IndexedVariable[],
    items: readonly (readonly IndexedClause[])[],
    always: readonly IndexedClause[],
  ) {
    const single = variables.map(({ values }) => ({
      classOf: Int32Array.from(values, (_, value) => value),
      members: values.map((_, value) => Int32Array.of(value)),
    }))
    const numbered = items.flatMap((clauses, item) => clauses.map(({ literals }) => ({ item: String(item), literals })))
    this.#flat = flatClauses([...numbered, ...always.map(({ literals }) => ({ item: null, literals }))], single)
    this.#itemOf = Int32Array.from(this.#flat.items, (item) => (item === null ? -1 : Number(item)))
    const of: number[][] = items.map(() => [])
    const background: number[] = []
    this.#itemOf.forEach((item, clause) => {
      ;(of[item] ?? background).push(clause)
    })
    this.#clausesOfItem = of
    this.#background = background
    this.#active = new Uint8Array(this.#flat.items.length)
    this.#open = this.#flat.all.slice()
    this.#needed = new Int32Array(this.#open.length)
  }

  /** Null when these items can all stand; else some of them that cannot. */
  refute(items: Iterable<number>): ReadonlySet<number> | null {
    this.#active.fill(0)
    this.#open.set(this.#flat.all)
    for (const list of [this.#trailWord, this.#trailBits, this.#trailReason, this.#trailVariable, this.#queue])
      list.length = 0
    const clauses = [...this.#background]
    for (const item of items) clauses.push(...(this.#clausesOfItem[item] ?? []))
    for (const clause of clauses) this.#active[clause] = 1
    for (const clause of clauses) if (!this.#consider(clause)) return this.#explain(clause).items
    return this.#search(0, clauses)?.items ?? null
  }

  #search(depth: number, clauses: readonly number[]): Refutation | null {
    const broken = this.#propagate()
    if (broken >= 0) return this.#explain(broken)
    const undecided = clauses.filter((clause) => this.#state(clause) !== 'holds')
    const [next] = undecided
    if (next === undefined) return null
    const literal = this.#openLiteral(next)
    const mark = this.#trailWord.length
    let found: Refutation | null = null
    for (const side of [0, -1]) {
      this.#guess(literal, side, depth)
      const own = this.#search(depth + 1, undecided)
      this.#undo(mark)
      if (own === null) return null
      if (!own.guesses.has(depth)) return own
      own.guesses.delete(depth)
      found = found === null ? own : join(found, own)
    }
    return found
  }

  #masked(literal: number, word: number): number {
    const { variable, wordAt, maskAt, masks } = this.#flat
    return masks[(maskAt[literal] as number) + word - (wordAt[variable[literal] as number] as number)] as number
  }

  /** 0 false, 1 open, 2 holds. */
  #literal(literal: number): 0 | 1 | 2 {
    const { variable, wordAt, maskAt, masks } = this.#flat
    const own = variable[literal] as number
    let at = maskAt[literal] as number
    let [within, without] = [0, 0]
    for (let word = wordAt[own] as number; word < (wordAt[own + 1] as number); word++, at++) {
      within |= (this.#open[word] as number) & (masks[at] as number)
      without |= (this.#open[word] as number) & ~(masks[at] as number)
    }
    if (within === 0) return 0
    return without === 0 ? 2 : 1
  }

  #state(clause: number): 'holds' | 'open' {
    for (let at = this.#flat.start[clause] as number; at < (this.#flat.start[clause + 1] as number); at++)
      if (this.#literal(at) === 2) return 'holds'
    return 'open'
  }

  #openLiteral(clause: number): number {
    let at = this.#flat.start[clause] as number
    while (this.#literal(at) !== 1) at += 1
    return at
  }

  /** Removes from a variable what is outside (side 0) or inside (side -1) a literal's mask. */
  #guess(literal: number, side: number, depth: number): void {
    this.#remove(literal, side, GUESS - depth)
  }

  #remove(literal: number, side: number, reason: number): void {
    const { variable, wordAt } = this.#flat
    const own = variable[literal] as number
    for (let word = wordAt[own] as number; word < (wordAt[own + 1] as number); word++) {
      const gone = (this.#open[word] as number) & ~(this.#masked(literal, word) ^ side)
      if (gone === 0) continue
      this.#open[word] = (this.#open[word] as number) & ~gone
      this.#trailWord.push(word)
      this.#trailBits.push(gone)
      this.#trailReason.push(reason)
      this.#trailVariable.push(own)
    }
    this.#queue.push(own)
  }

  #undo(mark: number): void {
    this.#queue.length = 0
    while (this.#trailWord.length > mark) {
      const word = this.#trailWord.pop() as number
      this.#open[word] = (this.#open[word] as number) | (this.#trailBits.pop() as number)
      this.#trailReason.pop()
      this.#trailVariable.pop()
    }
  }

  /** Draws consequences; answers a clause that can no longer hold, or -1. */
  #propagate(): number {
    while (this.#queue.length > 0)
      for (const clause of this.#flat.clausesOf[this.#queue.pop() as number] as Int32Array)
        if (this.#active[clause] === 1 && !this.#consider(clause)) return clause
    return -1
  }

  #consider(clause: number): boolean {
    let only = -1
    for (let at = this.#flat.start[clause] as number; at < (this.#flat.start[clause + 1] as number); at++) {
      const state = this.#literal(at)
      if (state === 2) return true
      if (state === 0) continue
      if (only >= 0) return true
      only = at
    }
    if (only < 0) return false
    this.#remove(only, 0, clause)
    return true
  }

  /** Items and guesses behind a broken clause: why each of its literals fails, traced back along the trail. */
  #explain(broken: number): Refutation {
    const items = new Set<number>()
    const guesses = new Set<number>()
    this.#needed.fill(0)
    this.#need(broken, -1, items)
    for (let at = this.#trailWord.length - 1; at >= 0; at--) {
      const word = this.#trailWord[at] as number
      const gone = this.#trailBits[at] as number
      if (((this.#needed[word] as number) & gone) === 0) continue
      this.#needed[word] = (this.#needed[word] as number) & ~gone
      const reason = this.#trailReason[at] as number
      if (reason <= GUESS) guesses.add(GUESS - reason)
      else this.#need(reason, this.#trailVariable[at] as number, items)
    }
    return { items, guesses }
  }

  /** Every literal of the clause but the one of `except` must be explained. */
  #need(clause: number, except: number, items: Set<number>): void {
    const { start, variable, wordAt } = this.#flat
    const item = this.#itemOf[clause] as number
    if (item >= 0) items.add(item)
    for (let literal = start[clause] as number; literal < (start[clause + 1] as number); literal++) {
      const own = variable[literal] as number
      if (own === except) continue
      for (let word = wordAt[own] as number; word < (wordAt[own + 1] as number); word++)
        this.#needed[word] = (this.#needed[word] as number) | this.#masked(literal, word)
    }
  }
}

const join = (one: Refutation, other: Refutation): Refutation => ({
  items: new Set([...one.items, ...other.items]),
  guesses: new Set([...one.guesses, ...other.guesses]),
})

/** A literal as a clause of its own. */
export const unit = (literal: IndexedLiteral): IndexedClause => ({ item: null, literals: [literal] })
