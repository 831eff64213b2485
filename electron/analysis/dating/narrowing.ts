import type { DaySpan } from './calendar.ts'
import { boundsOf, type Constraint, constraintOf } from './dated-constraints.ts'
import { follow, ORIGIN, openDays, ringApart, type Windows, windowsOf } from './temporal-network.ts'

/** A reading of a fact that the rest leaves no room for, and the constraints along the way that ends before or after it. */
interface Dropped {
  readonly fact: number
  readonly reading: DaySpan
  /** One and the same for all readings dropped together. */
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

/** All readings of all facts side by side: those of constraint n are `first[n]` to before `first[n + 1]`. */
interface Readings {
  readonly first: Int32Array
  readonly from: Float64Array
  readonly to: Float64Array
}

function readingsOf(constraints: readonly Constraint[]): Readings {
  const first = new Int32Array(constraints.length + 1)
  let all = 0
  for (const [at, constraint] of constraints.entries()) {
    if (constraint.kind === 'fact') all += constraint.readings.length
    first[at + 1] = all
  }
  const [from, to] = [new Float64Array(all), new Float64Array(all)]
  for (const [at, constraint] of constraints.entries()) {
    if (constraint.kind === 'rule') continue
    let reading = first[at] ?? 0
    for (const days of constraint.readings) {
      from[reading] = days.from
      to[reading] = days.to
      reading += 1
    }
  }
  return { first, from, to }
}

/** What each constraint bounds before any reading is dropped. */
function wholeBounds(constraints: readonly Constraint[], readings: Readings): Float64Array {
  const atMost = new Float64Array(2 * constraints.length)
  const none = new Uint8Array(readings.from.length)
  for (const [at, constraint] of constraints.entries()) {
    if (constraint.kind === 'fact') boundByReadings(atMost, readings, none, at)
    else {
      atMost[2 * at] = constraint.lead.to
      atMost[2 * at + 1] = -constraint.lead.from
    }
  }
  return atMost
}

/**
 * Narrows by turns: days of every event from the hulls of all facts, then the readings of each fact from those days,
 * until nothing changes. A reading is dropped only when it is impossible; one that is kept need not be possible together
 * with every other. The network is laid out once; each turn goes on from the days of the last.
 */
export function narrowingOf(events: number, constraints: readonly Constraint[]): Narrowing {
  const network = boundsOf(events, constraints)
  const readings = readingsOf(constraints)
  const whole = wholeBounds(constraints, readings)
  const everywhere = Array.from({ length: events + 1 }, (_, node) => node)
  return (active) => {
    const days = openDays(network, new Float64Array(whole.length).fill(Number.POSITIVE_INFINITY))
    const gone = new Uint8Array(readings.from.length)
    const dropped: Dropped[] = []
    const open: number[] = []
    for (const at of active) {
      days.atMost[2 * at] = whole[2 * at] ?? Number.POSITIVE_INFINITY
      days.atMost[2 * at + 1] = whole[2 * at + 1] ?? Number.POSITIVE_INFINITY
      if ((readings.first[at + 1] ?? 0) - (readings.first[at] ?? 0) > 1) open.push(at)
    }
    let ring = follow(network, days, everywhere) ?? ringApart(network, days)
    for (;;) {
      if (ring !== null) return { conflict: becauseOf(dropped)(ring.map(constraintOf), dropped.length) }
      const windows = windowsOf(network, days)
      const tightened = new Set<number>()
      for (const at of open) {
        const constraint = constraints[at]
        if (constraint?.kind !== 'fact' || !dropReadings({ at, constraint, readings, gone, windows, dropped })) continue
        if (!boundByReadings(days.atMost, readings, gone, at))
          return { conflict: becauseOf(dropped)([at], dropped.length) }
        tightened.add(constraint.node)
      }
      if (tightened.size === 0) return { windows, dropped, because: becauseOf(dropped) }
      ring = follow(network, days, [ORIGIN, ...tightened])
    }
  }
}

/** Bounds a fact by the days from the first of its readings left to the last; false where none is left. */
function boundByReadings(atMost: Float64Array, { first, from, to }: Readings, gone: Uint8Array, at: number): boolean {
  let earliest = Number.POSITIVE_INFINITY
  let latest = Number.NEGATIVE_INFINITY
  const end = first[at + 1] ?? 0
  for (let reading = first[at] ?? 0; reading < end; reading += 1) {
    if (gone[reading] === 1) continue
    earliest = Math.min(earliest, from[reading] ?? earliest)
    latest = Math.max(latest, to[reading] ?? latest)
  }
  atMost[2 * at] = latest
  atMost[2 * at + 1] = -earliest
  return latest >= earliest
}

interface Dropping {
  readonly at: number
  readonly constraint: Extract<Constraint, { kind: 'fact' }>
  readonly readings: Readings
  readonly gone: Uint8Array
  readonly windows: Windows
  readonly dropped: Dropped[]
}

/** Drops the readings of one fact that lie outside its window; true where any does. */
function dropReadings({ at, constraint, readings, gone, windows, dropped }: Dropping): boolean {
  const { node } = constraint
  const earliest = windows.earliest(node)
  const latest = windows.latest(node)
  const start = readings.first[at] ?? 0
  const end = readings.first[at + 1] ?? 0
  // One way ends before all readings that are too early, another after all that are too late.
  let before: readonly number[] | null = null
  let after: readonly number[] | null = null
  for (let place = start; place < end; place += 1) {
    if (gone[place] === 1) continue
    const early = (readings.to[place] ?? earliest) < earliest
    if (!early && !((readings.from[place] ?? latest) > latest)) continue
    if (early) before ??= windows.earliestBecause(node).map(constraintOf)
    else after ??= windows.latestBecause(node).map(constraintOf)
    const [reading, way] = [constraint.readings[place - start], early ? before : after]
    if (reading !== undefined && way !== null) dropped.push({ fact: at, reading, way })
    gone[place] = 1
  }
  return before !== null || after !== null
}

/** What stands behind constraints: with each fact, all that dropped readings of it before the one in question. */
function becauseOf(dropped: readonly Dropped[]): Because {
  const ofFact = new Map<number, number[]>()
  for (const [at, { fact }] of dropped.entries()) {
    const known = ofFact.get(fact)
    if (known === undefined) ofFact.set(fact, [at])
    else known.push(at)
  }
  // A way sets the days of a fact from outside it, so that all readings dropped together have the same behind them.
  const known = new Map<readonly number[], ReadonlySet<number>>()
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
    const way = dropped[drop]?.way ?? []
    const found = known.get(way) ?? behind(way, drop)
    known.set(way, found)
    return found
  }
  return (some, before) => [...(known.get(some) ?? behind(some, before))]
}
