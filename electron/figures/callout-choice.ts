import { inConflict, type StandingCallout } from './callout-conflicts.ts'

/** A place a callout may take, with what it costs there; cheaper is better. */
export interface CalloutPlace extends StandingCallout {
  readonly cost: number
}

/** How often callouts may push others away before those still without a place are left out. */
const MOST_PUSHES = 240
/** Places looked at when others have to make way. */
const LOOKED_AT = 240

/**
 * Chooses a place for each callout from its candidates, given cheapest first. Label placement over a discrete set of
 * candidate positions with costs, as studied by Christensen, Marks and Shieber (An empirical study of algorithms for
 * point-feature label placement, ACM Transactions on Graphics 14(3), 1995): greedily in the given order, so that a
 * callout that comes later moves none before it; then those without a free place push away the fewest others
 * (min-conflicts repair, Minton and others, Artificial Intelligence 58, 1992); then each moves to a better place that has come
 * free (discrete gradient descent, Christensen and others, section 3.2). Answers for each callout its place, null
 * where there is none; no two of the places are in conflict.
 */
export function choosePlaces(candidates: readonly (readonly CalloutPlace[])[]): (CalloutPlace | null)[] {
  const chosen = candidates.map((): CalloutPlace | null => null)
  const clashes = (place: CalloutPlace, but: number): number[] =>
    chosen.flatMap((other, index) => (index !== but && other !== null && inConflict(place, other) ? [index] : []))
  const isFree = (place: CalloutPlace, but: number): boolean =>
    chosen.every((other, index) => index === but || other === null || !inConflict(place, other))
  const pushed = candidates.map(() => 0)
  const waiting: number[] = []
  for (const [index, places] of candidates.entries()) {
    chosen[index] = places.find((place) => isFree(place, index)) ?? null
    if (chosen[index] === null) waiting.push(index)
  }
  for (let push = 0; push < MOST_PUSHES && waiting.length > 0; push++) {
    const index = waiting.shift() ?? 0
    const places = candidates[index] ?? []
    const free = places.find((place) => isFree(place, index))
    if (free !== undefined) {
      chosen[index] = free
      continue
    }
    let best: { place: CalloutPlace; away: number[]; cost: number } | null = null
    for (const place of places.slice(0, LOOKED_AT)) {
      const away = clashes(place, index)
      // Each push makes the same callout dearer to push again, so that two never chase each other for ever.
      const cost = away.reduce((sum, other) => sum + 1 + (pushed[other] ?? 0), 0) + place.cost / 1000
      if (best === null || cost < best.cost) best = { place, away, cost }
    }
    if (best === null) continue
    for (const other of best.away) {
      chosen[other] = null
      pushed[other] = (pushed[other] ?? 0) + 1
      waiting.push(other)
    }
    chosen[index] = best.place
  }
  for (const [index, places] of candidates.entries()) {
    const now = chosen[index] ?? null
    chosen[index] = places.find((place) => place === now || isFree(place, index)) ?? now
  }
  return chosen
}
