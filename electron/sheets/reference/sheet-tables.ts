import type { CellKind } from './cell-text.ts'
import * as cell from './cell-text.ts'
import { markRows, stretches, texts } from './number-cells.ts'

/** One column: its heading, and where in a row's entry its content stands. */
export interface Column {
  readonly heading: string
  readonly at: readonly string[]
  readonly kind: CellKind
}

/** One table of the spreadsheet form: a kind of fact, or what belongs to facts of another table. */
export interface SheetTable {
  readonly name: string
  /** List of the sheet its rows are; for `within` those of one entry of that list. */
  readonly list: string
  /** Where, in an entry of `list`, the rows are; `heading` names the entry by its id. */
  readonly within: { readonly heading: string; readonly at: readonly string[] } | null
  readonly columns: readonly Column[]
  /** Keys an entry of some kind has, beside those every entry has; null when all have all. */
  readonly keysByKind: Readonly<Record<string, readonly string[]>> | null
}

const column = (kind: CellKind, ...headings: readonly string[]): readonly Column[] =>
  headings.map((heading) => ({ heading, at: [heading], kind }))
const under = (heading: string, at: readonly string[], kind: CellKind): Column => ({ heading, at, kind })
const fact = [...column(cell.textOrNone, 'source')]
const note = column(cell.text, 'note')
const days = column(cell.changeDay, 'from', 'until')

const table = (name: string, columns: readonly Column[], keysByKind: SheetTable['keysByKind'] = null): SheetTable => ({
  name,
  list: name,
  within: null,
  columns,
  keysByKind,
})
const part = (
  name: string,
  list: string,
  heading: string,
  at: readonly string[],
  columns: readonly Column[],
  keysByKind: SheetTable['keysByKind'] = null,
): SheetTable => ({ name, list, within: { heading, at }, columns, keysByKind })

/** Name of the table with the sheet's own lines. */
export const HEAD_TABLE = 'sheet'

/** The sheet's own lines: one row. */
export const headColumns: readonly Column[] = [
  ...column(cell.number, 'form'),
  ...column(cell.text, 'sheetId', 'title', 'edition', 'about'),
  ...column(cell.textOrNone, 'datesAgainst'),
]

