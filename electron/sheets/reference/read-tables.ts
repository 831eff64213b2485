import { CsvError, parse } from 'csv-parse/sync'
import { CellFault } from './cell-text.ts'
import { valueAt } from './plain-data.ts'
import { checkForm, MOST_SHEET_BYTES, type SheetRead } from './read-sheet.ts'
import type { PlaceOf, SheetPath, SheetProblem } from './sheet-problem.ts'
import { type Column, headColumns, type SheetTable, sheetTables } from './sheet-tables.ts'
import { HEAD_TABLE } from './write-tables.ts'

type Entry = Record<string, unknown>

const LONGEST_ROW = 1_000_000

/** Reads the spreadsheet form: CSV by name of the table. Tables left out are empty; formulas stay text. Never throws for what the bytes say. */
export function readSheetTables(tables: ReadonlyMap<string, Uint8Array>): SheetRead {
  return new TableReader().read(tables)
}

class TableReader {
  readonly #problems: SheetProblem[] = []
  readonly #places = new Map<string, { readonly line: number; readonly within: string }>()

  read(tables: ReadonlyMap<string, Uint8Array>): SheetRead {
    const placeOf: PlaceOf = (path) => {
      for (let length = path.length; length >= 0; length--) {
        const place = this.#places.get(JSON.stringify(path.slice(0, length)))
        if (place !== undefined) return place
      }
      return null
    }
    const bytes = [...tables.values()].reduce((sum, each) => sum + each.byteLength, 0)
    if (bytes > MOST_SHEET_BYTES) {
      const what = `The tables are ${Math.ceil(bytes / 1e6)} MB long; a sheet has ${MOST_SHEET_BYTES / 1024 / 1024} MiB at most.`
      this.#complain(null, null, [], what, 'Divide it into several sheets that import each other.')
      return { sheet: null, problems: this.#problems, placeOf }
    }
    const known = [HEAD_TABLE, ...sheetTables.map(({ name }) => name)]
    for (const name of tables.keys())
      if (!known.includes(name))
        this.#complain(name, null, [], 'There is no table of this name.', `The tables are ${known.join(', ')}.`)
    const raw: Entry = {}
    const [head] = this.#rows(
      HEAD_TABLE,
      headColumns.map(({ heading }) => heading),
      tables.get(HEAD_TABLE),
    )
    if (head === undefined)
      this.#complain(
        HEAD_TABLE,
        null,
        [],
        'It is missing or has no row.',
        'Say form, sheetId, title and edition there.',
      )
    else {
      this.#places.set('[]', { line: head.line, within: HEAD_TABLE })
      this.#fill(raw, HEAD_TABLE, headColumns, head, [])
    }
    for (const table of sheetTables) this.#table(raw, table, tables.get(table.name))
    if (this.#problems.length > 0) return { sheet: null, problems: this.#problems, placeOf }
    return checkForm(raw, placeOf)
  }

  #complain(within: string | null, line: number | null, path: SheetPath, what: string, cure: string): void {
    this.#problems.push({ severity: 'error', path, line, within, what, cure })
  }

  #table(raw: Entry, table: SheetTable, bytes: Uint8Array | undefined): void {
    const { name, list, within, columns } = table
    const headings = [...(within === null ? [] : [within.heading]), ...columns.map(({ heading }) => heading)]
    const entries = within === null ? [] : (raw[list] as Entry[])
    if (within === null) raw[list] = entries
    const ownerAt = new Map(entries.map(({ id }, at) => [id, at]))
    for (const row of this.#rows(name, headings, bytes)) {
      const entry: Entry = {}
      let path: SheetPath = [list, entries.length]
      if (within !== null) {
        const owner = row.cells.get(within.heading) ?? ''
        const at = ownerAt.get(owner)
        const rows = at === undefined ? undefined : valueAt(entries[at], within.at)
        if (at === undefined || !Array.isArray(rows)) {
          const cure =
            at === undefined
              ? 'Correct the name, or add it there.'
              : 'Leave “shows the variable” empty there, or take this row out.'
          this.#complain(name, row.line, [], `No entry of ${list} called “${owner}” takes such rows.`, cure)
          continue
        }
        path = [list, at, ...within.at, rows.length]
        rows.push(entry)
      } else entries.push(entry)
      this.#places.set(JSON.stringify(path), { line: row.line, within: name })
      this.#fill(
        entry,
        name,
        columnsOf(table, row, (heading, what) => this.#complain(name, row.line, [heading], what, 'Empty the cell.')),
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
        this.#complain(name, line, [...path, ...at], error.what, error.cure)
      }
    }
  }

  /** Rows of a table by heading; rows without any content are passed over. */
  #rows(name: string, headings: readonly string[], bytes: Uint8Array | undefined): readonly Row[] {
    if (bytes === undefined) return []
    let records: readonly { record: string[]; raw: string }[]
    try {
      const written = new TextDecoder('utf-8', { fatal: true }).decode(bytes)
      records = parse(written, {
        delimiter: delimiterOf(written),
        raw: true,
        relax_column_count: true,
        max_record_size: LONGEST_ROW,
        record_delimiter: ['\r\n', '\n', '\r'],
      }) as unknown as typeof records
    } catch (error) {
      const cure =
        error instanceof CsvError ? 'Correct the row, or save the table anew as CSV.' : 'Save it as CSV in UTF-8.'
      const line = error instanceof CsvError && typeof error.lines === 'number' ? error.lines : null
      this.#complain(
        name,
        line,
        [],
        error instanceof CsvError ? `It cannot be read: ${error.message}.` : 'It is not text in UTF-8.',
        cure,
      )
      return []
    }
    const [first, ...rest] = records
    const found = (first?.record ?? []).map((heading) => heading.trim())
    for (const [at, heading] of found.entries())
      if (heading !== '' && (!headings.includes(heading) || found.indexOf(heading) !== at))
        this.#complain(
          name,
          1,
          [],
          `It has no use for the column “${heading}”.`,
          `The columns are ${headings.join(', ')}.`,
        )
    let end = linesOf(first?.raw ?? '')
    return rest.flatMap(({ record, raw }) => {
      const line = end + 1
      end += linesOf(raw)
      if (record.every((cell) => cell === '')) return []
      const beyond = record.findIndex((cell, at) => cell !== '' && (found[at] ?? '') === '')
      if (beyond >= 0)
        this.#complain(
          name,
          line,
          [],
          `The ${beyond + 1}. cell stands under no heading.`,
          'Move it under one, or empty it.',
        )
      return [{ line, cells: new Map(found.map((heading, at) => [heading, record[at] ?? ''])) }]
    })
  }
}

/** Lines a record takes, those within its cells counted. */
const linesOf = (raw: string): number => Math.max(1, raw.match(/\r\n|\n|\r/g)?.length ?? 0)

interface Row {
  readonly line: number
  readonly cells: ReadonlyMap<string, string>
}

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

/** The mark between cells: whichever stands most often in the headings; spreadsheets of many countries write semicolons. */
function delimiterOf(written: string): string {
  const [headings = ''] = written.split(/[\r\n]/, 1)
  const times = (mark: string) => headings.split(mark).length
  return [',', ';', '\t'].reduce((best, mark) => (times(mark) > times(best) ? mark : best))
}
