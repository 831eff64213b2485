import type { SheetRule } from '../../../shared-types/reference-fact.ts'
import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import { withDays } from './compile-rules.ts'
import { type DecisionPath, decisionPaths, type WeighedCondition } from './decision-paths.ts'
import { type FactCite, type ModelDraft, valuesWithin, weighedCondition } from './model-draft.ts'
import type { Complain, KnownVariable, Literal } from './sheet-names.ts'

type Fitting = Extract<SheetRule, { kind: 'standard' | 'option' }>

/** A standard or optional fitting with its names resolved. */
interface KnownFitting {
  readonly rule: Fitting
  readonly key: string
  readonly cite: FactCite
  readonly on: readonly Literal[]
  readonly dates: KnownVariable | undefined
  readonly condition: WeighedCondition
  readonly complain: Complain
}

/** More numbers than this in one table of shares are refused, as the engine would. */
const MOST_CELLS = 200_000
const MOST_SCOPE = 6
const ROUNDING = 1e-9

/** Adds what standard and optional fittings say together, variable by variable. */
export function compileFittings(draft: ModelDraft): void {
  const byVariable = new Map<KnownVariable, KnownFitting[]>()
  for (const sheet of draft.names.sheets)
    sheet.rules.forEach((rule, at) => {
      if (rule.kind !== 'standard' && rule.kind !== 'option') return
      const complain = draft.complaining(sheet, ['rules', at])
      const variable = draft.names.variable(sheet, rule.variable, ['variable'], complain)
      const fitting = variable === null ? null : known(draft, sheet, rule, variable, complain)
      if (variable === null || fitting === null) return
      const others = byVariable.get(variable)
      if (others === undefined) byVariable.set(variable, [fitting])
      else others.push(fitting)
    })
  for (const [variable, fittings] of byVariable) {
    standards(draft, variable, fittings)
    for (const value of variable.values) offered(draft, variable, value, fittings)
    sharesOf(draft, variable, fittings)
  }
}

function known(
  draft: ModelDraft,
  sheet: ReferenceSheet,
  rule: Fitting,
  variable: KnownVariable,
  complain: Complain,
): KnownFitting | null {
  if (!variable.values.includes(rule.value)) {
    complain(['value'], `“${rule.value}” is no value of ${rule.variable}.`, 'Correct the name, or add the value.')
    return null
  }
  const on = draft.names.literals(sheet, rule.on, ['on'], complain)
  const dates = draft.datesFor(sheet, rule, complain)
  if (on === null || dates === null) return null
  if (on.some(([key]) => key === variable.key)) {
    complain(
      ['on'],
      `It says on which ${rule.variable} that ${rule.variable} was fitted.`,
      'Name other variables here.',
    )
    return null
  }
  const condition = weighedCondition(draft, on, dates, rule)
  return { rule, key: `${sheet.sheetId}/${rule.id}`, cite: draft.cite(sheet, rule), on, dates, condition, complain }
}

const isOption = ({ rule }: KnownFitting) => rule.kind === 'option'

/** Cars of a standard fitting have its value, or one that could be ordered instead. */
function standards(draft: ModelDraft, variable: KnownVariable, fittings: readonly KnownFitting[]): void {
  const options = fittings.filter(isOption).map(({ rule }) => rule.value)
  for (const { rule, key, cite, on, dates } of fittings) {
    if (rule.kind !== 'standard') continue
    const ifs = withDays(on, dates, dates === undefined ? [] : valuesWithin(dates, rule, 'surely'))
    const allowed = variable.values.filter((value) => value === rule.value || options.includes(value))
    if (allowed.length === variable.values.length) continue
    draft.addRules(
      key,
      [{ ifs, thenAny: [[variable.key, allowed]] }],
      [cite],
      draft.doubtOf(key, rule.surePercent, cite),
    )
  }
}

/** A value with options is built only where one of them, or a standard fitment, says so. */
function offered(draft: ModelDraft, variable: KnownVariable, value: string, all: readonly KnownFitting[]): void {
  const own = all.filter(({ rule }) => rule.value === value)
  const [first] = own.filter(isOption)
  if (first === undefined) return
  const doubtful = own.find(({ rule }) => rule.surePercent < 100)
  if (doubtful !== undefined && own.length > 1) {
    const what = `It is doubtful, and others say too where ${value} was fitted.`
    doubtful.complain(['surePercent'], what, 'Leave the doubt out, or say it all in one fact.')
    return
  }
  const paths = decisionPaths(
    own.map(({ condition }) => condition),
    (met) => (met.some((share) => share > 0) ? 'offered' : 'not offered'),
  )
  if (paths === null) {
    tooMany(first)
    return
  }
  const others = variable.values.filter((each) => each !== value)
  const clauses = paths
    .filter(({ cell }) => cell === 'not offered')
    .map(({ ifs }) => ({ ifs, thenAny: [[variable.key, others] satisfies Literal] }))
  const { key, rule, cite } = first
  const cites = own.map((each) => each.cite)
  draft.addRules(`${key} only there`, clauses, cites, draft.doubtOf(key, rule.surePercent, cite))
}

