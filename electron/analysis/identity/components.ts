import type { OpenClasses } from './open-classes.ts'
import { FALSE, TRUE } from './open-classes.ts'
import type { TableStates } from './table-states.ts'

/** Variables, clauses and tables that hang together once everything else is decided. */
export interface Component {
  readonly variables: number[]
  readonly clauses: number[]
  readonly tables: number[]
}

/** Finds what hangs together by clauses that do not hold yet and by tables that are not settled. */
export class ComponentFinder {
  readonly #state: OpenClasses
  readonly #tables: TableStates
  readonly #variableSeen: Int32Array
  readonly #clauseSeen: Int32Array
  readonly #tableSeen: Int32Array
  /** By clause: its open literals when it was last found to hold not yet; see `OpenClasses.openLiterals`. */
  readonly openLiterals: Int32Array
  #stamp = 0

  constructor(state: OpenClasses, tables: TableStates) {
    this.#state = state
    this.#tables = tables
    this.#variableSeen = new Int32Array(state.clauses.clausesOf.length)
    this.#clauseSeen = new Int32Array(state.clauses.items.length)
    this.#tableSeen = new Int32Array(tables.count)
    this.openLiterals = new Int32Array(state.clauses.items.length)
  }

  /** Components among `variables`; a variable alone in its component has neither clauses nor tables. */
  find(variables: readonly number[]): Component[] {
    this.#stamp += 1
    const found: Component[] = []
    for (const variable of variables) {
      if (this.#variableSeen[variable] === this.#stamp) continue
      this.#variableSeen[variable] = this.#stamp
      const component: Component = { variables: [variable], clauses: [], tables: [] }
      for (let at = 0; at < component.variables.length; at++) this.#reach(component.variables[at] as number, component)
      found.push(component)
    }
    return found
  }

  #reach(variable: number, component: Component): void {
    const { clausesOf, literalsOf } = this.#state.clauses
    const clauses = clausesOf[variable] as Int32Array
    const literals = literalsOf[variable] as Int32Array
    for (let at = 0; at < clauses.length; at++) {
      const clause = clauses[at] as number
      if (this.#clauseSeen[clause] === this.#stamp) continue
      const own = this.#state.literal(literals[at] as number)
      if (own === FALSE) continue
      this.#clauseSeen[clause] = this.#stamp
      if (own === TRUE) continue
      const open = this.#state.openLiterals(clause)
      if (open < 0) continue
      this.openLiterals[clause] = open
      component.clauses.push(clause)
      this.#join(clause, open, component)
    }
    for (const [table, position] of this.#tables.of[variable] ?? []) {
      if (this.#tableSeen[table] === this.#stamp || !this.#tables.spans(table, position)) continue
      this.#tableSeen[table] = this.#stamp
      if (this.#tables.settled(table) >= 0) continue
      component.tables.push(table)
      this.#tables.scope(table).forEach((other, place) => {
        if (this.#tables.spans(table, place)) this.#visit(other, component)
      })
    }
  }

  #join(clause: number, open: number, component: Component): void {
    const { start, variable } = this.#state.clauses
    const from = start[clause] as number
    const end = start[clause + 1] as number
    for (let literal = from; literal < end; literal++) {
      const place = literal - from
      if (place < 30 ? ((open >>> place) & 1) === 1 : this.#state.literal(literal) !== FALSE)
        this.#visit(variable[literal] as number, component)
    }
  }

  #visit(variable: number, component: Component): void {
    if (this.#variableSeen[variable] === this.#stamp) return
    this.#variableSeen[variable] = this.#stamp
    component.variables.push(variable)
  }
}
