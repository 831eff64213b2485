import type { IdentityModel } from '../../../shared-types/identity-model.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import { compileModel } from '../../analysis/identity/compile-circuit.ts'
import { ConflictFinder } from '../../analysis/identity/conflicts.ts'
import { indexModel } from '../../analysis/identity/index-model.ts'
import { accountPriors } from '../../analysis/identity/prior.ts'
import { evenWeighing, Passes } from '../../analysis/identity/weighing.ts'
import { checkCounts } from './check-counts.ts'
import { checkRules } from './check-rules.ts'
import type { CompiledSheets } from './compile-sheets.ts'
import { RulesAlone } from './rules-alone.ts'
import { noPlaces, problemAt, type SheetPath, type SheetProblem } from './sheet-problem.ts'

const problem = problemAt(noPlaces)

/** What follows exactly from all facts together: nothing can be built, values that never occur, rules that never bite, counts that cannot be. */
export function checkWithEngine(sheet: ReferenceSheet, compiled: CompiledSheets): readonly SheetProblem[] {
  const { model } = compiled
  if (model === null) return []
  const alone = new RulesAlone(model, compiled.cites)
  const conflict = alone.conflictOf([])
  if (conflict !== null) return [forbidsAll(sheet, new ConflictFinder(indexModel(model), []), alone)]
  try {
    const circuit = compileModel(indexModel(model))
    const passes = new Passes(circuit)
    return [
      ...neverOccur(sheet, compiled, passes, alone),
      ...checkRules(sheet, alone),
      ...checkCounts(sheet, compiled, alone),
      ...countsMet(sheet, model, () => accountPriors(circuit, passes)),
    ]
  } catch (error) {
    if (error instanceof ProblemError) return [problem([], error.message, 'Make the rules named there simpler.')]
    throw error
  }
}

function forbidsAll(sheet: ReferenceSheet, finder: ConflictFinder, alone: RulesAlone): SheetProblem {
  const { conflicts } = finder.all()
  const [smallest] = conflicts
  const facts = alone.factsNamed((smallest ?? []).map(({ id }) => id))
  const position = sheet.rules.findIndex(({ id }) => facts.some((fact) => fact === id))
  const path: SheetPath = position < 0 ? ['rules'] : ['rules', position]
  return problem(
    path,
    `Together ${facts.join(', ')} leave no car that could be built.`,
    facts.length === 1 ? 'Correct it.' : 'One of them is wrong: correct it, or say how sure it is.',
  )
}

/** Values of this sheet's variables, and of its tells, that no car can have. */
function neverOccur(
  sheet: ReferenceSheet,
  { variables, tells }: CompiledSheets,
  passes: Passes,
  alone: RulesAlone,
): readonly SheetProblem[] {
  const { compiled } = passes
  const { model } = compiled
  const even = evenWeighing(compiled)
  const own = new Set(variables.map(({ key }) => key))
  const weighing = {
    ...even,
    values: even.values.map((values, at) => {
      const variable = model.variables[at]
      if (variable?.kind === 'doubt') return Float64Array.of(0, 1)
      return variable !== undefined && own.has(variable.name) ? values.map(() => 1 / values.length) : values
    }),
  }
  passes.totalAndSlopes(weighing)
  const possible = (name: string, value: string): boolean => {
    const variable = model.variableAt.get(name) ?? -1
    const position = model.variables[variable]?.valueAt.get(value) ?? -1
    return passes.ofValue(weighing, variable, position) > 0
  }
  const missing: { path: SheetPath; name: string; value: string; of: string }[] = []
  sheet.variables.forEach(({ id, values }, at) => {
    values.forEach((value, position) => {
      const name = `${sheet.sheetId}/${id}`
      if (!possible(name, value.id))
        missing.push({ path: ['variables', at, 'values', position], name, value: value.id, of: id })
    })
  })
  for (const { tell, variable, sheetId } of tells) {
    if (sheetId !== sheet.sheetId || tell.follows.kind === 'as built') continue
    // A value that only service, misreading or a mixture brings is no fault.
    const brought = new Set([
      ...Object.keys(tell.replaced?.by ?? {}),
      ...tell.follows.cases.flatMap(({ shows }) => (typeof shows === 'string' ? [] : Object.keys(shows))),
      ...(tell.follows.otherwise === null || typeof tell.follows.otherwise === 'string'
        ? []
        : Object.keys(tell.follows.otherwise)),
    ])
    const at = sheet.tells.findIndex(({ id }) => id === tell.id)
    tell.follows.values.forEach(({ id }, position) => {
      if (tell.travelsWith === null && !brought.has(id) && !possible(variable, id))
        missing.push({ path: ['tells', at, 'follows', 'values', position], name: variable, value: id, of: tell.id })
    })
  }
  return missing.map(({ path, name, value, of }) => {
    const facts = alone.conflictOf([[name, [value]]]) ?? []
    const because = facts.length === 0 ? '' : ` because of ${facts.join(', ')}`
    return problem(
      path,
      `No car can have ${of} “${value}”${because}.`,
      'Take it out, or correct what rules it out.',
      'warning',
    )
  })
}

/** The counts of each account can all be true at once; the engine says so by meeting them. */
function countsMet(sheet: ReferenceSheet, model: IdentityModel, meet: () => unknown): readonly SheetProblem[] {
  try {
    meet()
    return []
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error
    const account = model.accounts.find(({ id }) => error.problem.field === `accounts.${id}`)
    const position = sheet.counts.findIndex(({ id }) =>
      account?.tables.some((table) => table.id === `${sheet.sheetId}/${id}`),
    )
    return [
      problem(
        position < 0 ? ['counts'] : ['counts', position],
        error.message,
        'Counts of one source must fit each other and the rules; give one of them an account of its own.',
      ),
    ]
  }
}
