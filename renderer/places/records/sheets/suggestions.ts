import type { ColumnForm, TableForm, TablesDraft } from '../../../../shared-types/sheet-desk.ts'
import { rowsIn } from './table-edits.ts'

const CONDITIONS: ReadonlySet<string> = new Set(['when', 'needs', 'on'])
const MOST = 12

function contentOf(draft: TablesDraft, forms: readonly TableForm[], table: string, heading: string): readonly string[] {
  const at = forms.find(({ name }) => name === table)?.columns.findIndex((column) => column.heading === heading) ?? -1
  return at < 0 ? [] : rowsIn(draft, table).flatMap((row) => ((row[at] ?? '') === '' ? [] : [row[at] ?? '']))
}

/** Values and groups of a variable, by their short names. */
function valuesOf(draft: TablesDraft, forms: readonly TableForm[], variable: string): readonly string[] {
  return ['groups', 'values'].flatMap((table) => {
    const owners = contentOf(draft, forms, table, 'variable')
    const ids = contentOf(draft, forms, table, 'id')
    return ids.filter((_, at) => owners[at] === variable)
  })
}

/** What a cell could hold, given what stands in it: whole contents to put in its place. */
export function suggestionsFor(
  draft: TablesDraft,
  forms: readonly TableForm[],
  column: ColumnForm,
  written: string,
): readonly string[] {
  if (CONDITIONS.has(column.heading)) return conditions(draft, forms, written)
  const known =
    column.namesFrom === null
      ? column.choices
      : contentOf(draft, forms, column.namesFrom.table, column.namesFrom.column)
  const fitting = known.filter((each) => each !== written && each.startsWith(written))
  return [...new Set(fitting.length > 0 || known.includes(written) ? fitting : known)].slice(0, MOST)
}

/** Of a condition, what its last name could be: a variable, or a value of the variable before it. */
function conditions(draft: TablesDraft, forms: readonly TableForm[], written: string): readonly string[] {
  const begun = written.lastIndexOf(';') + 1
  const before = written.slice(0, begun)
  const piece = written.slice(begun).trimStart()
  const lead = begun > 0 ? `${before} ` : ''
  const colon = piece.indexOf(':')
  if (colon < 0)
    return contentOf(draft, forms, 'variables', 'id')
      .filter((id) => id.startsWith(piece))
      .map((id) => `${lead}${id}: `)
      .slice(0, MOST)
  const words = piece
    .slice(colon + 1)
    .trimStart()
    .split(/\s+/)
  const last = words.at(-1) ?? ''
  const settled = words.slice(0, -1)
  return valuesOf(draft, forms, piece.slice(0, colon).trim())
    .filter((id) => id.startsWith(last) && id !== last && !settled.includes(id))
    .map((id) => `${lead}${piece.slice(0, colon)}: ${[...settled, id].join(' ')}`)
    .slice(0, MOST)
}
