import type { z } from 'zod'
import type { tellExactness } from '../../../shared-types/measuring.ts'
import { measuredLikelihood } from './measured-likelihood.ts'

type Question = z.infer<typeof tellExactness.input>

interface Weighed {
  readonly likeliest: string
  readonly likelihoodRatio: number
  readonly fits: boolean
}

/** Steps of the search downwards from an uncertainty that decides nothing, each a share of the one before. */
const STEP = 0.98
const STEPS = 700
const BISECTIONS = 60

/**
 * Whether a measured value decides a tell, and the greatest standard uncertainty with which it would.
 * With equal spreads s and the distances d and D of the two nearest values: u² = (D² - d²) / (2 ln R) - s².
 */
export function tellExactnessOf(question: Question): z.infer<typeof tellExactness.output> {
  const { standardUncertainty, enough } = question
  const { likeliest, likelihoodRatio, fits } = weighed(question, standardUncertainty)
  return {
    decision: !fits ? 'fits none' : likelihoodRatio >= enough ? 'decides' : 'does not decide',
    likeliest,
    likelihoodRatio: Number.isFinite(likelihoodRatio) ? likelihoodRatio : null,
    wouldDecide: greatestThatDecides(question),
  }
}

function weighed({ value, expected, fitsWithin }: Question, u: number): Weighed {
  const likelihoods = measuredLikelihood(value, u, Object.fromEntries(expected.map(({ id, ...of }) => [id, of])))
  const [first, second] = Object.entries(likelihoods).toSorted(([, a], [, b]) => b - a)
  const fits = expected.some(
    ({ mean, standardDeviation }) => Math.abs(value - mean) <= fitsWithin * Math.hypot(standardDeviation, u),
  )
  return { likeliest: first?.[0] ?? '', likelihoodRatio: (first?.[1] ?? 0) / (second?.[1] ?? 0), fits }
}

/** Downwards from where every value is as likely, the first that decides; between it and the one before, by halving. */
function greatestThatDecides(question: Question): number | null {
  const { expected, value, enough } = question
  const decides = (u: number) => {
    const { likelihoodRatio, fits } = weighed(question, u)
    return fits && likelihoodRatio >= enough
  }
  const furthest = Math.max(
    ...expected.map(({ mean, standardDeviation }) => Math.abs(value - mean) + standardDeviation),
  )
  let high = 10 * furthest
  let low = high
  for (let step = 0; step < STEPS && !decides(low); step += 1) {
    high = low
    low *= STEP
  }
  if (!decides(low)) return null
  for (let half = 0; half < BISECTIONS; half += 1) {
    const middle = (low + high) / 2
    if (decides(middle)) low = middle
    else high = middle
  }
  return low
}
