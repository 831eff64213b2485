import type { TimeLine, TimeLineInput, TimeLineReason } from '../../../shared-types/dating.ts'
import { isoDay } from './calendar.ts'
import { conflictsIn } from './date-conflicts.ts'
import { type Constraint, constraintOf, constraintsOf, readingInWords } from './dated-constraints.ts'
import { type Narrowed, type Narrowing, narrowingOf } from './narrowing.ts'

/**
 * Everything dated, together: the days left to each event with the facts and rules that set them, readings that are left
 * no room, and conflicts as smallest sets. With a conflict the days are worked out without its facts (without its rules
 * where it has none), and `setAside` says so.
 */
export function timeLine(input: TimeLineInput): TimeLine {
  const constraints = constraintsOf(input)
  const narrow = narrowingOf(input.events.length, constraints)
  const all = constraints.map((_, at) => at)
  const whole = narrow(all)
  const conflicts =
    'windows' in whole ? { sets: [], complete: true } : conflictsIn(narrow, constraints, input.maxConflicts)
  const aside = new Set(conflicts.sets.flatMap((set) => blamed(set, constraints)))
  const settled = 'windows' in whole ? whole : settle(narrow, constraints, aside)
  const reasonsOf = (some: readonly number[]): TimeLineReason[] => {
    const reasons: TimeLineReason[] = []
    for (const at of some) {
      const reason = constraints[at]?.reason
      if (reason !== undefined) reasons.push(reason)
    }
    return reasons
  }
  const { windows, dropped, because } = settled
  // Readings dropped together were dropped by the same.
  const dropReasons = new Map<readonly number[], TimeLineReason[]>()
  const behind = (way: readonly number[], before: number): TimeLineReason[] => {
    const known = dropReasons.get(way) ?? reasonsOf(because(way, before))
    dropReasons.set(way, known)
    return known
  }
  return {
    consistent: 'windows' in whole,
    events: input.events.map(({ id, label }, at) => ({
      id,
      label,
      from: dayOrOpen(windows.earliest(at + 1)),
      to: dayOrOpen(windows.latest(at + 1)),
      fromBecause: reasonsOf(windows.earliestBecause(at + 1).map(constraintOf)),
      toBecause: reasonsOf(windows.latestBecause(at + 1).map(constraintOf)),
    })),
    droppedReadings: dropped.map(({ fact, reading, way }, at) => ({
      fact: constraints[fact]?.reason.id ?? '',
      reading: readingInWords(reading),
      because: behind(way, at),
    })),
    conflicts: conflicts.sets.map(reasonsOf),
    allConflictsFound: conflicts.complete,
    setAside: reasonsOf([...aside].sort((one, other) => one - other)),
  }
}

const dayOrOpen = (day: number): string | null => (Number.isFinite(day) ? isoDay(day) : null)

/** The facts of a conflict; its rules when it is about nothing but order. */
function blamed(set: readonly number[], constraints: readonly Constraint[]): readonly number[] {
  const facts = set.filter((at) => constraints[at]?.kind === 'fact')
  return facts.length > 0 ? facts : set
}

/** Sets aside more until the rest holds, where not all conflicts were looked for. */
function settle(
  narrow: Narrowing,
  constraints: readonly Constraint[],
  aside: Set<number>,
): Extract<Narrowed, { windows: unknown }> {
  for (;;) {
    const found = narrow([...constraints.keys()].filter((at) => !aside.has(at)))
    if ('windows' in found) return found
    for (const at of blamed(found.conflict, constraints)) aside.add(at)
  }
}
