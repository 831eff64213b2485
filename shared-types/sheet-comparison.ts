import type { ClaimView } from './identity-view.ts'

/** What taking another edition of a sheet would change in a record's conclusions. Weights are shares of 1. */
export interface SheetComparison {
  readonly sheetId: string
  readonly title: string
  /** Edition the record holds; null when it holds none. */
  readonly editionBefore: string | null
  readonly editionAfter: string
  /** The record holds these very bytes. */
  readonly same: boolean
  /** Why there is no conclusion before, or after; null where there is one. */
  readonly problemBefore: string | null
  readonly problemAfter: string | null
  readonly legalBuilds: { readonly before: string; readonly after: string }
  readonly buildsLeft: { readonly before: string; readonly after: string }
  /** Variables with a value whose weight changes by half a percent or more; null where an edition does not have the value. */
  readonly variables: readonly {
    readonly key: string
    readonly name: string
    readonly values: readonly { readonly name: string; readonly before: number | null; readonly after: number | null }[]
  }[]
  /** Every claim put to the test by either; null where the sheets say nothing of it. */
  readonly claims: readonly {
    readonly claim: number
    readonly words: string
    readonly before: Pick<ClaimView, 'verdict' | 'decibans'> | null
    readonly after: Pick<ClaimView, 'verdict' | 'decibans'> | null
  }[]
  /** Tells looked at that the other edition does not have, or has without the value seen: what was noted of them would say nothing. */
  readonly lost: readonly string[]
}
