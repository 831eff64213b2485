import type { ExpectedValue } from '../../../shared-types/part-expectation.ts'
import { misreadRows } from '../../sheets/reference/tell-readings.ts'
import { noComplaint, type TellOnPart } from './part-facts.ts'

type Shares = readonly number[]
type ByValue = Readonly<Record<string, number>>

/** Shares of a tell's own values from those of its variable: a mixture is shared out among the values it is made of. */
export function ownShares({ tell }: TellOnPart, byVariable: ByValue): Shares {
  return tell.values.map(({ id }, at) =>
    [...tell.mixtures].reduce(
      (sum, [mixture, shares]) => sum + (byVariable[mixture] ?? 0) * (shares[at] ?? 0),
      byVariable[id] ?? 0,
    ),
  )
}

/** Chance of what was noted when the part shows values by these shares: misread as the sheet says, nothing else. */
export function chanceOfSeen({ tell, seen }: TellOnPart, shown: Shares): number {
  const rows = misreadRows(
    tell.tell,
    tell.values.map(({ id }) => id),
    noComplaint,
  )
  return tell.values.reduce((sum, { id }, read) => {
    const weight = seen?.[id] ?? 0
    return sum + weight * shown.reduce((chance, share, value) => chance + share * (rows?.[value]?.[read] ?? 0), 0)
  }, 0)
}

/** Chance of what was noted where a part fitted in service, or off a donor, shows values by these shares. */
export const chanceFitted = (fact: TellOnPart, by: ByValue): number =>
  chanceOfSeen(
    fact,
    fact.tell.values.map(({ id }) => by[id] ?? 0),
  )

/** Chance of what was noted had the factory fitted the part: on a share of cars a tell has nothing to do with the build. */
export function chanceIfFactory(fact: TellOnPart, shown: Shares): number {
  const { wrong } = fact.tell.tell
  const anything = Object.values(fact.seen ?? {}).reduce((sum, weight) => sum + weight, 0) / fact.tell.values.length
  return (1 - wrong) * chanceOfSeen(fact, shown) + wrong * anything
}

/** Values expected, the heaviest first; those that cannot be are left out unless they were read. */
export function expectedValues(fact: TellOnPart, before: Shares, now: Shares): readonly ExpectedValue[] {
  return fact.tell.values
    .map(({ id, name }, at) => ({ id, name, before: before[at] ?? 0, now: now[at] ?? 0 }))
    .filter(({ id, before: prior, now: own }) => prior > 0 || own > 0 || (fact.seen?.[id] ?? 0) > 0)
    .toSorted((one, other) => other.now - one.now)
}
