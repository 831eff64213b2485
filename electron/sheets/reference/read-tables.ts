import { CellFault, unshielded } from './cell-text.ts'
import { valueAt } from './plain-data.ts'
import { type ComplainOfTable, type Row, rowsOfCsv } from './read-csv.ts'
import { checkForm, MOST_SHEET_BYTES, type SheetRead } from './read-sheet.ts'
import type { PlaceOf, SheetPath, SheetProblem } from './sheet-problem.ts'
import {
  type Column,
  HEAD_TABLE,
  headColumns,
  headingsOf,
  holdsText,
  type SheetTable,
  sheetTables,
} from './sheet-tables.ts'

type Entry = Record<string, unknown>

/** Reads the spreadsheet form: CSV by name of the table. Tables left out are empty; formulas stay text. Never throws for what the bytes say. */
export function readSheetTables(tables: ReadonlyMap<string, Uint8Array>): SheetRead {
  const bytes = [...tables.values()].reduce((sum, each) => sum + each.byteLength, 0)
  const reader = new TableReader()
  if (bytes > MOST_SHEET_BYTES)
    return reader.refuse(tooLong(bytes), 'Divide it into several sheets that import each other.')
  const known = [HEAD_TABLE, ...sheetTables.map(({ name }) => name)]
  for (const name of tables.keys())
    if (!known.includes(name))
      reader.complain(name, null, [], 'There is no table of this name.', `The tables are ${known.join(', ')}.`)
  return reader.read((name) => {
    const own = tables.get(name)
    if (own === undefined) return []
    return rowsOfTable(name, own, (line, what, cure) => reader.complain(name, line, [], what, cure))
  })
}

/** Rows of a named table as a spreadsheet hands it back, apostrophes before what looks like a formula taken off. */
export const rowsOfTable = (name: string, bytes: Uint8Array, complain: ComplainOfTable): readonly Row[] =>
  rowsOfCsv(bytes, headingsOf(name), complain).map(({ line, cells }) => ({
    line,
    cells: new Map([...cells].map(([heading, cell]) => [heading, holdsText(name, heading) ? unshielded(cell) : cell])),
  }))

/** Reads a sheet from rows by name of the table, as they stand in cells. Never throws for what they say. */
export const readSheetRows = (rowsOf: (table: string) => readonly Row[]): SheetRead => new TableReader().read(rowsOf)

/** Says how long something is against what a sheet may have. */
export const tooLong = (bytes: number): string =>
  `The tables are ${Math.ceil(bytes / 1e6)} MB long; a sheet has ${MOST_SHEET_BYTES / 1024 / 1024} MiB at most.`

