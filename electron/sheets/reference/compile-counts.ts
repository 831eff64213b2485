import type { IdentityModel } from '../../../shared-types/identity-model.ts'
import type { SheetCount } from '../../../shared-types/reference-fact.ts'
import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import { decisionPaths } from './decision-paths.ts'
import { type ModelDraft, sourceText, weighedCondition } from './model-draft.ts'
import type { Complain, KnownVariable, Literal } from './sheet-names.ts'

type Account = IdentityModel['accounts'][number]
type AccountTable = Account['tables'][number]

/** Weight, out of 100, of a count that names no source. */
const UNSOURCED = 50
/** As many variables, and cells, as one table of the engine takes. */
const MOST_SCOPE = 6
const MOST_CELLS = 200_000
const OTHERS = 'others'
const LONGEST_NAME = 160

/** Counts of all sheets as accounts: those of one account are met together, accounts are weighed by their least sure source. */
export function compileCounts(draft: ModelDraft): Account[] {
  const accounts = new Map<string, { reliability: number; tables: AccountTable[] }>()
  const groupings = new Map<string, string>()
  for (const sheet of draft.names.sheets)
    sheet.counts.forEach((count, at) => {
      const table = tableOf(draft, sheet, count, groupings, draft.complaining(sheet, ['counts', at]))
      if (table === null) return
      const cite = draft.cite(sheet, count)
      draft.cites.set(table.id, [cite])
      const key = `${sheet.sheetId}/${count.account ?? count.source ?? count.id}`
      const sure = (cite.source?.surePercent ?? UNSOURCED) / 100
      const account = accounts.get(key) ?? { reliability: sure, tables: [] }
      account.reliability = Math.min(account.reliability, sure)
      account.tables.push({ ...table, source: sourceText(cite.source) })
      accounts.set(key, account)
    })
  return [...accounts].map(([id, account]) => ({ id, ...account }))
}

/** One cell: by variable the values it holds; variables it does not name are not in it. */
interface Cell {
  readonly literals: readonly Literal[]
  readonly built: number
}

function tableOf(
  draft: ModelDraft,
  sheet: ReferenceSheet,
  count: SheetCount,
  groupings: Map<string, string>,
  complain: Complain,
): Omit<AccountTable, 'source'> | null {
  const cells: Cell[] = []
  for (const [at, { when, built }] of count.cells.entries()) {
    const literals = draft.names.literals(sheet, when, ['cells', at, 'when'], complain)
    if (literals === null) return null
    if (built >= 0) cells.push({ literals, built })
    else complain(['cells', at, 'built'], 'It is less than nothing.', 'Correct the sign.')
  }
  if (cells.length < count.cells.length) return null
  if ((count.others ?? 0) < 0) {
    complain(['others'], 'It is less than nothing.', 'Correct the sign.')
    return null
  }
  if (!(cells.reduce((sum, { built }) => sum + built, count.others ?? 0) > 0)) {
    complain(['cells'], 'All its numbers are 0.', 'Leave the count out, or enter the numbers.')
    return null
  }
  const id = `${sheet.sheetId}/${count.id}`
  const named = [...new Set(cells.flatMap(({ literals }) => literals.map(([key]) => key)))]
  const variables = named.flatMap((key) => draft.names.variables.get(key) ?? [])
  if (variables.length === 0) {
    complain(
      ['cells'],
      'It counts all cars together, which says nothing about one.',
      'Name the values each number is of.',
    )
    return null
  }
  const groups = variables.map((variable) => groupsOf(variable, cells))
  const combinations = groups.reduce((product, own) => product * (own?.length ?? 1), 1)
  if (groups.every((own) => own !== null) && combinations <= MOST_CELLS && groups.length <= MOST_SCOPE) {
    const counts = gridOf(variables, groups as readonly (readonly Group[])[], cells, count.others, complain)
    if (counts === null) return null
    if (counts !== 'others')
      return {
        id,
        scope: variables.map((variable, at) =>
          groupVariable(draft, sheet, count, variable, groups[at] ?? [], groupings),
        ),
        counts,
      }
  }
  return cellVariable(draft, sheet, count, id, cells, complain)
}

interface Group {
  readonly name: string
  readonly values: readonly string[]
}

/** Sets of values of one variable that the cells name, with what none names; null when two of them overlap. */
function groupsOf(variable: KnownVariable, cells: readonly Cell[]): readonly Group[] | null {
  const sets = new Map<string, readonly string[]>()
  for (const { literals } of cells) {
    const values = literals.find(([key]) => key === variable.key)?.[1] ?? variable.values
    sets.set(values.join(), values)
  }
  const taken = new Set<string>()
  for (const values of sets.values())
    for (const value of values) {
      if (taken.has(value)) return null
      taken.add(value)
    }
  const rest = variable.values.filter((value) => !taken.has(value))
  const position = (values: readonly string[]) => variable.values.indexOf(values[0] ?? '')
  return [...sets.values(), ...(rest.length === 0 ? [] : [rest])]
    .sort((one, other) => position(one) - position(other))
    .map((values, at) => ({ name: nameOf(variable, values, rest, at), values }))
}

