import type { Because, ShareRange, StateShare } from '../../../shared-types/judgement.ts'

/** How one weighed thing answers a question: yes and no were seen, open was not. */
export type Standing = 'yes' | 'no' | 'open'

export interface Weighed {
  readonly weight: number
  readonly standing: Standing
}

const sum = (weights: readonly number[]): number => weights.reduce((total, weight) => total + weight, 0)

/** Share of a whole in per cent; nothing of nothing is 0. */
const share = (part: number, whole: number): number => (whole === 0 ? 0 : Math.min(100, (100 * part) / whole))

/** Least and most a share can be. Low: everything open turns out to be no. High: it all turns out to be yes. */
export function shareBounds(things: readonly Weighed[]): Pick<ShareRange, 'lowPercent' | 'highPercent'> {
  const of = (standing: Standing) => sum(things.map((thing) => (thing.standing === standing ? thing.weight : 0)))
  const whole = sum(things.map((thing) => thing.weight))
  if (whole === 0) return { lowPercent: 0, highPercent: 100 }
  const lowPercent = share(of('yes'), whole)
  return { lowPercent, highPercent: Math.max(lowPercent, 100 - share(of('no'), whole)) }
}

/** A share as bounds, with what they are made of. With nothing to weigh, nothing is known: the bounds are 0 and 100. */
export function shareRange(
  things: readonly Weighed[],
  words: { readonly id: string; readonly label: string; readonly basis: string; readonly because: readonly Because[] },
): ShareRange {
  const of = (standing: Standing) => sum(things.map((thing) => (thing.standing === standing ? thing.weight : 0)))
  const whole = sum(things.map((thing) => thing.weight))
  if (whole === 0) {
    return { ...words, lowPercent: 0, highPercent: 100, seenYesPercent: 0, notSeenPercent: 100, seenNoPercent: 0 }
  }
  return {
    ...words,
    ...shareBounds(things),
    seenYesPercent: share(of('yes'), whole),
    notSeenPercent: share(of('open'), whole),
    seenNoPercent: share(of('no'), whole),
  }
}

/**
 * Share of a surface in each state that occurs, in the order of `states`. What is open may be any of them; the open
 * states themselves are given as they stand.
 */
export function stateShares<State extends string>(
  surfaces: readonly { readonly areaM2: number; readonly state: State }[],
  states: readonly State[],
  openStates: readonly State[],
): readonly StateShare[] {
  const whole = sum(surfaces.map((surface) => surface.areaM2))
  const inState = (state: State) => sum(surfaces.map((surface) => (surface.state === state ? surface.areaM2 : 0)))
  const open = sum(openStates.map(inState))
  return states.flatMap((state) => {
    const areaM2 = inState(state)
    if (areaM2 === 0) return []
    const lowPercent = share(areaM2, whole)
    const highPercent = openStates.includes(state) ? lowPercent : Math.max(lowPercent, share(areaM2 + open, whole))
    return [{ state, lowPercent, highPercent, areaM2 }]
  })
}