/** All tables beside the first, facts before what belongs to them. */
export const sheetTables: readonly SheetTable[] = [
  table('imports', column(cell.text, 'sheetId', 'edition')),
  table('sources', [
    ...column(cell.text, 'id', 'who', 'where', 'page'),
    ...column(cell.number, 'surePercent'),
    ...column(cell.text, 'learned'),
    ...note,
  ]),
  table('variables', [...column(cell.text, 'id', 'name', 'kind'), ...column(cell.textOrNone, 'basis'), ...note]),
  part(
    'values',
    'variables',
    'variable',
    ['values'],
    [...column(cell.text, 'id', 'name'), ...column(cell.textOrNone, 'from', 'to'), ...column(cell.json, 'sketch')],
  ),
  part(
    'groups',
    'variables',
    'variable',
    ['groups'],
    [...column(cell.text, 'id', 'name'), ...column(cell.names, 'values')],
  ),
  table(
    'rules',
    [
      ...column(cell.text, 'id', 'kind'),
      ...fact,
      ...column(cell.number, 'surePercent'),
      ...column(cell.condition, 'when', 'needs'),
      ...column(cell.text, 'variable', 'value'),
      ...column(cell.condition, 'on'),
      ...days,
      ...column(cell.changeDay, 'day'),
      ...column(cell.numberOrNone, 'share'),
      ...column(cell.price, 'price'),
      ...note,
    ],
    {
      'not built together': ['when', 'from', 'until'],
      requires: ['when', 'needs', 'from', 'until'],
      'only from': ['when', 'day'],
      'only until': ['when', 'day'],
      standard: ['variable', 'value', 'on', 'from', 'until'],
      option: ['variable', 'value', 'on', 'from', 'until', 'share', 'price'],
    },
  ),
  table('tells', [
    ...column(cell.text, 'id', 'name'),
    ...fact,
    ...column(cell.textOrEmpty, 'lookAt'),
    under('panels', ['where', 'panels'], cell.names),
    under('parts', ['where', 'parts'], cell.names),
    under('place', ['where', 'words'], cell.text),
    ...column(cell.text, 'how'),
    ...column(cell.number, 'effort'),
    ...column(cell.text, 'access'),
    ...column(cell.textOrNone, 'unit'),
    under('shows the variable', ['follows', 'variable'], cell.textOrNone),
    under('otherwise', ['follows', 'otherwise'], cell.shown),
    ...column(cell.misreading, 'misread'),
    ...column(cell.replacement, 'replaced'),
    ...column(cell.number, 'wrong'),
    ...column(cell.textOrNone, 'travelsWith'),
    ...column(cell.text, 'caution'),
    ...column(cell.json, 'sketch'),
    ...note,
  ]),
  part(
    'tell-values',
    'tells',
    'tell',
    ['follows', 'values'],
    [...column(cell.text, 'id', 'name', 'looks'), ...column(cell.measure, 'measure'), ...column(cell.json, 'sketch')],
  ),
  part(
    'tell-cases',
    'tells',
    'tell',
    ['follows', 'cases'],
    [...column(cell.condition, 'when'), ...days, ...column(cell.shown, 'shows'), ...fact],
  ),
  table('donors', [...column(cell.text, 'id', 'name'), ...fact, ...note]),
  part(
    'donor-kinds',
    'donors',
    'donor',
    ['kinds'],
    [...column(cell.text, 'id', 'name'), ...column(cell.number, 'share'), ...column(cell.shareRows, 'brings')],
  ),
  table('counts', [
    ...column(cell.text, 'id', 'name'),
    ...fact,
    ...column(cell.textOrNone, 'account'),
    ...column(cell.numberOrNone, 'others'),
    ...note,
  ]),
  part(
    'count-cells',
    'counts',
    'count',
    ['cells'],
    [...column(cell.condition, 'when'), ...column(cell.number, 'built')],
  ),
  table('interchange', [...column(cell.text, 'id', 'part', 'name'), ...fact, ...column(cell.condition, 'on'), ...note]),
  part(
    'carriers',
    'interchange',
    'interchange',
    ['carriers'],
    [
      ...column(cell.text, 'line'),
      ...column(cell.textOrNone, 'from', 'until'),
      ...column(cell.text, 'altered', 'toldBy'),
    ],
  ),
  table('numbers', [
    ...column(cell.text, 'id', 'name', 'where'),
    ...fact,
    ...column(cell.textOrNone, 'part'),
    ...column(cell.yesOrNo, 'passOverSeparators'),
    ...column(cell.number, 'misread', 'replaced'),
    ...note,
  ]),
  part(
    'number-places',
    'numbers',
    'number',
    ['places'],
    [
      ...column(cell.text, 'kind', 'name'),
      ...column(texts, 'texts'),
      ...column(cell.yesOrNo, 'optional'),
      ...column(markRows, 'rows'),
      ...column(cell.number, 'minDigits', 'maxDigits'),
      ...column(stretches, 'stretches'),
      ...column(cell.textOrNone, 'readBy'),
    ],
    {
      fixed: ['texts', 'optional'],
      marks: ['name', 'rows', 'readBy'],
      sequence: ['name', 'minDigits', 'maxDigits', 'stretches', 'readBy'],
    },
  ),
  table('dateCodes', [
    ...column(cell.text, 'id', 'part'),
    ...fact,
    ...column(cell.daysBefore, 'leadDays'),
    ...column(cell.json, 'grammar'),
    ...note,
  ]),
]

const withText = new Map<string, ReadonlySet<string>>(
  [{ name: HEAD_TABLE, within: null, columns: headColumns }, ...sheetTables].map(({ name, within, columns }) => [
    name,
    new Set([
      ...(within === null ? [] : [within.heading]),
      ...columns.filter(({ kind }) => kind.anyText === true).map(({ heading }) => heading),
    ]),
  ]),
)

/** Whether any text may stand in cells of the column, so that a spreadsheet could take one for a formula. */
export const holdsText = (table: string, heading: string): boolean => withText.get(table)?.has(heading) ?? false

const headings = new Map<string, readonly string[]>([
  [HEAD_TABLE, headColumns.map(({ heading }) => heading)],
  ...sheetTables.map(
    ({ name, within, columns }) =>
      [name, [...(within === null ? [] : [within.heading]), ...columns.map(({ heading }) => heading)]] as const,
  ),
])

/** Headings of a table in their order, the one that names the entry a row belongs to first; empty when there is no such table. */
export const headingsOf = (table: string): readonly string[] => headings.get(table) ?? []
