import type { LimitDecision } from './measuring.ts'
import type { TapeKind } from './tape-question.ts'

/** A size the thing may be of: a stud pattern, a nominal size, a value of a tell. */
export interface TapeCandidate {
  readonly label: string
  /** Where it stands: the sheet, the list of patterns, the entry. */
  readonly source: string
  /** How far the measurement is from it, or what it means there, in words. */
  readonly words: string
  /** False when the measurement rules it out. */
  readonly possible: boolean
}

/** What comes of readings by tape or calliper; lengths in words stand in the length unit of the record. */
export interface TapeAnswer {
  readonly kind: TapeKind
  /** The result with its expanded uncertainty. */
  readonly headline: string
  /** Coverage, factor and degrees of freedom of that uncertainty (JCGM 100:2008). */
  readonly coverage: string
  /** Against limits by ISO 14253-1; null where there are none. */
  readonly decision: LimitDecision | null
  /** What the decision or the candidates come to, in sentences; empty where there is nothing to decide. */
  readonly verdict: string
  readonly candidates: readonly TapeCandidate[]
  readonly lines: readonly { readonly label: string; readonly words: string }[]
  /** What the result does not say. */
  readonly notes: readonly string[]
  /** As it is kept: value and uncertainty (k = 2) in millimetres, rounded by the uncertainty. */
  readonly kept: {
    readonly valueMm: number
    readonly uncertaintyMm: number
    readonly standardUncertaintyMm: number
    readonly method: string
  }
}

/** A measurement of the record worked out again from what was read. */
export interface KeptTape {
  readonly exhibit: number
  readonly what: string
  readonly answer: TapeAnswer
  /** Caption and method of the exhibit: in the units of the record where the program wrote them, else as they were written. */
  readonly caption: string
  readonly method: string
  /** True where the caption is the program's own words of this result, in whichever unit it was written. */
  readonly captionIsOwn: boolean
}
