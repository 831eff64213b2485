import type { SettledQuestion } from './identity-asking.ts'
import type { IdentityMore } from './identity-more.ts'
import type { Observation } from './observation.ts'
import type { SheetSketch } from './reference-fact.ts'

/** A reference sheet shipped with the program or taken into the record. */
export interface OfferedSheet {
  /** `own`: one of the user's own, taken by `name`. */
  readonly from: 'program' | 'own'
  readonly name: string
  readonly sheetId: string
  readonly title: string
  readonly edition: string
  readonly about: string
  /** `another edition`: the record holds one of that name with other bytes. */
  readonly inRecord: 'no' | 'this one' | 'another edition'
}

/** A value of a variable with its weight before anything was seen and now, as shares of 1. */
export interface ValueWeight {
  readonly id: string
  readonly name: string
  readonly before: number
  readonly now: number
}

/** What one variable can still be. `span`: for dates, days that hold nine tenths of the weight. */
export interface VariableView {
  readonly key: string
  readonly name: string
  readonly kind: 'choice' | 'dates'
  readonly values: readonly ValueWeight[]
  readonly span: { readonly from: string; readonly to: string } | null
  /** What speaks for its likeliest value, largest first. */
  readonly because: readonly ChainStep[]
  /** Odds of its likeliest value before anything was seen, in decibans; null where that was settled already. */
  readonly startDecibans: number | null
  /** Where sources that count the cars disagree about it: the weights under each alone, in the order of `values`. */
  readonly bySource: readonly SourceWeights[]
}

/** Weights of a variable's values under one source alone; null where what was seen is impossible under it. */
export interface SourceWeights {
  readonly source: string
  /** Share of belief in the source once everything seen is in. */
  readonly belief: number
  readonly shares: readonly number[] | null
}

/** What one thing does to the odds of a conclusion, in decibans; null where it alone settles it. */
export interface ChainStep {
  readonly id: string
  readonly words: string
  /** As printed: who, where, page, how it is known. */
  readonly source: string
  readonly decibans: number | null
  readonly decisive: 'for' | 'against' | null
  /** Exhibits the observation rests on. */
  readonly exhibits: readonly number[]
  /** Whether without it alone the conclusion would turn: what is likelier than not would be so no longer, or the reverse. */
  readonly overturns: boolean
}

/** One answer to a tell. `measure`: what one measures when it is this value, with its standard deviation. */
export interface TellValueView {
  readonly id: string
  readonly name: string
  readonly looks: string
  readonly measure: { readonly mean: number; readonly standardDeviation: number } | null
  readonly sketch: SheetSketch | null
}

/** Something to look at, as its sheet describes it: the same in every answer. */
export interface TellText {
  readonly key: string
  readonly name: string
  readonly lookAt: string
  readonly how: string
  readonly where: string
  readonly panels: readonly string[]
  readonly effort: number
  readonly access: string
  readonly caution: string
  readonly source: string
  readonly unit: string | null
  readonly values: readonly TellValueView[]
  readonly sketch: SheetSketch | null
}

/** What one answer says of a tell: what it would settle, and what was noted of it. */
export interface TellStanding {
  readonly key: string
  /** Expected bits it would settle of what is asked; null for one already looked at, and where nothing was inferred. */
  readonly bits: number | null
  /** Bits by effort and access, on the program's own scale. */
  readonly worth: number | null
  /** The number its marks were read with; null when they were not. */
  readonly toldBy: string | null
  readonly observation: Observation | null
}

/** Something to look at, and what it would settle. */
export interface TellView extends TellText, TellStanding {}

/** A claim put to the test against everything seen. */
export interface ClaimView {
  readonly claim: number
  readonly before: number
  readonly after: number
  readonly likelihoodRatio: number | null
  readonly decibans: number | null
  /** Step of the ENFSI 2015 scale, and for which side. */
  readonly words: string
  readonly speaks: 'for' | 'against' | 'neither'
  readonly verdict: 'supported' | 'contradicted' | 'not settled'
  readonly because: readonly ChainStep[]
}

/** Things that cannot all be so, and what would have to be wrong, the smallest ways first. */
export interface ConflictView {
  readonly cannotAllBe: readonly { readonly words: string; readonly source: string }[]
}

/** One of the looks worth most now, for every place of the program. */
export interface NextLook {
  readonly tell: string
  readonly name: string
  /** Why: what to look at, and what it would settle. */
  readonly reason: string
}

/** A number on the car as a sheet reads it. */
export interface NumberReadView {
  /** Rows of the record that read alike. */
  readonly rows: readonly number[]
  /** Parts it was read on, where the list of numbers does not have it. */
  readonly parts: readonly string[]
  /** What number it is, by the sheet. */
  readonly name: string
  readonly asRead: string
  /** Place by place what it says of the car; empty where it does not have the form. */
  readonly says: readonly string[]
  /** Why it does not have the form, and what would give it one. */
  readonly why: string | null
  readonly wouldFit: readonly string[]
  /** False where it is so unlike the form that it says nothing. */
  readonly counts: boolean
  /** Tells read off the same marks, which are not counted beside it. */
  readonly standsFor: readonly string[]
  readonly source: string
}

/** What the car can still be. `problem` says why there is no answer, and what to do. */
export interface IdentityView {
  readonly sheets: readonly { readonly sheetId: string; readonly title: string; readonly edition: string }[]
  readonly problem: string | null
  readonly legalBuilds: string
  readonly buildsLeft: string
  readonly variables: readonly VariableView[]
  readonly tells: readonly TellView[]
  readonly numbers: readonly NumberReadView[]
  readonly claims: readonly ClaimView[]
  readonly conflicts: readonly ConflictView[]
  readonly repairs: readonly (readonly string[])[]
  /** What the bits are bits of. */
  readonly question: SettledQuestion
  /** Null where it was not asked for: it comes after the weights. */
  readonly more: IdentityMore | null
  readonly scale: string
}
