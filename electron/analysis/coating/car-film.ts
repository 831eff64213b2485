import { groupedBy } from '../statistics/grouped-by.ts'
import { medianOf } from '../statistics/univariate.ts'
import type { PaintFilm } from './latent-sites.ts'
import type { CarFilm } from './thickness-classes.ts'

/** Thickness a sprayed film may have, µm, and readings and panels without which a car has no film of its own to compare with. Common practice, no source. */
const FILM_BOUNDS_UM = [40, 400] as const
const ENOUGH_SPOTS = 8
const ENOUGH_PANELS = 3
/** Scale from a median absolute deviation to a standard deviation of a normal distribution. */
const NORMAL_SCALE = 1.4826
const DEVIATION_BOUNDS = [0.05, 0.3] as const

/** Standard error of a median of normal values over that of their mean (Kendall and Stuart, The Advanced Theory of Statistics, 10.10). */
const MEDIAN_OVER_MEAN = 1.2533

/**
 * The film of a car away from the panel asked about: median of the panels' medians of what may be paint, with the robust
 * scatter of single spots. Null where too little was read. It is a reference, never a sign that anything is original.
 */
export function carFilm(
  spots: readonly { readonly panel: string; readonly um: number }[],
): (PaintFilm & CarFilm) | null {
  const paint = spots.filter(({ um }) => um >= FILM_BOUNDS_UM[0] && um <= FILM_BOUNDS_UM[1])
  const panels = groupedBy(paint, ({ panel }) => panel)
  if (paint.length < ENOUGH_SPOTS || panels.size < ENOUGH_PANELS) return null
  const rising = (values: readonly number[]) => values.toSorted((one, other) => one - other)
  const middles = [...panels.values()].map((own) => medianOf(rising(own.map(({ um }) => um))))
  const medianUm = medianOf(rising(middles))
  const apart = [...panels.values()].flatMap((own, at) =>
    own.map(({ um }) => Math.abs(Math.log(um / (middles[at] ?? um)))),
  )
  const deviation = NORMAL_SCALE * medianOf(rising(apart))
  const betweenPanels = NORMAL_SCALE * medianOf(rising(middles.map((middle) => Math.abs(middle - medianUm))))
  return {
    medianUm,
    logDeviation: Math.min(DEVIATION_BOUNDS[1], Math.max(DEVIATION_BOUNDS[0], deviation)),
    standardUncertaintyUm: (MEDIAN_OVER_MEAN * betweenPanels) / Math.sqrt(middles.length),
  }
}
