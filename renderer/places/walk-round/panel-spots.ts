import type { Spot } from '../../../shared-types/reading.ts'
import { summaryOf } from '../coating/spot-summary.ts'

/** Most spots named on the small drawing of a panel, and listed under it until all are asked for. */
export const FEW_SPOTS = 12

const LETTERS = 26

/** Letters by which a spot is named on its panel, no two alike: a to z, then aa, ab and so on. */
export function spotLetter(index: number): string {
  const last = String.fromCharCode(97 + (index % LETTERS))
  return index < LETTERS ? last : `${spotLetter(Math.floor(index / LETTERS) - 1)}${last}`
}

/** Numbers of the spots that a small drawing has room to name: all where they are few, otherwise the thickest. */
export function namedSpots(spots: readonly Spot[]): ReadonlySet<number> {
  const thickness = ({ values }: Spot) => summaryOf(values).median?.um ?? Number.NEGATIVE_INFINITY
  const thickest =
    spots.length <= FEW_SPOTS
      ? spots
      : spots
          .map((spot) => ({ spot, um: thickness(spot) }))
          .sort((one, other) => other.um - one.um)
          .slice(0, FEW_SPOTS)
          .map(({ spot }) => spot)
  return new Set(thickest.map(({ number }) => number))
}
