import type { IdentityQuestion } from '../../../shared-types/identity-model.ts'
import { entropyBits } from './decibans.ts'
import type { IndexedTell } from './identity-model.ts'
import { type GroupPart, type GroupShares, type Groups, groupsOf, jointShares, type Wanted } from './joint-shares.ts'
import { mixedMarginals } from './posterior.ts'
import type { AccountView, Reasoner, View } from './reasoner.ts'
import { tellLikelihood } from './tell-likelihood.ts'

/** What reading one tell once is worth for a question. */
export interface TellWorth {
  readonly tell: string
  /** Expected drop of the question's entropy. */
  readonly bits: number
  readonly effort: number
  readonly bitsPerEffort: number
  /** Outcomes with the probability to be seen. */
  readonly outcomes: { readonly [outcome: string]: number }
}

export interface Worths {
  /** Entropy of the question now; null for the whole build, which is not spelled out. */
  readonly entropyBits: number | null
  /** Greatest worth per effort first. */
  readonly tells: readonly TellWorth[]
}

/**
 * Expected drop of entropy (Lindley, Ann. Math. Statist. 27 (1956) 986-1005) by each tell not yet read, given everything
 * seen: entropy of the outcomes less their entropy within each group of the question. A donor counts as part of the build.
 */
export function valueOfInformation(
  reasoner: Reasoner,
  view: View,
  question: IdentityQuestion,
  alreadyRead: ReadonlySet<string>,
): Worths {
  const { model } = reasoner.compiled
  const tells = model.tells.filter(({ tell }) => !alreadyRead.has(tell.id))
  const readings = tells.map((own) => ({ own, ...tellLikelihood(own, model) }))
  const wanted: Wanted = {
    variables: new Set(tells.map(({ variable }) => variable)),
    tables: new Set(tells.flatMap(({ donor }) => (donor === null ? [] : [donor.table]))),
  }
  const groups = groupsOf(reasoner, question)
  const { chances, groupShares } = outcomeChances(reasoner, view, groups, readings, wanted)
  const { mixed } = mixedMarginals(reasoner, view)
  const worths = readings.map(({ own, outcomes }, at): TellWorth => {
    const { whole, within } = chances[at] as Chances
    const bits = Math.max(0, entropyBits(whole) - within.reduce((sum, group) => sum + weighedEntropy(group), 0))
    return {
      tell: own.tell.id,
      bits,
      effort: own.tell.effort,
      bitsPerEffort: bits / own.tell.effort,
      outcomes: Object.fromEntries(outcomes.map((outcome, each) => [outcome, whole[each] as number])),
    }
  })
  return {
    entropyBits: questionEntropy(groups, mixed, groupShares),
    tells: worths.sort((one, other) => other.bitsPerEffort - one.bitsPerEffort),
  }
}

interface Reading {
  readonly own: IndexedTell
  readonly outcomes: readonly string[]
  readonly byKind: readonly (readonly Float64Array[])[]
}

/** Probability of each outcome, overall and jointly with each group. */
interface Chances {
  readonly whole: Float64Array
  readonly within: readonly Float64Array[]
}

/** Entropy of the outcomes within a group, times the group's probability. */
function weighedEntropy(joint: Float64Array): number {
  const share = joint.reduce((sum, each) => sum + each, 0)
  return share > 0 ? share * entropyBits(joint.map((each) => each / share)) : 0
}

/** Adds to `into` the probability of each outcome, from probabilities of the values (or of the cells of donor and value). */
function addOutcomes(into: Float64Array, { own, byKind }: Reading, shares: GroupShares): void {
  const cells = own.donor === null ? shares.values[own.variable] : shares.labels[own.donor.table]
  const rows = byKind.flat()
  cells?.forEach((share, cell) => {
    if (share === 0) return
    const row = rows[cell] as Float64Array
    for (let outcome = 0; outcome < row.length; outcome++)
      into[outcome] = (into[outcome] as number) + share * (row[outcome] as number)
  })
}

/** Under one account: by reading the probability of each outcome jointly with a group, and the group's own. */
interface GroupChances {
  readonly outcomes: readonly Float64Array[]
  readonly share: number
}

