/** A variable and its value, as printed. */
export interface NamedValue {
  readonly variable: string
  readonly value: string
}

/** One whole build with its probability. */
export interface ProbableBuildView {
  readonly share: number
  /** Of the first build what is not all but certain; of the others what differs from the first. */
  readonly values: readonly NamedValue[]
}

/** How many cars were built like this one, by the counts of the sheets. How many are left is not known and not said. */
export interface RarityView {
  /** Null when no source counts any of it. */
  readonly low: number | null
  readonly high: number | null
  /** What “like this” means: what is settled of this car among the things that are counted. */
  readonly like: readonly NamedValue[]
  /** What is counted somewhere and not settled yet of this car, and so is left out. */
  readonly notSettled: readonly string[]
  readonly accounts: readonly {
    readonly source: string
    readonly low: number
    readonly high: number
    readonly all: number
    readonly notCounted: readonly string[]
  }[]
  /** True when counts made apart are joined: then only bounds are known. */
  readonly boundsOnly: boolean
  readonly neverBuilt: boolean
  readonly words: string
}

/** What would settle a claim, and what would have to be granted for it to be true. */
export interface ClaimOutlook {
  readonly claim: number
  /** Tells not yet looked at that would say most about it, best first, with expected bits. */
  readonly settledBy: readonly { readonly tell: string; readonly name: string; readonly bits: number }[]
  /** Null when no build could be so and have shown what was seen. */
  readonly story: {
    /** How far it lies behind the best story of all, in decibans. */
    readonly decibansBehind: number
    readonly argument: readonly string[]
  } | null
}

/** What takes longer to work out than the weights do, and comes after them. */
export interface IdentityMore {
  readonly builds: readonly ProbableBuildView[]
  /** Whether no build outside the list can be more probable than the last of it. */
  readonly proved: boolean
  readonly rarity: RarityView | null
  readonly claims: readonly ClaimOutlook[]
}
