import type { IdentityLiteral, IdentityModel, IdentityTell } from '../../../shared-types/identity-model.ts'
import { positionOf } from './model-problems.ts'

/** What a variable stands for: something built, a doubtful fact that holds or not, a donor, a statement of a claim. */
export type VariableKind = 'built' | 'doubt' | 'donor' | 'claim'

export interface IndexedVariable {
  readonly name: string
  readonly kind: VariableKind
  readonly values: readonly string[]
  readonly valueAt: ReadonlyMap<string, number>
}

/** One variable and, by value, 1 where the literal holds. */
export interface IndexedLiteral {
  readonly variable: number
  readonly allowed: Uint8Array
}

/** At least one of `literals` holds. `item` is the id of the rule it comes from; null for a definition. */
export interface IndexedClause {
  readonly item: string | null
  readonly literals: readonly IndexedLiteral[]
}

/** A table of two or more variables, row-major, last variable fastest. */
export interface IndexedTable {
  readonly id: string
  readonly scope: readonly number[]
  /** `given`: the weights stand. `count` and `tell`: each cell is told apart, its weight comes later. */
  readonly kind: 'given' | 'count' | 'tell'
  readonly weights: Float64Array
}

/** One table of one account: over a single variable, or over a structural table of kind `count`. */
export interface IndexedCount {
  readonly scope: readonly number[]
  readonly table: number | null
  readonly counts: Float64Array
}

export interface IndexedAccount {
  readonly id: string
  readonly share: number
  readonly tables: readonly IndexedCount[]
}

export interface IndexedTell {
  readonly tell: IdentityTell
  readonly variable: number
  /** Variable of its donor and the table of the two; null when the part stands alone. */
  readonly donor: { readonly variable: number; readonly table: number; readonly kinds: readonly string[] } | null
}

/** The model with names turned into positions, doubts and donors as variables of their own. */
export interface IndexedModel {
  readonly source: IdentityModel
  readonly variables: readonly IndexedVariable[]
  readonly variableAt: ReadonlyMap<string, number>
  readonly doubtAt: ReadonlyMap<string, number>
  readonly claimAt: ReadonlyMap<string, number>
  readonly clauses: readonly IndexedClause[]
  /** Weight of each value from tables of one variable, sum 1; doubts and donors by their shares. */
  readonly weights: readonly Float64Array[]
  readonly tables: readonly IndexedTable[]
  readonly accounts: readonly IndexedAccount[]
  readonly tells: readonly IndexedTell[]
  readonly tellAt: ReadonlyMap<string, number>
}

/** A literal in positions; refuses unknown names. */
export function indexLiteral(
  [name, values]: IdentityLiteral,
  model: Pick<IndexedModel, 'variables' | 'variableAt'>,
  field: string,
): IndexedLiteral {
  const variable = positionOf(name, model.variableAt, field, 'variable')
  const { values: all, valueAt } = variableOf(model, variable)
  const allowed = new Uint8Array(all.length)
  for (const value of values) allowed[positionOf(value, valueAt, field, `value of ${name}`)] = 1
  return { variable, allowed }
}

export const opposite = ({ variable, allowed }: IndexedLiteral): IndexedLiteral => ({
  variable,
  allowed: allowed.map((each) => 1 - each),
})

export function variableOf(model: Pick<IndexedModel, 'variables'>, at: number): IndexedVariable {
  const variable = model.variables[at]
  if (variable === undefined) throw new RangeError(`There is no variable ${at}.`)
  return variable
}

/** Value weights in order of a variable's values; refuses unknown values, negative numbers are refused by the schema. */
export function valueWeights(
  variable: IndexedVariable,
  byValue: { readonly [value: string]: number },
  field: string,
): Float64Array {
  const weights = new Float64Array(variable.values.length)
  for (const [value, weight] of Object.entries(byValue))
    weights[positionOf(value, variable.valueAt, `${field}.${value}`, `value of ${variable.name}`)] = weight
  return weights
}
