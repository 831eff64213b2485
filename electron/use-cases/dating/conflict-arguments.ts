import type { TimeLine, TimeLineInput } from '../../../shared-types/dating.ts'
import { timeLine } from '../../analysis/dating/time-line.ts'
import { type ItemSet, meetAlso } from '../../analysis/identity/hitting-sets.ts'
import type { DatedFact, DatedThings, OrderRule } from './dated-things.ts'

type Said = DatedFact | OrderRule

/** Smallest conflicts that one thing would resolve: the shortest of them, and the grounds that would do in its place. */
export interface Argument {
  /** What is given up most readily to resolve it. */
  readonly head: Said
  readonly set: readonly Said[]
  readonly alsoAgainst: readonly Said[]
  /** Smallest ways to resolve all of them, the fewest things first. */
  readonly repairs: readonly (readonly Said[])[]
}

export interface Resolved {
  /** Days with everything that stands: without what is on trial and without what a conflict gives up. */
  readonly line: TimeLine
  readonly arguments: readonly Argument[]
  /** What the days are worked out without, so that the rest can be. */
  readonly setAside: ReadonlySet<string>
  readonly allConflictsFound: boolean
}

/** Smallest conflicts looked for; a date that contradicts all the others makes one with each. */
const MOST_CONFLICTS = 50

/**
 * The days of everything dated, and the conflicts as arguments. All smallest conflicts are found first; those that one
 * and the same thing would resolve are one argument, told by its shortest set, because a date that many grounds contradict
 * is one contradiction and not many. Which things those are is the smallest repair, of equals the one most readily given up.
 * The order in which the facts come does not matter.
 */
export function resolve(things: DatedThings): Resolved {
  const said: readonly Said[] = [...things.facts, ...things.rules].sort((one, other) => (one.id < other.id ? -1 : 1))
  const byId = new Map(said.map((each) => [each.id, each]))
  const tried = timeLine(asked(things, said))
  const sets = tried.conflicts.map((conflict) => conflict.flatMap(({ id }) => byId.get(id) ?? []))
  const heads = repairsOf(sets)[0] ?? []
  const standing = said.filter((each) => !each.onTrial && !heads.includes(each))
  return {
    line: timeLine(asked(things, standing)),
    arguments: argumentsOf(sets, heads),
    setAside: new Set(heads.map(({ id }) => id)),
    allConflictsFound: tried.allConflictsFound,
  }
}

function asked({ events }: DatedThings, said: readonly Said[]): TimeLineInput {
  const isFact = (each: Said): each is DatedFact => 'event' in each
  return {
    events: events.map(({ id, label }) => ({ id, label })),
    facts: said.filter(isFact).map(({ id, event, readings, step }) => ({
      id,
      event,
      label: step.text,
      readings: [...readings],
      source: step.source ?? '',
    })),
    rules: said.flatMap((each) =>
      isFact(each)
        ? []
        : [
            {
              id: each.id,
              before: each.before,
              after: each.after,
              lead: { minDays: each.minDays, maxDays: each.maxDays },
              label: each.step.text,
              source: each.step.source ?? '',
            },
          ],
    ),
    maxConflicts: MOST_CONFLICTS,
  }
}

const readiness = (some: readonly Said[]): number => some.reduce((sum, { givenUp }) => sum + givenUp, 0)

/** All smallest ways to meet every set, the fewest things first, of equals those most readily given up. */
function repairsOf(sets: readonly (readonly Said[])[]): readonly (readonly Said[])[] {
  const items = [...new Set(sets.flat())]
  const numbered = sets.map((set) => set.map((each) => items.indexOf(each)))
  const repairs = numbered.reduce<readonly ItemSet[]>((ways, set) => meetAlso(ways, set), [[]])
  return repairs
    .map((repair) => repair.flatMap((at) => items[at] ?? []))
    .sort((one, other) => one.length - other.length || readiness(one) - readiness(other))
}

function argumentsOf(sets: readonly (readonly Said[])[], heads: readonly Said[]): readonly Argument[] {
  const told = new Set<readonly Said[]>()
  return heads.flatMap((head) => {
    const own = sets
      .filter((set) => set.includes(head) && !told.has(set))
      .sort((one, other) => one.length - other.length || readiness(other) - readiness(one))
    for (const set of own) told.add(set)
    const [set] = own
    if (set === undefined) return []
    const more = [...new Set(own.slice(1).flat())].filter((each) => !set.includes(each))
    return [{ head, set: set.toSorted(byReadiness), alsoAgainst: more.toSorted(byReadiness), repairs: repairsOf(own) }]
  })
}

const byReadiness = (one: Said, other: Said): number => one.givenUp - other.givenUp
