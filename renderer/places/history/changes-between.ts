import type { JournalEntry, RegisterName } from '../../../shared-types/record.ts'

/** What became of one row between two points of the journal. */
export interface NetChange {
  readonly register: RegisterName
  readonly key: string
  readonly before: unknown
  readonly after: unknown
  /** Journal rows that touched it, oldest first. */
  readonly by: readonly number[]
}

const same = (left: unknown, right: unknown): boolean => JSON.stringify(left) === JSON.stringify(right)

/**
 * Net changes of the journal rows after `from` up to and including `to`: the first state before, the last state after.
 * A row that was changed and changed back is left out, and so is the issuing of editions itself.
 */
export function changesBetween(entries: readonly JournalEntry[], from: number, to: number): readonly NetChange[] {
  const net = new Map<string, { register: RegisterName; key: string; before: unknown; after: unknown; by: number[] }>()
  const inSpan = entries.filter((entry) => entry.number > from && entry.number <= to)
  for (const entry of inSpan.toSorted((left, right) => left.number - right.number)) {
    for (const change of entry.changes) {
      const id = `${change.register} ${change.key}`
      const known = net.get(id)
      if (known === undefined) net.set(id, { ...change, by: [entry.number] })
      else {
        known.after = change.after
        known.by.push(entry.number)
      }
    }
  }
  return [...net.values()].filter((change) => change.register !== 'editions' && !same(change.before, change.after))
}
