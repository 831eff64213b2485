/** The place of each number among all, from 1 up; equal numbers stand at the middle of their places. */
export function ranksOf(values: Float64Array): Float64Array {
  const n = values.length
  const order = Uint32Array.from(values.keys()).sort(
    (one, other) => (values[one] as number) - (values[other] as number),
  )
  const ranks = new Float64Array(n)
  for (let from = 0; from < n; ) {
    let to = from + 1
    while (to < n && values[order[to] as number] === values[order[from] as number]) to += 1
    const middle = (from + 1 + to) / 2
    for (; from < to; from += 1) ranks[order[from] as number] = middle
  }
  return ranks
}
