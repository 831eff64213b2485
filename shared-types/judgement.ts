import type { WeightFound } from './own-weight.ts'

/** What stands behind one step of a conclusion. */
export type SentenceSort =
  | 'seen'
  | 'felt'
  | 'measured'
  | 'computed'
  | 'told'
  | 'inferred'
  | 'not determined'
  | 'not inspected'
  | 'not accessible'

/** Points to a row of the record: finding "3", exhibit "12", panel "roof-skin". */
export interface Reference {
  readonly kind: 'finding' | 'exhibit' | 'panel' | 'part' | 'spot' | 'claim' | 'correction' | 'carNumber' | 'gauge'
  readonly key: string
}

/** One line of a because-chain. */
export interface Because {
  readonly text: string
  readonly sort: SentenceSort
  readonly references: readonly Reference[]
  /** Published source or practice the step rests on; null for a plain observation. */
  readonly source: string | null
}

/** A share as bounds: least and most possible, printed `low – high %`; the width is what was not seen. */
export interface ShareRange {
  readonly id: string
  readonly label: string
  /** What was counted: "by area, 9.86 m²", "41 of 52 parts seen". */
  readonly basis: string
  readonly lowPercent: number
  readonly highPercent: number
  readonly seenYesPercent: number
  readonly notSeenPercent: number
  readonly seenNoPercent: number
  readonly because: readonly Because[]
}

/** One metal or paint state's share of a surface, again as bounds. */
export interface StateShare {
  readonly state: string
  readonly lowPercent: number
  readonly highPercent: number
  readonly areaM2: number
}

export interface AreaJudgement {
  readonly id: string
  readonly label: string
  readonly areaM2: number
  readonly seenAreaM2: number
  readonly panels: number
  readonly panelsSeen: number
  readonly metal: readonly StateShare[]
  readonly paint: readonly StateShare[]
  readonly originalMetal: ShareRange
  readonly factoryPaint: ShareRange
}

export interface OpenQuestion {
  readonly text: string
  readonly references: readonly Reference[]
  readonly wouldSettle: string
}

export interface LookNext {
  readonly panelId: string | null
  readonly what: string
  readonly why: string
}

/** What settling one thing would leave of a range. Both ways it is narrower by the same. */
export interface NarrowedRange {
  readonly range: 'original metal' | 'factory finish' | 'parts'
  /** By how many points of a hundred the range becomes narrower. */
  readonly points: number
  readonly now: Bounds
  readonly ifYes: Bounds
  readonly ifNo: Bounds
}
/** Shares of the whole car without the user's weights. */
export interface Unweighed {
  readonly originalMetal: Bounds
  readonly factoryPaint: Bounds
  readonly parts: Bounds | null
}
type Bounds = Pick<ShareRange, 'lowPercent' | 'highPercent'>

/** A panel or part that is not settled, with what settling it would do to the ranges. */
export interface WouldNarrow {
  readonly reference: Reference
  readonly label: string
  /** Why it is open, and how to look. */
  readonly how: string
  readonly narrows: readonly NarrowedRange[]
  /** Greatest of the narrowings. */
  readonly mostPoints: number
}

export interface Coverage {
  readonly layer: 'outer' | 'inner' | 'under'
  readonly seen: number
  readonly notAccessible: number
  readonly walked: number
  readonly all: number
}

/** First form of the judgement: bounds by area and by count, open questions, what to look at next. */
export interface Judgement {
  readonly coverage: readonly Coverage[]
  readonly whole: AreaJudgement
  readonly areas: readonly AreaJudgement[]
  readonly panels: readonly AreaJudgement[]
  readonly parts: readonly ShareRange[]
  readonly openQuestions: readonly OpenQuestion[]
  readonly lookNext: readonly LookNext[]
  /** Everything open, greatest narrowing first. */
  readonly wouldNarrow: readonly WouldNarrow[]
  /** What each thing weighs, and on what basis, in words. */
  readonly weights: string
  /** Weights the user set, with who set them and when. */
  readonly weightsSet: readonly WeightFound[]
  /** The shares without them; null where none is set. */
  readonly unweighed: Unweighed | null
}
