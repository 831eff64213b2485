import type { IdentityLiteral, IdentityModel } from '../../../shared-types/identity-model.ts'
import { ConflictFinder } from './conflicts.ts'
import { certainFacts } from './hard-facts.ts'
import { type IndexedModel, indexLiteral, opposite } from './identity-model.ts'

/** How many were built like this by one account. */
export interface AccountRarity {
  readonly account: string
  readonly low: number
  readonly high: number
  readonly all: number
  /** Options counted together in one table; when there are several such groups only bounds are known. */
  readonly counted: readonly (readonly string[])[]
  /** Options no table of this account counts: they may be on none or on all of the others. */
  readonly notCounted: readonly string[]
  /** Options that follow from the rest by the rules, and so need no count. */
  readonly implied: readonly string[]
}

export interface Rarity {
  /** Null when no account counts anything of it. */
  readonly low: number | null
  readonly high: number | null
  readonly accounts: readonly AccountRarity[]
  /** True when options counted apart are joined: bounds only, never a product. */
  readonly boundsOnly: boolean
  /** True when the rules forbid the combination outright. */
  readonly neverBuilt: boolean
}

type Table = IdentityModel['accounts'][number]['tables'][number]

/**
 * Number built with all these options, as a range from all accounts. Options counted in different tables are joined by
 * Fréchet's bounds (M. Fréchet, Ann. Univ. Lyon A 14 (1951) 53-77): at most the smallest, at least the sum less the whole,
 * inside the options the tables share. How many survive is not asked and not answered.
 */
export function rarity(model: IndexedModel, options: readonly IdentityLiteral[]): Rarity {
  // Doubtful rules neither forbid nor imply anything here.
  const doubts = new Set(model.doubtAt.values())
  const clauses = model.clauses.filter(({ literals }) => !literals.some(({ variable }) => doubts.has(variable)))
  const certain = { ...model, clauses }
  const rules = (says: readonly IdentityLiteral[]) =>
    new ConflictFinder(certain, certainFacts(certain, [{ id: 'options', says }]))
  if (rules(options).one() !== null) return { low: 0, high: 0, accounts: [], boundsOnly: false, neverBuilt: true }
  const { implied, asked } = withoutImplied(model, options, rules)
  const accounts = model.source.accounts.map(({ id, tables }) => ({
    account: id,
    ...bounds(model, tables, asked),
    implied,
  }))
  const known = accounts.filter(({ counted }) => counted.length > 0)
  return {
    low: known.length === 0 ? null : Math.min(...known.map(({ low }) => low)),
    high: known.length === 0 ? null : Math.max(...known.map(({ high }) => high)),
    accounts,
    boundsOnly: known.some(({ counted, notCounted }) => counted.length > 1 || notCounted.length > 0),
    neverBuilt: false,
  }
}

/** Leaves out, one after the other, options that all others together force by the rules. */
function withoutImplied(
  model: IndexedModel,
  options: readonly IdentityLiteral[],
  rules: (also: readonly IdentityLiteral[]) => ConflictFinder,
) {
  let asked = [...options]
  const implied: string[] = []
  for (const option of options) {
    const others = asked.filter((other) => other !== option)
    const { variable, allowed } = opposite(indexLiteral(option, model, 'options'))
    const [name] = option
    const rest = (model.variables[variable]?.values ?? []).filter((_, value) => allowed[value] === 1)
    if (others.length === 0 || rest.length === 0 || rules([...others, [name, rest]]).one() === null) continue
    asked = others
    implied.push(name)
  }
  return { asked, implied }
}

function bounds(model: IndexedModel, tables: readonly Table[], asked: readonly IdentityLiteral[]) {
  const counting = tables
    .map((table) => ({ table, own: asked.filter(([name]) => table.scope.includes(name)) }))
    .filter(({ own }) => own.length > 0)
  const useful = counting.filter(
    ({ own }, at) =>
      !counting.some(
        (other, place) =>
          place !== at &&
          own.every((each) => other.own.includes(each)) &&
          (other.own.length > own.length || place < at),
      ),
  )
  const counted = useful.map(({ own }) => own.map(([name]) => name))
  const notCounted = asked.map(([name]) => name).filter((name) => !counted.some((names) => names.includes(name)))
  const numbers = useful.map(({ table, own }) => countWhere(model, table, own))
  const common = asked.filter((literal) => useful.every(({ own }) => own.includes(literal)))
  const wholes = (useful.length > 0 ? useful : tables.map((table) => ({ table }))).map(({ table }) =>
    countWhere(model, table, common),
  )
  const whole = wholes.reduce((most, count) => Math.max(most, count), 0)
  const all = tables.reduce((most, table) => Math.max(most, countWhere(model, table, [])), 0)
  const high = numbers.reduce((least, count) => Math.min(least, count), whole)
  const together = numbers.reduce((sum, count) => sum + count, 0) - (numbers.length - 1) * whole
  const low = notCounted.length > 0 || numbers.length === 0 ? 0 : Math.min(high, Math.max(0, together))
  return { low, high, all, counted, notCounted }
}

/** Sum of a table's counts over the cells for which all literals on its variables hold. */
function countWhere(model: IndexedModel, { scope, counts }: Table, literals: readonly IdentityLiteral[]): number {
  const sizes = scope.map((name) => model.variables[model.variableAt.get(name) ?? -1]?.values ?? [])
  return counts.reduce((sum, count, cell) => {
    let left = cell
    const values = new Map<string, string>()
    for (let position = scope.length - 1; position >= 0; position--) {
      const own = sizes[position] ?? []
      values.set(scope[position] as string, own[left % own.length] as string)
      left = Math.floor(left / own.length)
    }
    return literals.every(([name, allowed]) => allowed.includes(values.get(name) ?? '')) ? sum + count : sum
  }, 0)
}
