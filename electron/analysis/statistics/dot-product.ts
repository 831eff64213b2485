/**
 * Sum of products of two stretches of numbers, in four running sums: a single one would wait for each addition before the
 * next could begin.
 */
export function dotProduct(
  one: Float64Array,
  oneFrom: number,
  other: Float64Array,
  otherFrom: number,
  length: number,
): number {
  let a = 0
  let b = 0
  let c = 0
  let d = 0
  let k = 0
  for (; k + 3 < length; k += 4) {
    a += (one[oneFrom + k] as number) * (other[otherFrom + k] as number)
    b += (one[oneFrom + k + 1] as number) * (other[otherFrom + k + 1] as number)
    c += (one[oneFrom + k + 2] as number) * (other[otherFrom + k + 2] as number)
    d += (one[oneFrom + k + 3] as number) * (other[otherFrom + k + 3] as number)
  }
  for (; k < length; k += 1) a += (one[oneFrom + k] as number) * (other[otherFrom + k] as number)
  return a + b + (c + d)
}
