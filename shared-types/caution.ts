/** Steps of the work that can hurt somebody. */
export type HazardousStep =
  | 'going under the car'
  | 'opening a drum or clutch'
  | 'sanding or cutting'
  | 'near fuel'
  | 'at the battery'
  | 'spraying or flatting two-pack paint'
  | 'handling torn steel'
  | 'handling glass'
  | 'opening a lid or door'
  | 'at a loaded spring'
  | 'cavities and droppings'
  | 'luminous dials'
  | 'charged restraints'

/** A short caution with its public source; local rules and licensed practice come first. Reference data. */
export interface Caution {
  readonly id: string
  readonly text: string
  /** Published source, or "common practice, no source". */
  readonly source: string
  /** Steps at which it is shown. */
  readonly raisedBy: readonly HazardousStep[]
}
