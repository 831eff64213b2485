import type { Component, ComponentFinder } from './components.ts'
import type { OpenClasses } from './open-classes.ts'
import type { TableStates } from './table-states.ts'

/** Clauses up to this many literals are told apart by their open literals alone, in a table; longer ones by text. */
const SHORT = 6

/**
 * A text that two components share only when exactly the same remains to be compiled: variables, their open classes,
 * what is left of every clause and table.
 */
export class ComponentKeys {
  readonly #state: OpenClasses
  readonly #tables: TableStates
  readonly #finder: ComponentFinder
  /** By clause and open literals: a number, the same for equal remains; -1 when not met yet. */
  readonly #remains: Int32Array
  readonly #numbers = new Map<string, number>()

  constructor(state: OpenClasses, tables: TableStates, finder: ComponentFinder) {
    this.#state = state
    this.#tables = tables
    this.#finder = finder
    this.#remains = new Int32Array(state.clauses.items.length << SHORT).fill(-1)
  }

  /** To be asked right after the component was found, before anything more is decided. */
  keyOf(component: Component): string {
    const codes: number[] = []
    const { wordAt } = this.#state.clauses
    for (const variable of component.variables) {
      codes.push(variable)
      for (let word = wordAt[variable] as number; word < (wordAt[variable + 1] as number); word++) {
        const open = this.#state.open[word] as number
        codes.push(open & 0xffff, open >>> 16)
      }
    }
    const remains = new Int32Array(component.clauses.length)
    component.clauses.forEach((clause, at) => {
      remains[at] = this.#remainOf(clause)
    })
    remains.sort()
    codes.push(0xffff)
    for (let at = 0; at < remains.length; at++) {
      const remain = remains[at] as number
      if (remain !== remains[at - 1]) codes.push(remain & 0xffff, remain >>> 16)
    }
    codes.push(0xffff)
    for (const table of component.tables) {
      codes.push(table)
      this.#tables.scope(table).forEach((_, position) => {
        const slices = this.#tables.openSlices(table, position)
        codes.push(slices.length === 1 ? (slices[0] as number) : 0xffff)
      })
    }
    let key = ''
    for (let from = 0; from < codes.length; from += 4096)
      key += String.fromCharCode.apply(null, codes.slice(from, from + 4096))
    return key
  }

  #remainOf(clause: number): number {
    const { start } = this.#state.clauses
    const count = (start[clause + 1] as number) - (start[clause] as number)
    if (count > SHORT) return this.#numberOf(clause, count)
    const place = (clause << SHORT) | (this.#finder.openLiterals[clause] as number)
    const known = this.#remains[place] as number
    if (known >= 0) return known
    const number = this.#numberOf(clause, count)
    this.#remains[place] = number
    return number
  }

  /** Number of the text of the open literals. */
  #numberOf(clause: number, count: number): number {
    const { start, variable, wordAt, maskAt, masks } = this.#state.clauses
    const from = start[clause] as number
    const parts: string[] = []
    for (let literal = from; literal < from + count; literal++) {
      if (this.#state.literal(literal) === 0) continue
      const own = variable[literal] as number
      const words = (wordAt[own + 1] as number) - (wordAt[own] as number)
      const at = maskAt[literal] as number
      parts.push(`${own}:${masks.subarray(at, at + words).join()}`)
    }
    const text = parts.sort().join(' ')
    const number = this.#numbers.get(text) ?? this.#numbers.size
    this.#numbers.set(text, number)
    return number
  }
}
