import { normalQuantile } from './quantiles.ts'

/**
 * Each number's place among all as the standard normal number that has that place: the quantile of (rank - 1/2) / n, equal
 * numbers at the middle of their ranks (C. V. Deutsch and A. G. Journel, GSLIB, 2nd edition, 1998, the normal score
 * transform, recalled; there equal numbers are told apart by chance).
 */
export function normalScores(values: Float64Array): Float64Array {
  const n = values.length
  const order = Uint32Array.from(values.keys()).sort(
    (one, other) => (values[one] as number) - (values[other] as number),
  )
  const scores = new Float64Array(n)
  for (let from = 0; from < n; ) {
    let to = from + 1
    while (to < n && values[order[to] as number] === values[order[from] as number]) to += 1
    const score = normalQuantile((from + to) / (2 * n))
    for (; from < to; from += 1) scores[order[from] as number] = score
  }
  return scores
}