class TableReader {
  readonly #problems: SheetProblem[] = []
  readonly #places = new Map<string, { readonly line: number; readonly within: string }>()
  readonly #placeOf: PlaceOf = (path) => {
    for (let length = path.length; length >= 0; length--) {
      const place = this.#places.get(JSON.stringify(path.slice(0, length)))
      if (place !== undefined) return place
    }
    return null
  }

  complain(within: string | null, line: number | null, path: SheetPath, what: string, cure: string): void {
    this.#problems.push({ severity: 'error', path, line, within, what, cure })
  }

  refuse(what: string, cure: string): SheetRead {
    this.complain(null, null, [], what, cure)
    return { sheet: null, problems: this.#problems, placeOf: this.#placeOf }
  }

  read(rowsOf: (table: string) => readonly Row[]): SheetRead {
    const raw: Entry = {}
    const [head] = rowsOf(HEAD_TABLE)
    if (head === undefined)
      this.complain(HEAD_TABLE, null, [], 'It is missing or has no row.', 'Say form, sheetId, title and edition there.')
    else {
      this.#places.set('[]', { line: head.line, within: HEAD_TABLE })
      this.#fill(raw, HEAD_TABLE, headColumns, head, [])
    }
    for (const table of sheetTables) this.#table(raw, table, rowsOf(table.name))
    const read = checkForm(raw, this.#placeOf)
    if (this.#problems.length === 0) return read
    // Faults of the form are told with those of the cells, so that one round mends both; a cell is complained of once.
    const told = this.#problems.map(({ path }) => path)
    const others = read.problems.filter(({ path }) => !told.some((other) => oneHoldsTheOther(path, other)))
    return { sheet: null, problems: [...this.#problems, ...others], placeOf: this.#placeOf }
  }

  #table(raw: Entry, table: SheetTable, rows: readonly Row[]): void {
    const { name, list, within } = table
    const entries = within === null ? [] : (raw[list] as Entry[])
    if (within === null) raw[list] = entries
    const ownerAt = new Map(entries.map(({ id }, at) => [id, at]))
    for (const row of rows) {
      const entry: Entry = {}
      let path: SheetPath = [list, entries.length]
      if (within !== null) {
        const owner = row.cells.get(within.heading) ?? ''
        const at = ownerAt.get(owner)
        const owned = at === undefined ? undefined : valueAt(entries[at], within.at)
        if (at === undefined || !Array.isArray(owned)) {
          const cure =
            at === undefined
              ? 'Correct the name, or add it there.'
              : 'Leave “shows the variable” empty there, or take this row out.'
          const what = `No entry of ${list} called “${owner}” takes such rows.`
          this.complain(name, row.line, [within.heading], what, cure)
          continue
        }
        path = [list, at, ...within.at, owned.length]
        owned.push(entry)
      } else entries.push(entry)
      this.#places.set(JSON.stringify(path), { line: row.line, within: name })
      this.#fill(
        entry,
        name,
        columnsOf(table, row, (heading, what) => this.complain(name, row.line, [heading], what, 'Empty the cell.')),
        row,
        path,
      )
      if (within === null) prepareForRows(entry, list)
    }
  }

  #fill(entry: Entry, name: string, columns: readonly Column[], { cells, line }: Row, path: SheetPath): void {
    for (const { heading, at, kind } of columns) {
      const written = cells.get(heading) ?? ''
      try {
        const value = written === '' ? kind.empty : kind.read(written)
        if (value !== undefined) setAt(entry, at, value)
      } catch (error) {
        if (!(error instanceof CellFault)) throw error
        this.complain(name, line, [...path, ...at], error.what, error.cure)
      }
    }
  }
}

/** Whether two places are the same, or one stands within the other. */
const oneHoldsTheOther = (one: SheetPath, other: SheetPath): boolean =>
  one.length > 0 && other.length > 0 && one.slice(0, other.length).every((step, at) => step === other[at])

/** Columns that mean something for the row's kind; content under any other is complained of. */
function columnsOf(table: SheetTable, row: Row, complain: (heading: string, what: string) => void): readonly Column[] {
  if (table.keysByKind === null) return table.columns
  const kind = row.cells.get('kind') ?? ''
  const own = new Map(Object.entries(table.keysByKind)).get(kind)
  const ofSomeKind = new Set(Object.values(table.keysByKind).flat())
  return table.columns.filter(({ heading }) => {
    if (!ofSomeKind.has(heading) || (own ?? []).includes(heading)) return true
    if ((row.cells.get(heading) ?? '') !== '' && own !== undefined)
      complain(heading, `“${kind}” has no use for a ${heading}.`)
    return false
  })
}

/** Lists that rows of other tables will fill; a tell either shows a variable or has values and cases of its own. */
function prepareForRows(entry: Entry, list: string): void {
  if (list === 'tells') {
    const { variable, otherwise } = (entry.follows ?? {}) as Entry
    entry.follows =
      typeof variable === 'string'
        ? { kind: 'as built', variable, ...(otherwise === null ? {} : { otherwise }) }
        : { kind: 'by cases', values: [], cases: [], otherwise }
    return
  }
  for (const table of sheetTables) if (table.list === list && table.within !== null) setAt(entry, table.within.at, [])
}

function setAt(entry: Entry, keys: readonly string[], value: unknown): void {
  const [key, ...rest] = keys
  if (key === undefined) return
  if (rest.length === 0) entry[key] = value
  else {
    const below = (entry[key] ?? {}) as Entry
    entry[key] = below
    setAt(below, rest, value)
  }
}
