import type { DaySpan } from './calendar.ts'
import { bounded, boundsOf, type Constraint, constraintOf } from './dated-constraints.ts'
import { follow, ORIGIN, openDays, ringApart, type Windows, windowsOf } from './temporal-network.ts'

/** A reading of a fact that the rest leaves no room for, and the constraints along the way that ends before or after it. */
interface Dropped {
  readonly fact: number
  readonly reading: DaySpan
  readonly way: readonly number[]
}

/** Days of the events, and the constraints that set them. */
export type Narrowed =
  | { readonly windows: Windows; readonly dropped: readonly Dropped[]; readonly because: Because }
  /** Constraints that cannot all hold; not yet a smallest set. */
  | { readonly conflict: readonly number[] }

/** Constraints with all that dropped readings of the facts among them, before the reading of that number was dropped. */
type Because = (some: readonly number[], before: number) => readonly number[]

/** Narrows by those of the constraints that are named. */
export type Narrowing = (active: readonly number[]) => Narrowed

/**
 * Narrows by turns: days of every event from the hulls of all facts, then the readings of each fact from those days,
 * until nothing changes. A reading is dropped only when it is impossible; one that is kept need not be possible together
 * with every other. The network is laid out once; each turn goes on from the days of the last.
 */
export function narrowingOf(events: number, constraints: readonly Constraint[]): Narrowing {
  const network = boundsOf(events, constraints)
  const everywhere = Array.from({ length: events + 1 }, (_, node) => node)
  return (active) => {
    const days = openDays(network, new Float64Array(2 * constraints.length).fill(Number.POSITIVE_INFINITY))
    const left = new Map<number, readonly DaySpan[]>()
    const dropped: Dropped[] = []
    const bound = (at: number, constraint: Constraint, readings: readonly DaySpan[]) => {
      const { from, to } = bounded(constraint, readings)
      days.atMost[2 * at] = to
      days.atMost[2 * at + 1] = -from
    }
    for (const at of active) {
      const constraint = constraints[at]
      if (constraint === undefined) continue
      const readings = constraint.kind === 'fact' ? constraint.readings : []
      if (readings.length > 1) left.set(at, readings)
      bound(at, constraint, readings)
    }
    let ring = follow(network, days, everywhere) ?? ringApart(network, days)
    for (;;) {
      if (ring !== null) return { conflict: becauseOf(dropped)(ring.map(constraintOf), dropped.length) }
      const windows = windowsOf(network, days)
      const tightened: number[] = []
      for (const [at, readings] of left) {
        const constraint = constraints[at]
        if (constraint?.kind !== 'fact') continue
        const { node } = constraint
        const earliest = windows.earliest[node] ?? Number.NEGATIVE_INFINITY
        const latest = windows.latest[node] ?? Number.POSITIVE_INFINITY
        const kept = readings.filter(({ from, to }) => to >= earliest && from <= latest)
        if (kept.length === readings.length) continue
        // One way ends before all readings that are too early, another after all that are too late.
        let before: readonly number[] | null = null
        let after: readonly number[] | null = null
        for (const reading of readings) {
          if (reading.to < earliest) {
            before ??= windows.earliestBecause(node).map(constraintOf)
            dropped.push({ fact: at, reading, way: before })
          } else if (reading.from > latest) {
            after ??= windows.latestBecause(node).map(constraintOf)
            dropped.push({ fact: at, reading, way: after })
          }
        }
        if (kept.length === 0) return { conflict: becauseOf(dropped)([at], dropped.length) }
        left.set(at, kept)
        bound(at, constraint, kept)
        tightened.push(node)
      }
      if (tightened.length === 0) return { windows, dropped, because: becauseOf(dropped) }
      ring = follow(network, days, [ORIGIN, ...new Set(tightened)])
    }
  }
}

/** What stands behind constraints: with each fact, all that dropped readings of it before the one in question. */
function becauseOf(dropped: readonly Dropped[]): Because {
  const ofFact = new Map<number, number[]>()
  for (const [at, { fact }] of dropped.entries()) ofFact.set(fact, [...(ofFact.get(fact) ?? []), at])
  const known: ReadonlySet<number>[] = []
  const behind = (some: readonly number[], before: number): ReadonlySet<number> => {
    const all = new Set(some)
    for (const at of some)
      for (const drop of ofFact.get(at) ?? []) {
        if (drop >= before) break
        for (const reason of reasonsOf(drop)) all.add(reason)
      }
    return all
  }
  const reasonsOf = (drop: number): ReadonlySet<number> => {
    const found = known[drop] ?? behind(dropped[drop]?.way ?? [], drop)
    known[drop] = found
    return found
  }
  return (some, before) => [...behind(some, before)]
}
