import type { ChainStep, ClaimView, IdentityView, TellStanding, TellText, VariableView } from './identity-view.ts'

/** A because-chain, or null where it was not asked for. */
interface ChainWhenAsked {
  readonly because: readonly ChainStep[] | null
}

export type VariableWeights = Omit<VariableView, 'because'> & ChainWhenAsked
export type ClaimWeights = Omit<ClaimView, 'because'> & ChainWhenAsked

/** Tells of a record's sheets as these describe them. It stays the same while the record holds the same sheets. */
export interface IdentityTells {
  /** The same for the same copies of sheets. */
  readonly sheetsKey: string
  readonly tells: readonly TellText[]
}

/**
 * What the car can still be, without what stays the same from answer to answer and without chains that nobody opened: a
 * page asks for it after every key.
 */
export type IdentityWeights = Omit<IdentityView, 'variables' | 'tells' | 'claims' | 'more'> & {
  /** Of the sheets it was answered by, as in `IdentityTells`. */
  readonly sheetsKey: string
  readonly variables: readonly VariableWeights[]
  /** In the order of the list: those worth most first. */
  readonly tells: readonly TellStanding[]
  readonly claims: readonly ClaimWeights[]
}
