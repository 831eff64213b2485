import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { CompiledModel } from './compile-circuit.ts'
import type { IndexedAccount, IndexedCount } from './identity-model.ts'
import { evenWeighing, type Passes, type Weighing } from './weighing.ts'

/** The prior under one account of what was built. */
export interface AccountPrior {
  readonly id: string
  /** Share of belief in the account before anything is seen. */
  readonly share: number
  readonly weighing: Weighing
  /** Total weight of all builds under `weighing`. */
  readonly total: number
  /** Share of the account's counts that stands in cells the rules forbid, table by table; spread over the others. */
  readonly uncountable: readonly { readonly table: number; readonly share: number }[]
}

const ROUNDS = 1000
const CLOSE = 1e-14

/** Name of the one account when the sheet has no counts. */
export const NO_COUNTS = 'weights of the sheet'

/**
 * The prior under each account: each counted cell has its share, other weights act only inside a cell. One table is met
 * in one step; several by iterative proportional fitting (Deming and Stephan, Ann. Math. Statist. 11 (1940) 427-444).
 * @throws ProblemError when the counts of one account cannot all be true, or all builds have weight 0.
 */
export function accountPriors(compiled: CompiledModel, passes: Passes): readonly AccountPrior[] {
  const { model } = compiled
  const base = baseWeighing(compiled)
  if (!(passes.total(base) > 0))
    throw new ProblemError(
      'input-refused',
      'Every build the rules allow has weight 0. Look for zeros in the weights.',
      {
        field: 'tables',
      },
    )
  if (model.accounts.length === 0)
    return [{ id: NO_COUNTS, share: 1, weighing: base, total: passes.total(base), uncountable: [] }]
  return model.accounts.map((account) => meetCounts(account, base, passes))
}

/** Weights of the sheet alone, without counts. */
function baseWeighing(compiled: CompiledModel): Weighing {
  const even = evenWeighing(compiled)
  return {
    values: compiled.model.weights,
    labels: even.labels.map((labels, table) => {
      const { cellOfLabel } = compiled.tables[table] ?? { cellOfLabel: new Int32Array() }
      const weights = compiled.model.tables[table]?.weights
      return labels.map((_, label) => weights?.[cellOfLabel[label] as number] ?? 1)
    }),
  }
}

function meetCounts(account: IndexedAccount, base: Weighing, passes: Passes): AccountPrior {
  const weighing: Weighing = {
    values: base.values.map((values) => values.slice()),
    labels: base.labels.map((labels) => labels.slice()),
  }
  const uncountable: { table: number; share: number }[] = []
  const targets = account.tables.map((table, at) => {
    const { target, lost } = reachable(table, shares(table, weighing, passes))
    if (lost > 0) uncountable.push({ table: at, share: lost })
    if (!(lost < 1))
      throw new ProblemError('input-refused', `${account.id}: the rules forbid every combination it counted.`, {
        field: `accounts.${account.id}`,
      })
    return target
  })
  for (let round = 0; round < ROUNDS; round++) {
    let worst = 0
    account.tables.forEach((table, at) => {
      worst = Math.max(worst, step(table, targets[at] as Float64Array, weighing, passes))
    })
    if (worst < CLOSE || account.tables.length === 1) {
      const total = passes.total(weighing)
      return { id: account.id, share: account.share, weighing, total, uncountable }
    }
  }
  throw new ProblemError(
    'input-refused',
    `The counts of ${account.id} cannot all be true at once. Compare its tables: ${account.tables.length} of them overlap.`,
    { field: `accounts.${account.id}` },
  )
}

/** Share of each cell of a counted table under a weighing. */
function shares(table: IndexedCount, weighing: Weighing, passes: Passes): Float64Array {
  const total = passes.totalAndSlopes(weighing)
  const [variable] = table.scope
  return table.counts.map((_, cell) => {
    const own =
      table.table === null
        ? passes.ofValue(weighing, variable as number, cell)
        : passes.ofLabel(weighing, table.table, cell)
    return own / total
  })
}

/** The counts' shares over the cells that can be built at all, and the share lost with the others. */
function reachable({ counts }: IndexedCount, now: Float64Array): { target: Float64Array; lost: number } {
  const kept = counts.map((share, cell) => ((now[cell] as number) > 0 ? share : 0))
  const sum = kept.reduce((total, share) => total + share, 0)
  const whole = counts.every((share, cell) => share === 0 || kept[cell] === share)
  return { target: whole ? counts : kept.map((share) => share / sum), lost: whole ? 0 : 1 - sum }
}

/** Moves one table's cells to their target; answers how far they were from it. */
function step(table: IndexedCount, target: Float64Array, weighing: Weighing, passes: Passes): number {
  const now = shares(table, weighing, passes)
  const [variable] = table.scope
  const weights = (
    table.table === null ? weighing.values[variable as number] : weighing.labels[table.table]
  ) as Float64Array
  let worst = 0
  now.forEach((share, cell) => {
    const wanted = target[cell] as number
    worst = Math.max(worst, Math.abs(share - wanted))
    weights[cell] = share > 0 ? ((weights[cell] as number) * wanted) / share : 0
  })
  const sum = weights.reduce((total, weight) => total + weight, 0)
  weights.forEach((weight, cell) => {
    weights[cell] = weight / sum
  })
  return worst
}
