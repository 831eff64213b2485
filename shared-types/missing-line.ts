import type { Reference } from './judgement.ts'

/** Where something is entered: the form of a row, or one there is a single one of, and the field of it. */
export interface EntryPoint {
  readonly kind: Reference['kind'] | 'commission' | 'particulars' | 'visit' | 'gaugeCheck' | 'spotReading'
  /** The row; of a gauge check its gauge. Empty for a row to be added, and where there is a single one. */
  readonly key: string
  /** Name of the field in the draft; left out where none is named. */
  readonly field?: string
}

/** A line a report must carry, what the record lacks for it, and where in the program to give it. */
export interface MissingLine {
  readonly line: string
  readonly missing: string
  /** Name of the place of the rail. */
  readonly place: string
  /** The entry of that place; the first where several lack it. */
  readonly at: EntryPoint
}
