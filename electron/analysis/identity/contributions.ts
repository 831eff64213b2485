import type { IdentityLiteral } from '../../../shared-types/identity-model.ts'
import type { EvidenceItem } from './evidence.ts'
import { logSum, type Without, withoutEach } from './leave-one-out.ts'
import { type Reasoner, statementWeighings, viewOf } from './reasoner.ts'
import type { Weighing } from './weighing.ts'

/** What one thing did to the odds of a statement; null when it alone makes the statement certain or impossible. */
export interface Contribution {
  readonly id: string
  readonly decibans: number | null
  readonly decisive: 'for' | 'against' | null
}

export interface Contributions {
  /** Probability of the statement before and after the evidence. */
  readonly before: number
  readonly after: number
  /** All evidence together. */
  readonly total: Contribution
  /** All evidence against all but this one. */
  readonly leaveOneOut: readonly Contribution[]
  /** Each in the order given, on top of those before it; finite ones add up to the total. Empty when not asked for. */
  readonly inOrder: readonly Contribution[]
  /** Each doubtful fact: as doubtful as it is, against not being there at all. */
  readonly doubts: readonly Contribution[]
}

/** Logarithms of the weights of a statement and of its opposite; minus infinity where impossible. */
interface Odds {
  readonly holds: number
  readonly fails: number
}

const IMPOSSIBLE = Number.NEGATIVE_INFINITY
const DECIBANS_PER_UNIT = 10 / Math.LN10

const between = (id: string, more: Odds, less: Odds): Contribution => {
  const change = more.holds - more.fails - (less.holds - less.fails)
  if (Number.isFinite(change)) return { id, decibans: DECIBANS_PER_UNIT * change, decisive: null }
  const settled = (odds: Odds) => (odds.holds > IMPOSSIBLE ? 1 : 0) - (odds.fails > IMPOSSIBLE ? 1 : 0)
  const turned = settled(more) - settled(less)
  // Certain alike with and without: nothing that decibans can say.
  if (turned === 0) return { id, decibans: 0, decisive: null }
  return { id, decibans: null, decisive: turned > 0 ? 'for' : 'against' }
}

const shareOf = ({ holds, fails }: Odds) => 1 / (1 + Math.exp(fails - holds))

/**
 * Contributions of each observation and each doubtful fact to a statement, in decibans.
 * @param alsoInOrder whether those in the order given are wanted too, which takes a pass for each.
 * @throws RangeError when the evidence as a whole is impossible: that is a conflict and has no numbers.
 */
export function contributions(
  reasoner: Reasoner,
  items: readonly EvidenceItem[],
  says: readonly IdentityLiteral[],
  alsoInOrder = true,
): Contributions {
  const statement = statementWeighings(reasoner, says, 'statement')
  const odds = (some: readonly EvidenceItem[]): Odds => {
    const under = (weighing: Weighing) => viewOf(reasoner, some, weighing)?.logLikelihood ?? IMPOSSIBLE
    return { holds: under(statement.holds), fails: logSum(statement.fails.map(under)) }
  }
  const holds = withoutEach(reasoner, items, statement.holds)
  const fails = statement.fails.map((part) => withoutEach(reasoner, items, part))
  const without = (one: (of: Without) => number): Odds => ({ holds: one(holds), fails: logSum(fails.map(one)) })
  const all = without(({ nothing }) => nothing)
  const none = odds([])
  if (Math.max(all.holds, all.fails) === IMPOSSIBLE)
    throw new RangeError('The evidence is impossible: ask for its conflicts.')
  let gone = none
  const inOrder = (alsoInOrder ? items : []).map(({ id }, at) => {
    const now = odds(items.slice(0, at + 1))
    const own = between(id, now, gone)
    gone = now
    return own
  })
  return {
    before: shareOf(none),
    after: shareOf(all),
    total: between('all', all, none),
    leaveOneOut: items.map(({ id }, at) =>
      between(
        id,
        all,
        without((of) => of.items[at] as number),
      ),
    ),
    inOrder,
    doubts: [...reasoner.compiled.model.doubtAt.keys()].map((id, at) =>
      between(
        id,
        all,
        without((of) => of.doubts[at] as number),
      ),
    ),
  }
}
