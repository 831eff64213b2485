import type { Component } from './components.ts'
import { FALSE, type OpenClasses } from './open-classes.ts'
import type { TableStates } from './table-states.ts'

/** Splits groups of classes by a mask: what lies inside it and what outside; groups wholly on one side stay. */
function split(groups: readonly Int32Array[], masks: Int32Array, from: number): Int32Array[] {
  const after: Int32Array[] = []
  for (const group of groups) {
    let some = 0
    let others = 0
    for (let word = 0; word < group.length; word++) {
      const own = group[word] as number
      const mask = masks[from + word] as number
      some |= own & mask
      others |= own & ~mask
    }
    if (some === 0 || others === 0) {
      after.push(group)
      continue
    }
    const inside = new Int32Array(group.length)
    const outside = new Int32Array(group.length)
    for (let word = 0; word < group.length; word++) {
      const own = group[word] as number
      const mask = masks[from + word] as number
      inside[word] = own & mask
      outside[word] = own & ~mask
    }
    after.push(inside, outside)
  }
  return after
}

/** Open classes of a variable in groups whose members no live clause and no open table of the component tells apart. */
export function liveClasses(
  variable: number,
  component: Component,
  state: OpenClasses,
  tables: TableStates,
): readonly Int32Array[] {
  const { wordAt, clausesOf, literalsOf, maskAt, masks } = state.clauses
  const first = wordAt[variable] as number
  const words = (wordAt[variable + 1] as number) - first
  let groups: Int32Array[] = [state.open.slice(first, first + words)]
  const live = new Set(component.clauses)
  const clauses = clausesOf[variable] as Int32Array
  const literals = literalsOf[variable] as Int32Array
  for (let at = 0; at < clauses.length; at++) {
    const literal = literals[at] as number
    if (live.has(clauses[at] as number) && state.literal(literal) !== FALSE)
      groups = split(groups, masks, maskAt[literal] as number)
  }
  for (const [table, position] of tables.of[variable] ?? []) {
    if (!component.tables.includes(table)) continue
    const of = tables.sliceOf(table, position)
    for (const slice of tables.openSlices(table, position)) {
      const mask = new Int32Array(words)
      of.forEach((own, each) => {
        if (own === slice) mask[each >> 5] = (mask[each >> 5] as number) | (1 << (each & 31))
      })
      groups = split(groups, mask, 0)
    }
  }
  return groups
}