function nameOf({ sets }: KnownVariable, values: readonly string[], rest: readonly string[], at: number): string {
  const key = values.toSorted().join()
  for (const [name, members] of sets) if ([...members].sort().join() === key) return name
  const joined = values.join(' or ')
  return values === rest ? OTHERS : joined.length <= LONGEST_NAME ? joined : `group ${at + 1}`
}

/** Numbers of all combinations of groups; `others` when what no cell names has a number of its own. */
function gridOf(
  variables: readonly KnownVariable[],
  groups: readonly (readonly Group[])[],
  cells: readonly Cell[],
  others: number | null,
  complain: Complain,
): readonly number[] | 'others' | null {
  const size = groups.reduce((product, own) => product * own.length, 1)
  const counts = new Array<number | null>(size).fill(null)
  for (const [at, { literals, built }] of cells.entries()) {
    const position = groups.reduce((sum, own, place) => {
      const variable = variables[place]
      const values = literals.find(([key]) => key === variable?.key)?.[1] ?? variable?.values ?? []
      return sum * own.length + own.findIndex((group) => group.values[0] === values[0])
    }, 0)
    if (counts[position] !== null) {
      complain(
        ['cells', at],
        'A cell before it counts the same cars.',
        'Take one out, or make a count of its own of it.',
      )
      return null
    }
    counts[position] = built
  }
  if (counts.every((each) => each !== null)) return counts
  if (others === null) {
    const missing = counts.filter((each) => each === null).length
    complain(
      ['others'],
      `${missing} combinations have no number.`,
      'Write others: 0 if none of them were built, or how many.',
    )
    return null
  }
  return others > 0 ? 'others' : counts.map((each) => each ?? 0)
}

/** The variable itself when every group is one value; else one that says which group its value is in, shared by all counts. */
function groupVariable(
  draft: ModelDraft,
  sheet: ReferenceSheet,
  count: SheetCount,
  variable: KnownVariable,
  groups: readonly Group[],
  known: Map<string, string>,
): string {
  if (groups.length === variable.values.length) return variable.key
  const partition = `${variable.key}: ${groups.map(({ values }) => values.join()).join(' | ')}`
  const before = known.get(partition)
  if (before !== undefined) return before
  const name = `${variable.key} as counted in ${sheet.sheetId}/${count.id}`
  known.set(partition, name)
  draft.variables.push({ name, values: groups.map((group) => group.name) })
  const clauses = groups.map((group) => ({
    ifs: [[variable.key, group.values] satisfies Literal],
    thenAny: [[name, [group.name]] satisfies Literal],
  }))
  draft.addRules(name, clauses, [draft.cite(sheet, count)])
  return name
}

/** Cells of any shape as values of one variable that follows from the build. */
function cellVariable(
  draft: ModelDraft,
  sheet: ReferenceSheet,
  count: SheetCount,
  id: string,
  cells: readonly Cell[],
  complain: Complain,
): Omit<AccountTable, 'source'> | null {
  const none = { from: null, until: null }
  const paths = decisionPaths(
    cells.map(({ literals }) => weighedCondition(draft, literals, undefined, none)),
    (met) => met.flatMap((share, cell) => (share > 0 ? [cell] : [])).join(),
  )
  if (paths === null) {
    complain(
      ['cells'],
      'Too many combinations hang together here.',
      'Make several counts of it, over fewer variables each.',
    )
    return null
  }
  const overlapping = paths.find(({ cell }) => cell.includes(','))
  if (overlapping !== undefined) {
    const [, second] = overlapping.cell.split(',')
    complain(
      ['cells', Number(second)],
      'A cell before it counts some of the same cars.',
      'Make a count of its own of it, with the same source.',
    )
    return null
  }
  const rest = paths.some(({ cell }) => cell === '')
  if (rest && count.others === null) {
    complain(
      ['others'],
      'Some combinations have no number.',
      'Write others: 0 if none of them were built, or how many.',
    )
    return null
  }
  const name = `cell of ${id}`
  const nameOfCell = (cell: string) => (cell === '' ? OTHERS : `cell ${Number(cell) + 1}`)
  draft.variables.push({ name, values: [...cells.map((_, at) => nameOfCell(String(at))), ...(rest ? [OTHERS] : [])] })
  const clauses = paths.map(({ ifs, cell }) => ({ ifs, thenAny: [[name, [nameOfCell(cell)]] satisfies Literal] }))
  draft.addRules(name, clauses, [draft.cite(sheet, count)])
  return { id, scope: [name], counts: [...cells.map(({ built }) => built), ...(rest ? [count.others ?? 0] : [])] }
}
