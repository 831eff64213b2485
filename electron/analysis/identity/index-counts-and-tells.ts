import type { IdentityModel } from '../../../shared-types/identity-model.ts'
import {
  type IndexedAccount,
  type IndexedModel,
  type IndexedTable,
  type IndexedTell,
  type VariableKind,
  variableOf,
} from './identity-model.ts'
import { positionOf, positions, refuse } from './model-problems.ts'

/** Positions of a scope's variables; refuses a table whose length is not the number of their combinations. */
export type ScopeOf = (scope: readonly string[], cells: number, field: string) => readonly number[]

/** Accounts with shares of reliability; tables over the same several variables share one structural table. */
export function indexAccounts(
  source: IdentityModel,
  tables: IndexedTable[],
  scopeOf: ScopeOf,
): readonly IndexedAccount[] {
  positions(
    source.accounts.map((account) => account.id),
    'accounts',
    'Account',
  )
  const reliable = source.accounts.reduce((sum, account) => sum + account.reliability, 0)
  if (source.accounts.length > 0 && !(reliable > 0))
    refuse('accounts', 'No account has any reliability.', 'Give at least one more than 0.')
  for (const account of source.accounts)
    positions(
      account.tables.map((table) => table.id),
      `accounts ${account.id}`,
      'Table',
    )
  const tableOfScope = new Map<string, number>()
  return source.accounts.map((account, at) => ({
    id: account.id,
    share: account.reliability / reliable,
    tables: account.tables.map((table) => {
      const field = `accounts[${at}] ${account.id}, table ${table.id}`
      const scope = scopeOf(table.scope, table.counts.length, field)
      const total = table.counts.reduce((sum, count) => sum + count, 0)
      if (!(total > 0)) refuse(field, 'All its counts are 0.', 'Leave the table out, or enter the counts.')
      const counts = Float64Array.from(table.counts, (count) => count / total)
      if (scope.length === 1) return { scope, table: null, counts }
      const key = scope.join()
      const known = tableOfScope.get(key)
      const position =
        known ??
        tables.push({ id: table.id, scope, kind: 'count', weights: new Float64Array(counts.length).fill(1) }) - 1
      tableOfScope.set(key, position)
      return { scope, table: position, counts }
    }),
  }))
}

/** Adds a variable with its weights and answers its position. */
export type AddVariable = (
  name: string,
  kind: VariableKind,
  values: readonly string[],
  given: readonly number[],
) => number

/** Donors become variables `none` and one value per kind; a tell of a donor gets a table over donor and variable. */
export function indexTells(
  source: IdentityModel,
  naming: Pick<IndexedModel, 'variables' | 'variableAt'>,
  tables: IndexedTable[],
  add: AddVariable,
): readonly IndexedTell[] {
  const donorAt = positions(
    source.donors.map((donor) => donor.id),
    'donors',
    'Donor',
  )
  positions(
    source.tells.map((tell) => tell.id),
    'tells',
    'Tell',
  )
  const donorVariables = source.donors.map((donor, at) => {
    const taken = donor.kinds.reduce((sum, kind) => sum + kind.share, 0)
    if (taken > 1 + 1e-9)
      refuse(`donors[${at}] ${donor.id}`, `Its shares add up to ${taken}.`, 'They may be 1 together at most.')
    const kinds = ['none', ...donor.kinds.map((kind) => kind.id)]
    return {
      kinds,
      variable: add(donor.id, 'donor', kinds, [Math.max(0, 1 - taken), ...donor.kinds.map((k) => k.share)]),
    }
  })
  return source.tells.map((tell, at) => {
    const field = `tells[${at}] ${tell.id}`
    const variable = positionOf(tell.variable, naming.variableAt, `${field}.variable`, 'variable')
    if (tell.reads.kind === 'direct' || tell.reads.donor === null) return { tell, variable, donor: null }
    const donor = donorVariables[positionOf(tell.reads.donor, donorAt, `${field}.donor`, 'donor')]
    if (donor === undefined) throw new RangeError(`There is no donor of ${field}.`)
    const cells = donor.kinds.length * variableOf(naming, variable).values.length
    const scope = [donor.variable, variable]
    const table = tables.push({ id: tell.id, scope, kind: 'tell', weights: new Float64Array(cells).fill(1) }) - 1
    return { tell, variable, donor: { ...donor, table } }
  })
}
