import { CsvError, parse } from 'csv-parse/sync'

/** A row of a table: where it stands, and its cells by heading. */
export interface Row {
  /** Line of the file, or row of the table, from 1. */
  readonly line: number
  readonly cells: ReadonlyMap<string, string>
}

/** Takes note of what keeps a table from being read; the line is null where it is the table as a whole. */
export type ComplainOfTable = (line: number | null, what: string, cure: string) => void

const LONGEST_ROW = 1_000_000

/** Rows of one table of a spreadsheet, CSV as RFC 4180 or as spreadsheets of many countries write it. Rows without any content are passed over. */
export function rowsOfCsv(bytes: Uint8Array, headings: readonly string[], complain: ComplainOfTable): readonly Row[] {
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
    if (error instanceof CsvError) {
      const line = typeof error.lines === 'number' ? error.lines : null
      complain(line, `It cannot be read: ${error.message}.`, 'Correct the row, or save the table anew as CSV.')
    } else complain(null, 'It is not text in UTF-8.', 'Save it as CSV in UTF-8.')
    return []
  }
  let end = 0
  return rowsUnderHeadings(
    records.map(({ record, raw }) => {
      const line = end + 1
      end += linesOf(raw)
      return { line, cells: record }
    }),
    headings,
    complain,
  )
}

/** A line whose first cell begins so is an example or a remark, and no row. */
export const REMARK = '#'

/** Rows of cells under the headings of the first; rows without any content and remarks are passed over. */
export function rowsUnderHeadings(
  lines: readonly { readonly line: number; readonly cells: readonly string[] }[],
  headings: readonly string[],
  complain: ComplainOfTable,
): readonly Row[] {
  const [first, ...rest] = lines
  const found = (first?.cells ?? []).map((heading) => heading.trim())
  for (const [at, heading] of found.entries())
    if (heading !== '' && (!headings.includes(heading) || found.indexOf(heading) !== at))
      complain(
        first?.line ?? 1,
        `It has no use for the column “${heading}”.`,
        `The columns are ${headings.join(', ')}.`,
      )
  return rest.flatMap(({ line, cells }) => {
    if (cells.every((cell) => cell === '') || cells[0]?.trimStart().startsWith(REMARK) === true) return []
    const beyond = cells.findIndex((cell, at) => cell !== '' && (found[at] ?? '') === '')
    if (beyond >= 0)
      complain(line, `The ${beyond + 1}. cell stands under no heading.`, 'Move it under one, or empty it.')
    return [{ line, cells: new Map(found.map((heading, at) => [heading, cells[at] ?? ''])) }]
  })
}

/** Lines a record takes, those within its cells counted. */
const linesOf = (raw: string): number => Math.max(1, raw.match(/\r\n|\n|\r/g)?.length ?? 0)

/** The mark between cells: whichever stands most often in the headings; spreadsheets of many countries write semicolons. */
function delimiterOf(written: string): string {
  const [headings = ''] = written.split(/[\r\n]/, 1)
  const times = (mark: string) => headings.split(mark).length
  return [',', ';', '\t'].reduce((best, mark) => (times(mark) > times(best) ? mark : best))
}
