import { Consistency } from './consistency.ts'
import { type ItemSet, meetAlso } from './hitting-sets.ts'
import type { IndexedClause, IndexedModel } from './identity-model.ts'
import { impossibleCells } from './impossible-cells.ts'

/** What can stand in a conflict: a rule of the sheet, something taken as certain, something seen or said. */
export interface ConflictItem {
  readonly id: string
  readonly kind: 'rule' | 'certain' | 'reading' | 'observation' | 'claim'
  readonly source: string
}

/** Something that stands or falls as a whole, as clauses. */
export interface HardFact {
  readonly item: ConflictItem
  readonly clauses: readonly IndexedClause[]
}

export interface Conflicts {
  /** Sets that cannot all stand and of which nothing can be spared, smallest first. */
  readonly conflicts: readonly (readonly ConflictItem[])[]
  /** Sets whose removal, and nothing less, lets the rest stand, smallest first. */
  readonly repairs: readonly (readonly ConflictItem[])[]
  /** False when there were too many to list all. */
  readonly complete: boolean
}

/** Where listing stops. */
const MOST_CONFLICTS = 40
const MOST_REPAIRS = 400

/** Finds conflicts among rules and hard facts of one car; made once, asked often. */
export class ConflictFinder {
  readonly items: readonly ConflictItem[]
  readonly #consistency: Consistency

  constructor(model: IndexedModel, hard: readonly HardFact[]) {
    const rules = model.clauses.filter(({ item }) => item !== null)
    const sources = new Map(model.source.rules.map(({ id, source }) => [id, source]))
    const named = rules.map(
      ({ item }): ConflictItem => ({ id: item ?? '', kind: 'rule', source: sources.get(item ?? '') ?? '' }),
    )
    this.items = [...named, ...hard.map(({ item }) => item)]
    const clausesOfRules = rules.map(({ literals }) => [{ item: null, literals: inForce(literals, model) }])
    const definitions = model.clauses.filter(({ item }) => item === null)
    this.#consistency = new Consistency(
      model.variables,
      [...clausesOfRules, ...hard.map(({ clauses }) => clauses)],
      [...definitions, ...impossibleCells(model)],
    )
  }

  /** One minimal conflict among some items; null when they can all stand. Items are tried out one by one. */
  one(among: Iterable<number> = this.items.keys()): ItemSet | null {
    let core = this.#consistency.refute(among)
    if (core === null) return null
    for (const item of [...core]) {
      if (!core.has(item)) continue
      const smaller = this.#consistency.refute([...core].filter((other) => other !== item))
      if (smaller !== null) core = smaller
    }
    return [...core].sort((one, other) => one - other)
  }

  /**
   * All minimal conflicts and all minimal repairs. Each minimal set that meets every conflict found so far is taken away:
   * if the rest can stand it is a repair, else the rest holds a conflict not yet found; when all are repairs both lists are
   * complete (duality of conflicts and diagnoses: R. Reiter, Artif. Intell. 32 (1987) 57-95).
   */
  all(): Conflicts {
    const conflicts: ItemSet[] = []
    let hitting: readonly ItemSet[] = [[]]
    const repairs = new Set<string>()
    let complete = true
    for (let left = hitting; left.length > 0; left = hitting.filter((each) => !repairs.has(each.join()))) {
      const [tried] = left
      const taken = new Set(tried)
      const found = this.one([...this.items.keys()].filter((item) => !taken.has(item)))
      if (found === null) repairs.add((tried ?? []).join())
      else {
        conflicts.push(found)
        hitting = meetAlso(hitting, found)
      }
      // A conflict of the background alone cannot be repaired: its set of items is empty and nothing meets it.
      if (conflicts.length >= MOST_CONFLICTS || hitting.length > MOST_REPAIRS) {
        complete = false
        break
      }
    }
    const named = (sets: readonly ItemSet[]) =>
      sets
        .toSorted((one, other) => one.length - other.length)
        .map((set) => set.map((item) => this.items[item] as ConflictItem))
    return { conflicts: named(conflicts), repairs: named(hitting.filter((each) => repairs.has(each.join()))), complete }
  }
}

/** A doubtful rule counts as in force: whether it stands is the very question. */
const inForce = (literals: IndexedClause['literals'], model: IndexedModel) =>
  literals.filter(({ variable }) => model.variables[variable]?.kind !== 'doubt')
