import { figureText } from './figure-text.ts'

/** Thin and unbreakable, between a figure and its unit. */
const THIN = '\u202f'

/** A measured value with its expanded uncertainty: `101.6 ± 0.2 mm (k = 2)`. The sign ± means this and nothing else. */
export const measuredForm = (value: string, uncertainty: string): string => `${value} ± ${uncertainty} (k = 2)`

/** A measured value of which nobody stated how exact it is. */
export const unstatedForm = (value: string): string => `${value}, uncertainty not stated`

/** The least and the most possible: `58 – 71 %`. The long dash between figures means this; equal ends are written once. */
export function boundsForm(low: number, high: number, unit: string): string {
  const ends = low === high ? figureText(low) : `${figureText(low)} – ${figureText(high)}`
  return unit === '' ? ends : `${ends}${THIN}${unit}`
}

/** Said beside bounds where they first stand. */
export const BOUNDS_MEANING = 'bounds: least – most possible; the width is what was not seen or not settled'

/** A figure that has no upper bound, since a gauge was out of range. */
export const leastForm = (figure: string, isOpen: boolean): string => (isOpen ? `at least ${figure}` : figure)
