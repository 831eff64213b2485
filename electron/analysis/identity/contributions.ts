import type { IdentityLiteral } from '../../../shared-types/identity-model.ts'
import type { EvidenceItem } from './evidence.ts'
import { logSum, type Without, withoutEach } from './leave-one-out.ts'
import { type Reasoner, type StatementWeighings, statementWeighings, viewOf } from './reasoner.ts'
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
  /** All evidence against all but this one. Empty when not asked for, as are the doubts. */
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

/** What is wanted beyond the odds. */
interface Wanted {
  /** What each observation and each doubtful fact does, left out in turn. */
  readonly each?: boolean
  /** The same one after the other in the order given, which takes a pass for each. */
  readonly inOrder?: boolean
}

/**
 * Contributions of each observation and each doubtful fact to a statement, in decibans.
 * @param wanted all of them when left out.
 * @throws RangeError when the evidence as a whole is impossible: that is a conflict and has no numbers.
 */
export function contributions(
  reasoner: Reasoner,
  items: readonly EvidenceItem[],
  says: readonly IdentityLiteral[],
  wanted: Wanted = {},
): Contributions {
  const statement = statementWeighings(reasoner, says, 'statement')
  const odds = (some: readonly EvidenceItem[]): Odds => {
    const under = (weighing: Weighing) => viewOf(reasoner, some, weighing)?.logLikelihood ?? IMPOSSIBLE
    return { holds: under(statement.holds), fails: logSum(statement.fails.map(under)) }
  }
  const pieces = wanted.each === false ? null : leftOutInTurn(reasoner, items, statement)
  const all = pieces === null ? odds(items) : pieces.all
  const none = oddsBefore(reasoner, says, () => odds([]))
  if (Math.max(all.holds, all.fails) === IMPOSSIBLE)
    throw new RangeError('The evidence is impossible: ask for its conflicts.')
  let gone = none
  const inOrder = (wanted.inOrder === false ? [] : items).map(({ id }, at) => {
    const now = odds(items.slice(0, at + 1))
    const own = between(id, now, gone)
    gone = now
    return own
  })
  return {
    before: shareOf(none),
    after: shareOf(all),
    total: between('all', all, none),
    leaveOneOut: pieces?.leaveOneOut ?? [],
    inOrder,
    doubts: pieces?.doubts ?? [],
  }
}

/** Odds of statements before anything is seen, by their words: one thing noted after another leaves them as they are. */
const before = new WeakMap<Reasoner, Map<string, Odds>>()

function oddsBefore(reasoner: Reasoner, says: readonly IdentityLiteral[], work: () => Odds): Odds {
  const known = before.get(reasoner) ?? new Map<string, Odds>()
  before.set(reasoner, known)
  const key = JSON.stringify(says)
  const odds = known.get(key) ?? work()
  known.set(key, odds)
  return odds
}

/** Odds of a statement with all evidence, and what each piece of it and each doubtful fact does to them. */
function leftOutInTurn(
  reasoner: Reasoner,
  items: readonly EvidenceItem[],
  statement: StatementWeighings,
): Pick<Contributions, 'leaveOneOut' | 'doubts'> & { readonly all: Odds } {
  const holds = withoutEach(reasoner, items, statement.holds)
  const fails = statement.fails.map((part) => withoutEach(reasoner, items, part))
  const without = (one: (of: Without) => number): Odds => ({ holds: one(holds), fails: logSum(fails.map(one)) })
  const all = without(({ nothing }) => nothing)
  const doing = (id: string, one: (of: Without) => number) => between(id, all, without(one))
  return {
    all,
    leaveOneOut: items.map(({ id }, at) => doing(id, (of) => of.items[at] as number)),
    doubts: [...reasoner.compiled.model.doubtAt.keys()].map((id, at) => doing(id, (of) => of.doubts[at] as number)),
  }
}
