import { type IdentityModel, identityModel } from '../../../shared-types/identity-model.ts'
import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import { compileCounts } from './compile-counts.ts'
import { compileFittings } from './compile-fittings.ts'
import { type CompiledNumber, compileNumbers } from './compile-numbers.ts'
import { compileRules, tieDates } from './compile-rules.ts'
import { type CompiledTell, compileTells } from './compile-tells.ts'
import { type FactCite, ModelDraft } from './model-draft.ts'
import { type KnownVariable, SheetNames } from './sheet-names.ts'
import type { SheetProblem } from './sheet-problem.ts'
import { compileDonors } from './tell-readings.ts'

/** Sheets as the identity engine reads them, and what every piece of the model rests on. */
export interface CompiledSheets {
  /** Null when the sheets do not fit together; `problems` says why. */
  readonly model: IdentityModel | null
  readonly problems: readonly SheetProblem[]
  /** By id of a rule, table, count, donor, tell or doubt of the model: the facts it was made from. */
  readonly cites: ReadonlyMap<string, readonly FactCite[]>
  readonly tells: readonly CompiledTell[]
  readonly numbers: readonly CompiledNumber[]
  /** Names of the sheets compiled together. */
  readonly names: SheetNames
  /** Variables of the sheets; the model has more, which follow from them (`tell ...`, `number ...`, `... as counted in ...`). */
  readonly variables: readonly KnownVariable[]
  /** Name of a variable of the sheets as printed, with its sheet's title where several have that name. */
  readonly nameOf: (variable: string) => string
}

/**
 * Turns sheets used for one car into the engine's model. A variable is `sheet/variable` there, a tell `sheet/tell`, a rule
 * `sheet/rule` (with `#1`, `#2`... where one fact makes several clauses), values keep their names.
 * @param sheets as `mergeSheets` orders them: imported ones before those that import them.
 */
export function compileSheets(sheets: readonly ReferenceSheet[]): CompiledSheets {
  const names = new SheetNames(sheets)
  const draft = new ModelDraft(names)
  tieDates(draft)
  for (const sheet of sheets) compileRules(draft, sheet)
  compileFittings(draft)
  const tells = sheets.flatMap((sheet) => compileTells(draft, sheet))
  for (const sheet of sheets) compileDonors(draft, sheet)
  const numbers = sheets.flatMap((sheet) => compileNumbers(draft, sheet))
  const accounts = compileCounts(draft)
  const variables = [...names.variables.values()]
  const shared = { cites: draft.cites, tells, numbers, names, variables, nameOf: namesAsPrinted(variables) }
  const { rules, doubts, tables, donors } = draft
  const problem = (what: string, cure: string): SheetProblem => ({
    severity: 'error',
    path: [],
    line: null,
    within: null,
    what,
    cure,
  })
  if (variables.length === 0) {
    const nothing = problem('No sheet says what could be built.', 'Add a variable with its values.')
    return { ...shared, model: null, problems: [...draft.problems, nothing] }
  }
  if (draft.problems.some(({ severity }) => severity === 'error'))
    return { ...shared, model: null, problems: draft.problems }
  const checked = identityModel.safeParse({
    variables: draft.variables,
    rules,
    doubts,
    tables,
    accounts,
    donors,
    tells: draft.tells,
  })
  if (checked.success) return { ...shared, model: checked.data, problems: draft.problems }
  const [fault] = checked.error.issues
  const what = `Together the sheets are more than can be reasoned over: ${fault?.message} (${fault?.path.join('.')}).`
  return { ...shared, model: null, problems: [...draft.problems, problem(what, 'Use fewer sheets, or smaller ones.')] }
}

function namesAsPrinted(variables: readonly KnownVariable[]): (key: string) => string {
  const times = new Map<string, number>()
  for (const { definition } of variables) times.set(definition.name, (times.get(definition.name) ?? 0) + 1)
  const printed = new Map(
    variables.map(({ key, sheet, definition }) => [
      key,
      times.get(definition.name) === 1 ? definition.name : `${definition.name} (${sheet.title})`,
    ]),
  )
  return (key) => printed.get(key) ?? key
}
