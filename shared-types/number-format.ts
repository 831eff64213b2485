import type { NumberCheck } from './dating.ts'

/** A number of 17 characters of the record against 49 CFR part 565. */
export interface NumberChecked {
  /** Rows of the record that bear it. */
  readonly rows: readonly number[]
  readonly text: string
  readonly from: 'as read' | 'on paper'
  readonly checks: readonly NumberCheck[]
  /** Years position 10 can mean. */
  readonly modelYears: readonly number[]
  readonly makerCode: string | null
  readonly lowVolumeMaker: boolean | null
  /** Numbers that fill what could not be read, the first of them where there are many. */
  readonly completions: readonly string[]
  /** How many there are, in figures. */
  readonly completionCount: string
}

/** What the format of 17 characters says of the numbers of a record. */
export interface NumberFormat {
  /** Whether the format concerns this car at all, and by what. */
  readonly applies: string
  readonly numbers: readonly NumberChecked[]
}
