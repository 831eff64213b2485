/** A line a report must carry, what the record lacks for it, and where in the program to give it. */
export interface MissingLine {
  readonly line: string
  readonly missing: string
  /** Name of the place of the rail. */
  readonly place: string
}
