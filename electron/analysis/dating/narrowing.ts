import type { DaySpan } from './calendar.ts'
import { addBounds, type Constraint } from './dated-constraints.ts'
import { type Bound, type Windows, windowsOf } from './temporal-network.ts'

/** A reading of a fact that the rest leaves no room for, and the numbers of the constraints that do so. */
interface Dropped {
  readonly fact: number
  readonly reading: DaySpan
  readonly because: readonly number[]
}

export type Narrowed =
  | { readonly windows: Windows; readonly dropped: readonly Dropped[] }
  /** Constraints that cannot all hold; not yet a smallest set. */
  | { readonly conflict: readonly number[] }

/**
 * Narrows by turns: days of every event from the hulls of all facts, then the readings of each fact from those days,
 * until nothing changes. A reading is dropped only when it is impossible; one that is kept need not be possible together
 * with every other. `active` are the constraints that count.
 */
export function narrow(nodes: number, constraints: readonly Constraint[], active: readonly number[]): Narrowed {
  const left = new Map<number, readonly DaySpan[]>()
  const reasons = new Map<number, Set<number>>()
  const dropped: Dropped[] = []
  for (const at of active) {
    const constraint = constraints[at]
    left.set(at, constraint?.kind === 'fact' ? constraint.readings : [])
  }
  /** Reasons with what dropped the readings of the facts among them. */
  const closed = (some: readonly number[]) => {
    const all = new Set(some)
    for (const at of some) for (const reason of reasons.get(at) ?? []) all.add(reason)
    return [...all]
  }
  for (;;) {
    const bounds: Bound[] = []
    for (const at of active) {
      const constraint = constraints[at]
      if (constraint !== undefined) addBounds(bounds, constraint, at, left.get(at) ?? [])
    }
    const windows = windowsOf(nodes, bounds)
    if ('ring' in windows) return { conflict: closed(windows.ring) }
    const before = dropped.length
    for (const at of active) {
      const constraint = constraints[at]
      const readings = left.get(at) ?? []
      if (constraint?.kind !== 'fact' || readings.length < 2) continue
      const earliest = windows.earliest[constraint.node] ?? Number.NEGATIVE_INFINITY
      const latest = windows.latest[constraint.node] ?? Number.POSITIVE_INFINITY
      const kept = readings.filter(({ from, to }) => to >= earliest && from <= latest)
      if (kept.length === readings.length) continue
      const own = reasons.get(at) ?? new Set<number>()
      for (const reading of readings.filter((each) => !kept.includes(each))) {
        const path = reading.to < earliest ? windows.earliestBecause : windows.latestBecause
        const because = closed(path(constraint.node))
        dropped.push({ fact: at, reading, because })
        for (const reason of because) own.add(reason)
      }
      reasons.set(at, own)
      if (kept.length === 0) return { conflict: closed([at]) }
      left.set(at, kept)
    }
    if (dropped.length === before) return { windows, dropped }
  }
}
