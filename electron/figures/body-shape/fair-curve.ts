/** A smooth function of one variable through given knots. */
export type FairCurve = (at: number) => number
type Knot = readonly [at: number, value: number]

/**
 * Piecewise cubic through knots that neither overshoots nor wiggles: between two knots it never leaves their range, and
 * equal neighbours give a straight level stretch (F. N. Fritsch and J. Butland, A method for constructing local
 * monotone piecewise cubic interpolants, SIAM J. Sci. Stat. Comput. 5, 1984). Beyond its ends it stays level with them.
 * `ends` fixes the slope at the first and last knot. Throws where the knots are not in rising order.
 */
export function fairCurve(
  knots: readonly Knot[],
  ends: { readonly first?: number; readonly last?: number } = {},
): FairCurve {
  const count = knots.length
  knots.slice(1).forEach(([at], index) => {
    if (at <= (knots[index]?.[0] ?? 0)) throw new Error(`Knots of a curve must rise: ${JSON.stringify(knots)}`)
  })
  const at = (index: number) => knots[index]?.[0] ?? 0
  const value = (index: number) => knots[index]?.[1] ?? 0
  const width = (index: number) => at(index + 1) - at(index)
  const rise = (index: number) => (value(index + 1) - value(index)) / width(index)
  const slopes = knots.map((_, index) => {
    if (index === 0) return ends.first ?? endSlope(rise(0), rise(1), width(0), width(1), count)
    if (index === count - 1) {
      return ends.last ?? endSlope(rise(index - 1), rise(index - 2), width(index - 1), width(index - 2), count)
    }
    const [before, after] = [rise(index - 1), rise(index)]
    if (before * after <= 0) return 0
    const weight = (width(index - 1) + 2 * width(index)) / (3 * (width(index - 1) + width(index)))
    return (before * after) / (weight * after + (1 - weight) * before)
  })
  const pieces = knots.slice(1).map(([to, end], index) => {
    const wide = width(index)
    return {
      ...{ from: at(index), to, wide, start: value(index), end },
      ...{ leave: (slopes[index] ?? 0) * wide, arrive: (slopes[index + 1] ?? 0) * wide },
    }
  })
  const [first, last] = [value(0), value(count - 1)]
  const [begin, stop] = [at(0), at(count - 1)]
  return (x) => {
    if (x <= begin) return first
    if (x >= stop) return last
    for (const piece of pieces) {
      if (x > piece.to) continue
      const t = (x - piece.from) / piece.wide
      const u = 1 - t
      return (
        piece.start * u * u * (1 + 2 * t) +
        piece.leave * t * u * u +
        piece.end * t * t * (3 - 2 * t) -
        piece.arrive * t * t * u
      )
    }
    return last
  }
}

/** Three-point slope at an end, held so that the curve stays monotone. */
function endSlope(near: number, next: number, nearWidth: number, nextWidth: number, count: number): number {
  if (count < 3) return near
  const slope = ((2 * nearWidth + nextWidth) * near - nearWidth * next) / (nearWidth + nextWidth)
  if (slope * near <= 0) return 0
  return near * next <= 0 && Math.abs(slope) > 3 * Math.abs(near) ? 3 * near : slope
}
