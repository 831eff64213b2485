import type { Point } from '../cubic-path.ts'
import { backwards, type Curve, joined, lines, smooth } from '../curve.ts'
import { wholeOf } from './tiles.ts'

/** A crossmember, its edges bowed towards the rear by so much at the centre line. */
export function bowed(from: number, to: number, half: number, bow: number): Curve {
  const side = (u: number, shift: number): Point[] => [
    [u + shift, 0],
    [u + shift * 0.7, half * 0.45],
    [u, half],
  ]
  return wholeOf(
    joined(
      smooth(side(from, bow), [0, 1]),
      smooth([
        [from, half],
        [(from + to) / 2, half + 5],
        [to, half],
      ]),
      smooth(side(to, bow * 0.6).reverse(), undefined, [0, -1]),
    ),
  )
}

/**
 * A box member along the car: its middle at shares of its length, so wide to both sides. Between two places it swings
 * over without going beyond either.
 */
export function railAlong(ends: readonly [number, number], middle: readonly Point[], half: number): Curve {
  const [from, to] = ends
  const side = (by: number): Curve =>
    middle.slice(1).flatMap(([share, v], index): Curve => {
      const [shareBefore, before] = middle[index] ?? [0, v]
      const [a, d] = [from + shareBefore * (to - from), from + share * (to - from)]
      const handle = (d - a) * 0.4
      return [
        [
          [a, before + by],
          [a + handle, before + by],
          [d - handle, v + by],
          [d, v + by],
        ],
      ]
    })
  const [first, last] = [middle[0]?.[1] ?? 0, middle.at(-1)?.[1] ?? 0]
  return joined(
    side(-half),
    smooth([
      [to, last - half],
      [to + 4, last],
      [to, last + half],
    ]),
    backwards(side(half)),
    smooth([
      [from, first + half],
      [from - 4, first],
      [from, first - half],
    ]),
  )
}

/** Closing plate behind the front wheel, following the tyre in front. */
export function splash([from, to]: readonly [number, number], low: number, high: number): Curve {
  return joined(
    smooth([
      [from + 22, low],
      [from, (low + high) / 2],
      [from + 34, high],
    ]),
    lines([from + 34, high], [to, high], [to, low], [from + 22, low]),
  )
}
