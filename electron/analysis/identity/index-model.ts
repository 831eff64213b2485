import type { IdentityClaim, IdentityModel } from '../../../shared-types/identity-model.ts'
import {
  type IndexedClause,
  type IndexedModel,
  type IndexedTable,
  type IndexedVariable,
  indexLiteral,
  opposite,
  type VariableKind,
  variableOf,
} from './identity-model.ts'
import { indexAccounts, indexTells, type ScopeOf } from './index-counts-and-tells.ts'
import { positionOf, positions, refuse } from './model-problems.ts'

/** Weights divided by their sum, so that no product of many variables grows out of range. */
const sumOne = (weights: Float64Array, field: string): Float64Array => {
  const sum = weights.reduce((total, weight) => total + weight, 0)
  if (!(sum > 0)) refuse(field, 'All its weights are 0.', 'At least one combination must be possible.')
  return weights.map((weight) => weight / sum)
}

/**
 * Turns names into positions and refuses what does not fit together, naming place and cure.
 * @param claims claims with several literals get a variable of their own, `no` or `yes`.
 */
export function indexModel(source: IdentityModel, claims: readonly IdentityClaim[] = []): IndexedModel {
  const variableAt = positions(
    source.variables.map((variable) => variable.name),
    'variables',
    'Variable',
  )
  const variables: IndexedVariable[] = []
  const weights: Float64Array[] = []
  const add = (name: string, kind: VariableKind, values: readonly string[], given: readonly number[] | null) => {
    const valueAt = positions(values, `${kind} ${name}`, `Value of ${name}`)
    weights.push(given === null ? new Float64Array(values.length).fill(1 / values.length) : Float64Array.from(given))
    return variables.push({ name, kind, values, valueAt }) - 1
  }
  for (const { name, values } of source.variables) add(name, 'built', values, null)
  positions(
    source.doubts.map((doubt) => doubt.id),
    'doubts',
    'Doubtful fact',
  )
  const doubtAt = new Map(
    source.doubts.map(({ id, holds }) => [id, add(id, 'doubt', ['fails', 'holds'], [1 - holds, holds])]),
  )
  positions(
    source.rules.map((rule) => rule.id),
    'rules',
    'Rule',
  )
  const naming = { variables, variableAt }
  const clauses: IndexedClause[] = source.rules.map((rule, at) => {
    const field = `rules[${at}] ${rule.id}`
    const literals = [
      ...rule.ifs.map((literal) => opposite(indexLiteral(literal, naming, `${field}.ifs`))),
      ...rule.thenAny.map((literal) => indexLiteral(literal, naming, `${field}.thenAny`)),
    ]
    if (rule.doubt !== null)
      literals.push({
        variable: positionOf(rule.doubt, doubtAt, `${field}.doubt`, 'doubtful fact'),
        allowed: Uint8Array.of(1, 0),
      })
    return { item: rule.id, literals }
  })
  const claimAt = new Map<string, number>()
  for (const claim of claims) {
    if (claim.says.length < 2) continue
    const variable = add(`claim ${claim.id}`, 'claim', ['no', 'yes'], null)
    claimAt.set(claim.id, variable)
    const parts = claim.says.map((literal) => indexLiteral(literal, naming, `claims ${claim.id}`))
    for (const part of parts) clauses.push({ item: null, literals: [{ variable, allowed: Uint8Array.of(1, 0) }, part] })
    clauses.push({ item: null, literals: [{ variable, allowed: Uint8Array.of(0, 1) }, ...parts.map(opposite)] })
  }
  const tables: IndexedTable[] = []
  const scopeOf: ScopeOf = (scope: readonly string[], cells: number, field: string): readonly number[] => {
    positions(scope, `${field}.scope`, 'Variable')
    const found = scope.map((name) => positionOf(name, variableAt, `${field}.scope`, 'variable'))
    const wanted = found.reduce((product, variable) => product * variableOf(naming, variable).values.length, 1)
    if (wanted !== cells)
      refuse(field, `It has ${cells} numbers, its variables have ${wanted} combinations.`, 'Give one for each.')
    return found
  }
  positions(
    source.tables.map((table) => table.id),
    'tables',
    'Table',
  )
  source.tables.forEach((table, at) => {
    const field = `tables[${at}] ${table.id}`
    const scope = scopeOf(table.scope, table.weights.length, field)
    const given = sumOne(Float64Array.from(table.weights), field)
    const [only] = scope
    if (scope.length === 1 && only !== undefined) {
      const product = (weights[only] ?? new Float64Array()).map((weight, value) => weight * (given[value] ?? 0))
      weights[only] = sumOne(product, field)
    } else tables.push({ id: table.id, scope, kind: 'given', weights: given })
  })
  const accounts = indexAccounts(source, tables, scopeOf)
  const tells = indexTells(source, naming, tables, add)
  return {
    source,
    variables,
    variableAt,
    doubtAt,
    claimAt,
    clauses,
    weights,
    tables,
    accounts,
    tells,
    tellAt: new Map(source.tells.map((tell, at) => [tell.id, at])),
  }
}
