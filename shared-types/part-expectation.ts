import type { SupportInWords } from './support-scale.ts'
import type { PartState } from './words.ts'

/** A value a part could show, with its weight over all cars built and over the builds still possible, shares of 1. */
export interface ExpectedValue {
  readonly id: string
  readonly name: string
  readonly before: number
  readonly now: number
}

/** Support for fitted at the factory against come from the pool, as a range over what is not known of the pool. */
export interface SupportRange {
  readonly low: SupportInWords
  readonly high: SupportInWords
  /** In words of the published scale with its bands: "weak (2 to 10) for the factory". */
  readonly words: string
  /** The ratio itself, or both of its ends: "36 to 1". */
  readonly ratio: string
}

/** Where such parts come from: how often, and what share of them would show what was found. */
export interface PoolSource {
  readonly label: string
  readonly lowPercent: number
  readonly highPercent: number
  readonly matchingPercent: number
  /** As printed. */
  readonly source: string
}

/** One thing the sheets say of a part: what it should show, and what was found. */
export interface PartFact {
  /** `sheet/fact` */
  readonly id: string
  readonly kind: 'tell' | 'number'
  readonly name: string
  /** Heaviest first. What was read on the part and its companions is left out of the weights. */
  readonly values: readonly ExpectedValue[]
  readonly source: string
  /** What was found, in words; null when it was not looked at or says nothing. */
  readonly found: string | null
  /** Follows from the day of building alone: it dates the part, and says nothing of its type. */
  readonly datesOnly: boolean
  /** Percent of cars of the builds still possible that would show it, had the part been fitted at the factory. */
  readonly ifFactoryPercent: number | null
  readonly pool: readonly PoolSource[]
  readonly support: SupportRange | null
}

/** One way to read a date on a part. */
export interface PartDateReading {
  /** The stretch of what was written down that is the date. */
  readonly asRead: string
  readonly from: string
  readonly to: string
  readonly grammar: string
  /** Name of the part the sheet gives the grammar for, where that is another part; null where it is this one. */
  readonly givenFor: string | null
  readonly source: string
  /** Percent of the builds still possible that such a date can belong to; null where no day of building is known. */
  readonly buildsPercent: number | null
  readonly agrees: 'agrees with the build' | 'later than the car' | 'earlier than usual' | 'nothing to compare with'
}

export interface PartReason {
  readonly words: string
  readonly source: string
  readonly speaks: 'for the factory' | 'against the factory' | 'neither'
}

/** Parts that come off a car together, counted once. */
export interface PartGroup {
  readonly words: string
  readonly source: string
  readonly parts: readonly string[]
  readonly support: SupportRange
}

/** What one part should be, what was found of it, and how far that speaks for the factory. */
export interface PartExpectation {
  readonly partId: string
  readonly name: string
  /** False: no sheet of the record says anything of this part. */
  readonly known: boolean
  readonly seen: boolean
  /** What to expect, in a line; empty where no sheet says. */
  readonly expected: string
  readonly facts: readonly PartFact[]
  readonly dates: readonly PartDateReading[]
  /** Dates that no grammar allows, with the reason. */
  readonly impossibleDates: readonly string[]
  /** All facts of the part together; null when none was read. */
  readonly support: SupportRange | null
  readonly group: PartGroup | null
  /** A judgement; the word of the surveyor stands in the register and is never changed by it. */
  readonly suggestion: PartState | null
  readonly written: PartState
  readonly because: readonly PartReason[]
  /** Ids of interchange rows of this part. */
  readonly interchange: readonly string[]
}

export interface PartExpectations {
  /** Why there is no answer, and what to do; null when there is one. */
  readonly problem: string | null
  readonly parts: readonly PartExpectation[]
  /** The published scale with its bands, as a line. */
  readonly scale: string
  readonly notes: readonly string[]
}

/** Whether what was found agrees with a row of interchange. */
export type InterchangeMatch = 'agrees' | 'differs' | 'not seen'

/** Another car that carried the part. */
export interface PartCarrier {
  readonly line: string
  readonly from: string | null
  readonly until: string | null
  readonly altered: string
  readonly toldBy: string
}

/** A part with the cars that carried it, as it stands to this car. */
export interface InterchangeRow {
  /** `sheet/row` */
  readonly id: string
  readonly partId: string
  readonly partName: string
  readonly name: string
  /** Which cars of the sheet it belongs to. */
  readonly on: string
  /** Percent of the builds still possible that it belongs to; null where the sheets cannot be asked. */
  readonly belongsPercent: number | null
  readonly match: InterchangeMatch
  readonly because: string
  readonly carriers: readonly PartCarrier[]
  readonly source: string
}

/** Both together, as the report prints and `assess` tells them. */
export interface PartsReported extends PartExpectations {
  readonly interchange: readonly InterchangeRow[]
}

export interface InterchangeView {
  readonly problem: string | null
  readonly rows: readonly InterchangeRow[]
  /** Every other car the sheets name, for choosing. */
  readonly lines: readonly string[]
}
