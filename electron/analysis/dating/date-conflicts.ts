import { type ItemSet, meetAlso } from '../identity/hitting-sets.ts'
import { type Constraint, someOf } from './dated-constraints.ts'
import { type Narrowing, narrowingOf } from './narrowing.ts'

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
export function conflictsIn(narrow: Narrowing, constraints: readonly Constraint[], most: number): Conflicts {
  const all = [...constraints.keys()]
  const sets: ItemSet[] = []
  // A repair that leaves no conflict meets every one to come, so it is kept as it is.
  const tried = new Set<ItemSet>()
  let repairs: readonly ItemSet[] = [[]]
  for (;;) {
    const repair = repairs.find((each) => !tried.has(each))
    if (repair === undefined) return { sets, complete: true }
    if (sets.length >= most || repairs.length > MOST_REPAIRS) return { sets, complete: false }
    const without = new Set(repair)
    const found = narrow(all.filter((at) => !without.has(at)))
    if ('windows' in found) {
      tried.add(repair)
      continue
    }
    const smallest = shrink(constraints, found.conflict)
    sets.push(smallest)
    repairs = meetAlso(repairs, smallest)
  }
}

/** Leaves out one after another what the conflict does not need. */
function shrink(constraints: readonly Constraint[], conflict: readonly number[]): ItemSet {
  const sorted = [...conflict].sort((one, other) => one - other)
  const alone = someOf(constraints, sorted)
  const narrow = narrowingOf(alone.events, alone.constraints)
  let kept = [...sorted.keys()]
  for (const at of sorted.keys()) {
    const rest = kept.filter((each) => each !== at)
    if ('conflict' in narrow(rest)) kept = rest
  }
  return kept.map((at) => sorted[at] ?? 0)
}
