import { type ItemSet, meetAlso } from '../identity/hitting-sets.ts'
import type { Narrowing } from './narrowing.ts'

interface Conflicts {
  readonly sets: readonly ItemSet[]
  readonly complete: boolean
}

/** Ways of repairing all conflicts followed before the search says that there may be more. */
const MOST_REPAIRS = 500

/**
 * All smallest sets of constraints, of those numbered below `count`, that cannot hold together, up to `most`. By the duality of conflicts and repairs
 * (Reiter, Artificial Intelligence 32 (1987) 57-95): when leaving out any smallest repair of the known conflicts leaves
 * no conflict, none is unknown.
 */
export function conflictsIn(narrow: Narrowing, count: number, most: number): Conflicts {
  const all = Array.from({ length: count }, (_, at) => at)
  const sets: ItemSet[] = []
  const tried = new Set<string>()
  let repairs: readonly ItemSet[] = [[]]
  for (;;) {
    const repair = repairs.find((each) => !tried.has(each.join()))
    if (repair === undefined) return { sets, complete: true }
    if (sets.length >= most || repairs.length > MOST_REPAIRS) return { sets, complete: false }
    const without = new Set(repair)
    const found = narrow(all.filter((at) => !without.has(at)))
    if ('windows' in found) {
      tried.add(repair.join())
      continue
    }
    const smallest = shrink(narrow, found.conflict)
    sets.push(smallest)
    repairs = meetAlso(repairs, smallest)
  }
}

/** Leaves out one after another what the conflict does not need. */
function shrink(narrow: Narrowing, conflict: readonly number[]): ItemSet {
  let kept = [...conflict].sort((one, other) => one - other)
  for (const at of [...kept]) {
    const rest = kept.filter((each) => each !== at)
    if ('conflict' in narrow(rest)) kept = rest
  }
  return kept
}
