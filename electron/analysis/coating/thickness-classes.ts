import type { PracticeRange } from '../../../shared-types/coating.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { normalQuantile } from '../statistics/quantiles.ts'
import type { CoatingField } from './drawn-panel.ts'
import { quantileOfSorted } from './field-summary.ts'

/** The car's own film away from repairs, with the standard uncertainty of its median. */
export interface CarFilm {
  readonly medianUm: number
  readonly standardUncertaintyUm: number
}

/** One class over a panel: mean share of the assessed surface, the middle nine tenths of its draws, and the chance at each node. */
export interface ClassShare {
  readonly range: PracticeRange
  readonly share: number
  readonly lowShare: number
  readonly highShare: number
  /** Chance that it covers `PRESENT_SHARE` of the surface or more, and that it covers more than any other. */
  readonly presentChance: number
  readonly largestChance: number
  readonly chance: Float64Array
}

/** Less of a surface than this is not told from none by a few readings. Common practice, no source. */
const PRESENT_SHARE = 0.02

/**
 * Chances of the classes of the trade from the drawn field. What is compared is the thickness above the car's own film, so
 * both the panel's and the car's film go in with their uncertainty. The ranges are guidance and are handed back with their
 * author and date; no class says what is original. Metal that is missing is never concluded from thickness.
 * @throws ProblemError when the first range has a lower end, or the others do not rise.
 */
export function thicknessClasses(
  { drawn, film, readings, weights }: CoatingField,
  car: CarFilm,
  ranges: readonly PracticeRange[],
): ClassShare[] {
  const starts = ranges.map(({ fromAboveFilmUm }) => fromAboveFilmUm ?? Number.NEGATIVE_INFINITY)
  if (
    starts[0] !== Number.NEGATIVE_INFINITY ||
    starts.some((start, at) => at > 0 && start <= (starts[at - 1] as number))
  )
    throw new ProblemError(
      'input-refused',
      'The first range must have no lower end and the others must rise: put them in order.',
      { field: 'ranges' },
    )
  const { draws, nodes, fillerUm } = drawn
  const total = weights.reduce((sum, weight) => sum + weight, 0)
  const offsets = filmOffsets(film.medianUm, film.logDeviation, readings.length, car, draws)
  const shares = ranges.map(() => new Float64Array(draws))
  const chances = ranges.map(() => new Float64Array(nodes))
  for (let node = 0; node < nodes; node += 1)
    for (let d = 0; d < draws; d += 1) {
      const above = (offsets[d] as number) + (fillerUm[node * draws + d] as number)
      let own = 0
      while (own + 1 < starts.length && above >= (starts[own + 1] as number)) own += 1
      const share = shares[own] as Float64Array
      const chance = chances[own] as Float64Array
      share[d] = (share[d] as number) + (weights[node] as number) / total
      chance[node] = (chance[node] as number) + 1 / draws
    }
  const largest = Array.from({ length: draws }, (_, d) =>
    shares.reduce(
      (best, own, at) => ((own[d] as number) > ((shares[best] as Float64Array)[d] as number) ? at : best),
      0,
    ),
  )
  return ranges.map((range, at) => {
    const own = shares[at] as Float64Array
    const sorted = own.toSorted()
    return {
      range,
      share: own.reduce((sum, value) => sum + value, 0) / draws,
      lowShare: quantileOfSorted(sorted, 0.05),
      highShare: quantileOfSorted(sorted, 0.95),
      presentChance: own.filter((value) => value >= PRESENT_SHARE).length / draws,
      largestChance: largest.filter((best) => best === at).length / draws,
      chance: chances[at] as Float64Array,
    }
  })
}

/** Panel's film less the car's, one for each draw: evenly spread quantiles in an order that has nothing to do with the field. */
function filmOffsets(
  medianUm: number,
  logDeviation: number,
  readings: number,
  car: CarFilm,
  draws: number,
): Float64Array {
  /** Standard error of a median of normal values: 1.2533 that of the mean (Kendall and Stuart, The Advanced Theory of Statistics, 10.10). */
  const ownDeviation = (1.2533 * medianUm * logDeviation) / Math.sqrt(readings)
  const deviation = Math.hypot(ownDeviation, car.standardUncertaintyUm)
  const step = coprimeStep(draws)
  return Float64Array.from({ length: draws }, (_, d) => {
    const place = (d * step) % draws
    return medianUm - car.medianUm + deviation * normalQuantile((place + 0.5) / draws)
  })
}

/** A step near the golden share of the count that visits every place once. */
function coprimeStep(count: number): number {
  const common = (a: number, b: number): number => (b === 0 ? a : common(b, a % b))
  let step = Math.max(1, Math.round(count * 0.618))
  while (common(step, count) !== 1) step += 1
  return step
}
