import type { OpenClasses } from './open-classes.ts'
import type { SlicedTable } from './value-classes.ts'

/** Larger tables are settled only when every variable lies in one slice; smaller ones once all open cells agree. */
const SMALL = 256

/** What is still open of each table over several variables. */
export class TableStates {
  readonly #state: OpenClasses
  readonly #tables: readonly SlicedTable[]
  /** Per variable: the tables it stands in and its position in each. */
  readonly of: readonly (readonly (readonly [table: number, position: number])[])[]

  constructor(state: OpenClasses, tables: readonly SlicedTable[]) {
    this.#state = state
    this.#tables = tables
    this.of = state.clauses.clausesOf.map((_, variable) =>
      tables.flatMap(({ scope }, table) =>
        scope.flatMap((each, position) => (each === variable ? [[table, position] as const] : [])),
      ),
    )
  }

  get count(): number {
    return this.#tables.length
  }

  scope(table: number): readonly number[] {
    return (this.#tables[table] as SlicedTable).scope
  }

  sliceOf(table: number, position: number): Int32Array {
    return (this.#tables[table] as SlicedTable).sliceOf[position] as Int32Array
  }

  /** Slices of a table still open at one position, ascending. */
  openSlices(table: number, position: number): number[] {
    const variable = this.scope(table)[position] as number
    const of = this.sliceOf(table, position)
    const first = this.#state.clauses.wordAt[variable] as number
    const found: number[] = []
    for (let own = 0; own < of.length; own++) {
      if ((((this.#state.open[first + (own >> 5)] as number) >>> (own & 31)) & 1) === 0) continue
      const slice = of[own] as number
      if (!found.includes(slice)) found.push(slice)
    }
    return found.sort((one, other) => one - other)
  }

  /** Whether more than one slice is open at a position. */
  spans(table: number, position: number): boolean {
    return this.openSlices(table, position).length > 1
  }

  /** The label all open cells have; -1 while they differ. */
  settled(table: number): number {
    const { scope, slices, labels } = this.#tables[table] as SlicedTable
    const open = scope.map((_, position) => this.openSlices(table, position))
    const cells = open.reduce((product, each) => product * each.length, 1)
    if (cells > SMALL) return -1
    let places = [0]
    open.forEach((own, position) => {
      places = places.flatMap((place) => own.map((slice) => place * (slices[position] as number) + slice))
    })
    const label = labels[places[0] as number] as number
    return places.every((place) => labels[place] === label) ? label : -1
  }
}