const tooMany = ({ complain }: KnownFitting): void =>
  complain(['on'], 'Too many combinations hang together here.', 'Name fewer variables, or fewer values.')

/** Weights of a variable's values given the cars they go on: options by their share, the rest to what is fitted otherwise. */
function sharesOf(draft: ModelDraft, variable: KnownVariable, fittings: readonly KnownFitting[]): void {
  const [first] = fittings.filter(({ rule }) => rule.kind === 'option' && rule.share !== null)
  if (first === undefined) return
  const paths = decisionPaths(
    fittings.map(({ condition }) => condition),
    (met) => JSON.stringify(weightsWhere(variable, fittings, met)),
  )
  if (paths === null) {
    tooMany(first)
    return
  }
  const over = paths.find(({ cell }) => cell === 'null')
  if (over !== undefined) {
    const where = over.ifs.map(([key, values]) => `${key} ${values[0]}`).join(', ')
    const what = `The shares of ${variable.definition.id} add up to more than 1${where === '' ? '' : ` on ${where}`}.`
    first.complain(['share'], what, 'Make them 1 together at most.')
    return
  }
  const named = new Set(paths.flatMap(({ ifs }) => ifs.map(([key]) => key)))
  const scope = [...draft.names.variables.values()].filter(({ key }) => named.has(key))
  const cells = scope.reduce((product, { values }) => product * values.length, variable.values.length)
  if (scope.length >= MOST_SCOPE || cells > MOST_CELLS) {
    tooMany(first)
    return
  }
  const id = `shares of ${variable.key}`
  const shared = fittings.filter(({ rule }) => rule.kind === 'option' && rule.share !== null)
  const cites = shared.map(({ cite }) => cite)
  draft.tables.push({
    id,
    source: '',
    scope: [...scope.map(({ key }) => key), variable.key],
    weights: grid(scope, paths),
  })
  draft.cites.set(id, cites)
}

/** Weights of all values under the fittings that apply; null when their shares exceed 1. */
function weightsWhere(
  variable: KnownVariable,
  fittings: readonly KnownFitting[],
  met: readonly number[],
): readonly number[] | null {
  const applying = fittings
    .map((fitting, at) => ({ rule: fitting.rule, met: met[at] ?? 0 }))
    .filter((each) => each.met > 0)
  const share = new Map<string, number>()
  for (const { rule, met: part } of applying)
    if (rule.kind === 'option' && rule.share !== null)
      share.set(rule.value, (share.get(rule.value) ?? 0) + rule.share * part)
  // Where no fitting applies the sheet says nothing, and every value the rules allow counts alike.
  if (applying.length === 0) return variable.values.map(() => 1)
  const taken = [...share.values()].reduce((sum, each) => sum + each, 0)
  if (taken > 1 + ROUNDING) return null
  const listed = new Set(applying.map(({ rule }) => rule.value).filter((value) => !share.has(value)))
  const offeredSomewhere = new Set(fittings.filter(isOption).map(({ rule }) => rule.value))
  const hasStandard = applying.some(({ rule }) => rule.kind === 'standard')
  const rest = variable.values.filter((value) =>
    hasStandard ? listed.has(value) : listed.has(value) || !offeredSomewhere.has(value),
  )
  return variable.values.map((value) => {
    const own = share.get(value)
    if (own !== undefined) return own
    // What the rules forbid here keeps a weight, so that only the rule, with its source, rules it out.
    return rest.includes(value) ? Math.max(0, 1 - taken) / rest.length : 1 / variable.values.length
  })
}

/** Numbers of a table, row-major, from the paths that cover all its combinations. */
function grid(scope: readonly KnownVariable[], paths: readonly DecisionPath[]): number[] {
  const known = paths.map(({ ifs, cell }) => ({
    sets: new Map(ifs.map(([key, values]) => [key, new Set(values)])),
    weights: JSON.parse(cell) as readonly number[],
  }))
  const fill = (at: number, open: typeof known): number[] => {
    const variable = scope[at]
    if (variable === undefined) return [...(open[0]?.weights ?? [])]
    return variable.values.flatMap((value) =>
      fill(
        at + 1,
        open.filter(({ sets }) => sets.get(variable.key)?.has(value) ?? true),
      ),
    )
  }
  return fill(0, known)
}
