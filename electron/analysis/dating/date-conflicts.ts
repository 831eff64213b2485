import { type ItemSet, meetAlso } from '../identity/hitting-sets.ts'
import type { Constraint } from './dated-constraints.ts'
import { narrow } from './narrowing.ts'

interface Conflicts {
  readonly sets: readonly ItemSet[]
  readonly complete: boolean
}

/** Ways of repairing all conflicts followed before the search says that there may be more. */
const MOST_REPAIRS = 500

/**
 * All smallest sets of constraints that cannot hold together, up to `most`. By the duality of conflicts and repairs
 * (Reiter, Artificial Intelligence 32 (1987) 57-95): when leaving out any smallest repair of the known conflicts leaves
 * no conflict, none is unknown.
 */
export function conflictsIn(nodes: number, constraints: readonly Constraint[], most: number): Conflicts {
  const all = constraints.map((_, at) => at)
  const sets: ItemSet[] = []
  const tried = new Set<string>()
  let repairs: readonly ItemSet[] = [[]]
  for (;;) {
    const repair = repairs.find((each) => !tried.has(each.join()))
    if (repair === undefined) return { sets, complete: true }
    if (sets.length >= most || repairs.length > MOST_REPAIRS) return { sets, complete: false }
    const without = new Set(repair)
    const found = narrow(
      nodes,
      constraints,
      all.filter((at) => !without.has(at)),
    )
    if ('windows' in found) {
      tried.add(repair.join())
      continue
    }
    const smallest = shrink(nodes, constraints, found.conflict)
    sets.push(smallest)
    repairs = meetAlso(repairs, smallest)
  }
}

/** Leaves out one after another what the conflict does not need. */
function shrink(nodes: number, constraints: readonly Constraint[], conflict: readonly number[]): ItemSet {
  let kept = [...conflict].sort((one, other) => one - other)
  for (const at of [...kept]) {
    const rest = kept.filter((each) => each !== at)
    if ('conflict' in narrow(nodes, constraints, rest)) kept = rest
  }
  return kept
}
