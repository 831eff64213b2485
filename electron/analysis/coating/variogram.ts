import { distanceTo, type Places } from './covariance.ts'

/** One class of distances of an experimental variogram. */
export interface VariogramClass {
  readonly pairs: number
  readonly distance: number
  readonly gamma: number
}

/**
 * Half the mean squared difference of pairs by classes of distance, lower bound left out and upper included. `classical` is
 * Matheron's (Economic Geology 58 (1963) 1246-1266); `robust` that of Cressie and Hawkins (Mathematical Geology 12 (1980)
 * 115-125): the fourth power of the mean root of differences, divided by 0.457 + 0.494 / pairs. Empty classes are left out.
 */
export function experimentalVariogram(
  places: Places,
  values: Float64Array,
  { cutoff, width, kind }: { cutoff: number; width: number; kind: 'classical' | 'robust' },
): VariogramClass[] {
  const classes = Math.ceil(cutoff / width)
  const pairs = new Float64Array(classes)
  const distances = new Float64Array(classes)
  const sums = new Float64Array(classes)
  for (let one = 1; one < values.length; one += 1)
    for (let other = 0; other < one; other += 1) {
      const distance = distanceTo(places, other, places.x[one] as number, places.y[one] as number)
      const at = Math.max(0, Math.ceil(distance / width) - 1)
      if (distance > cutoff || at >= classes) continue
      const difference = Math.abs((values[one] as number) - (values[other] as number))
      pairs[at] = (pairs[at] as number) + 1
      distances[at] = (distances[at] as number) + distance
      sums[at] = (sums[at] as number) + (kind === 'classical' ? difference * difference : Math.sqrt(difference))
    }
  return Array.from(pairs, (count, at) => {
    const mean = (sums[at] as number) / count
    const gamma = kind === 'classical' ? mean / 2 : mean ** 4 / (0.457 + 0.494 / count) / 2
    return { pairs: count, distance: (distances[at] as number) / count, gamma }
  }).filter(({ pairs: count }) => count > 0)
}
