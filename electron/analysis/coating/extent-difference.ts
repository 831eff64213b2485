import { seededDraw } from '../sampling/seeded-draws.ts'
import { shuffled } from '../sampling/shuffled.ts'
import type { ExtentQuestion } from './extent-answer.ts'
import { quantileOfSorted } from './field-summary.ts'
import { drawnInterval, evidenceOf, grainOf, type Interval, shiftsFor } from './interval-calibration.ts'
import type { Extent } from './interval-shifts.ts'

/** One of two maps of a panel: its draws of an extent, and what they rest on. */
export interface MappedExtent {
  readonly draws: Float64Array
  readonly question: ExtentQuestion
}

/**
 * Later less earlier, mm2 or mm3. The maps rest on readings of their own, so their draws are paired at random; each is moved
 * out first as the ends of its own interval are.
 */
export function extentDifference(extent: Extent, before: MappedExtent, after: MappedExtent, seed: string): Interval {
  const earlier = shuffled(movedDraws(extent, before), seededDraw(`${seed} before`))
  const later = shuffled(movedDraws(extent, after), seededDraw(`${seed} after`))
  const count = 20 * Math.max(earlier.length, later.length)
  const differences = Float64Array.from({ length: count }, (_, at) => {
    const turn = Math.floor(at / earlier.length)
    return (later[(at + turn) % later.length] as number) - (earlier[at % earlier.length] as number)
  }).sort()
  return {
    low: quantileOfSorted(differences, 0.05),
    middle: quantileOfSorted(differences, 0.5),
    high: quantileOfSorted(differences, 0.95),
  }
}

/** Draws spread about their middle so that their own 5 % and 95 % points are the ends of the shifted interval. */
function movedDraws(extent: Extent, { draws, question }: MappedExtent): Float64Array {
  const { low, middle, high } = drawnInterval(draws)
  const { readings, paint, assessedMm2 } = question
  const shifts = shiftsFor(readings, extent, evidenceOf(readings, paint))
  const grain = grainOf(extent, assessedMm2)
  const stretch = (span: number, shift: number): number => (span <= 0 ? 1 : 1 + shift * (1 + grain / span))
  const below = low > 0 ? stretch(middle - low, shifts.low) : 1
  const above = stretch(high - middle, shifts.high)
  return draws.map((draw) => Math.max(0, middle + (draw - middle) * (draw < middle ? below : above)))
}