function outcomeChances(
  reasoner: Reasoner,
  view: View,
  groups: Groups,
  readings: readonly Reading[],
  wanted: Wanted,
): { readonly chances: readonly Chances[]; readonly groupShares: readonly number[] } {
  const live = view.accounts.filter(({ share }) => share > 0)
  const sharesOf = (account: AccountView, group: GroupPart | null) => jointShares(reasoner, account, group, wanted)
  const chancesOf = (pieces: readonly GroupShares[]): GroupChances => ({
    share: pieces.reduce((sum, { values }) => sum + (values[0]?.reduce((own, share) => own + share, 0) ?? 0), 0),
    outcomes: readings.map((reading) => {
      const into = new Float64Array(reading.outcomes.length)
      for (const piece of pieces) addOutcomes(into, reading, piece)
      return into
    }),
  })
  const wholes = live.map((account) => sharesOf(account, null))
  const mixed = mix(
    live,
    wholes.map((whole) => chancesOf([whole])),
    () => 1,
  )
  const byAccount = live.map((account) =>
    groups.through.map((pieces) => chancesOf(pieces.map((piece) => sharesOf(account, piece)))),
  )
  const each = groups.through.flatMap((_, group) => {
    const own = byAccount.map((chances) => chances[group] as GroupChances)
    return partsOf(reasoner, groups, group, live).map((part) => mix(live, own, (at) => part[at] as number))
  })
  const chances = readings.map((reading, at): Chances => {
    const { own } = reading
    const whole = mixed.outcomes[at] as Float64Array
    // The whole build, or the very variable the tell shows: its values, one by one, are the groups.
    if (groups.through.length > 0 && (groups.variable !== own.variable || own.donor !== null))
      return { whole, within: each.map(({ outcomes }) => outcomes[at] as Float64Array) }
    const rows = reading.byKind.flat()
    const within = rows.map((row, cell) => {
      const share = live.reduce((sum, account, place) => {
        const { values, labels } = wholes[place] as GroupShares
        return (
          sum + account.share * ((own.donor === null ? values[own.variable] : labels[own.donor.table])?.[cell] ?? 0)
        )
      }, 0)
      return row.map((chance) => share * chance)
    })
    return { whole, within }
  })
  return { chances, groupShares: each.map(({ share }) => share) }
}

/** Parts a group must be taken in, each as its share of the group by account: the values of a class where accounts differ. */
function partsOf(
  { compiled }: Reasoner,
  { variable }: Groups,
  group: number,
  live: readonly AccountView[],
): readonly (readonly number[])[] {
  const members = compiled.classes[variable]?.members[group]
  if (members === undefined || members.length < 2 || live.length < 2) return [live.map(() => 1)]
  const weights = live.map(({ weighing }) => weighing.values[variable] as Float64Array)
  const sums = weights.map((own) => members.reduce((sum, value) => sum + (own[value] as number), 0))
  return Array.from(members, (value) =>
    weights.map((own, at) => ((sums[at] as number) > 0 ? (own[value] as number) / (sums[at] as number) : 0)),
  )
}

/** Accounts weighed by their shares, and a part of each. */
function mix(
  live: readonly AccountView[],
  chances: readonly GroupChances[],
  part: (at: number) => number,
): GroupChances {
  const first = chances[0]?.outcomes ?? []
  const factors = live.map(({ share }, at) => share * part(at))
  return {
    share: factors.reduce((sum, factor, at) => sum + factor * (chances[at]?.share ?? 0), 0),
    outcomes: first.map((own, reading) =>
      own.map((_, outcome) =>
        factors.reduce((sum, factor, at) => sum + factor * (chances[at]?.outcomes[reading]?.[outcome] ?? 0), 0),
      ),
    ),
  }
}

function questionEntropy(
  groups: Groups,
  mixed: readonly Float64Array[],
  groupShares: readonly number[],
): number | null {
  if (groups.variable >= 0) return entropyBits(mixed[groups.variable] as Float64Array)
  return groups.through.length === 0 ? null : entropyBits(groupShares)
}
