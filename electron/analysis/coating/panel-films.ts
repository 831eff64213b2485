import { groupedBy } from '../statistics/grouped-by.ts'
import { medianOf, univariate } from '../statistics/univariate.ts'
import type { PanelFilm } from './film-populations.ts'

/** A spot mean that may be paint: one panel, µm. Saturated spots are no paint and stay out. */
export interface FilmSpot {
  readonly panel: string
  readonly um: number
}

/** Thickness a sprayed film may have, µm. Common practice, no source. */
const FILM_BOUNDS_UM = [40, 400] as const
/** Spots of one film stray from its median by three deviations of a tenth at most. Common practice, no source. */
const ONE_FILM = Math.exp(3 * 0.1)
/** Spots a film is compared from. */
const LEAST_SPOTS = 2
/** Scatter of single spots on one panel is no less than this. Common practice, no source. */
const LEAST_DEVIATION = 0.04

/**
 * The film of every panel with two spots of paint or more: mean logarithm of the spots about the panel's
 * median. A panel's own scatter is unsure with so few spots, so that it is never taken below that of all panels together.
 */
export function panelFilms(spots: readonly FilmSpot[]): PanelFilm[] {
  const paint = spots.filter(({ um }) => um >= FILM_BOUNDS_UM[0] && um <= FILM_BOUNDS_UM[1])
  const films = [...groupedBy(paint, ({ panel }) => panel)].flatMap(([panel, own]) => {
    const values = own.map(({ um }) => um).toSorted((one, other) => one - other)
    const middle = medianOf(values)
    const logs = values.filter((um) => um >= middle / ONE_FILM && um <= middle * ONE_FILM).map(Math.log)
    return logs.length < LEAST_SPOTS ? [] : [{ panel, logs, ...univariate(logs) }]
  })
  const freedom = films.reduce((sum, { logs }) => sum + logs.length - 1, 0)
  const squares = films.reduce((sum, { logs, mean }) => sum + logs.reduce((own, log) => own + (log - mean) ** 2, 0), 0)
  const pooled = Math.max(LEAST_DEVIATION, Math.sqrt(squares / Math.max(1, freedom)))
  return films.map(({ panel, logs, mean, standardDeviation }) => ({
    panel,
    meanLog: mean,
    logDeviation: Math.max(pooled, standardDeviation ?? 0),
    readings: logs.length,
  }))
}

/** Scale from a median absolute deviation to a standard deviation of a normal distribution. */
const NORMAL_SCALE = 1.4826
/** Fewest panels that say how alike the films of this car are, and bounds of that. Common practice, no source. */
const ENOUGH_PANELS = 6
const SCATTER_BOUNDS = [0.05, 0.12] as const

/**
 * Scatter of panels' mean logarithms within one paint job: what this car itself shows by the robust deviation about its
 * middle panel, where enough panels were read. A car of two jobs shows more than either job has, so that the usual scatter is its upper bound.
 */
export function panelScatter(films: readonly PanelFilm[]): number {
  const [least, usual] = SCATTER_BOUNDS
  if (films.length < ENOUGH_PANELS) return usual
  const rising = (values: readonly number[]) => values.toSorted((one, other) => one - other)
  const middle = medianOf(rising(films.map(({ meanLog }) => meanLog)))
  const deviation = NORMAL_SCALE * medianOf(rising(films.map(({ meanLog }) => Math.abs(meanLog - middle))))
  return Math.min(usual, Math.max(least, deviation))
}
