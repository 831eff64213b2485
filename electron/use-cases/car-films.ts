import { coatingMeasures } from '../../shared-types/coating-measures.ts'
import type { PanelId } from '../../shared-types/panel.ts'
import type { RecordView } from '../../shared-types/record.ts'
import { type FilmMixture, filmPopulations, type PanelFilm } from '../analysis/coating/film-populations.ts'
import { panelFilmPlace, panelFilmWords } from '../analysis/coating/panel-film-words.ts'
import { panelFilms, panelScatter } from '../analysis/coating/panel-films.ts'
import { panelStateOf } from './panels-of-record.ts'
import type { SpotRead } from './spots-read.ts'

/** Films of the panels of a car, and the mixtures of paint jobs they may be; none from fewer than three panels. */
export interface CarFilms {
  readonly films: readonly PanelFilm[]
  readonly mixtures: readonly FilmMixture[]
  /** Deviation of panels' mean logarithms within one paint job, as taken for this car. */
  readonly scatter: number
}

/** Films from every spot that is not saturated and was not read beside metal that is no steel. */
export function carFilms(spots: readonly SpotRead[]): CarFilms {
  const films = panelFilms(
    spots.flatMap(({ spot, kind, um }) => (kind === 'value' && um !== null ? [{ panel: spot.panelId, um }] : [])),
  )
  const scatter = panelScatter(films)
  return { films, scatter, mixtures: films.length < 3 ? [] : filmPopulations(films, scatter) }
}

/** Where one panel's film stands among those of the car, in words; null where too little was read to compare. */
export function filmOfPanelWords(view: RecordView, { films, mixtures }: CarFilms, panelId: PanelId): string | null {
  const at = films.findIndex(({ panel }) => panel === panelId)
  const film = films[at]
  if (film === undefined || mixtures.length === 0) return null
  const { metal } = panelStateOf(view, panelId)
  return panelFilmWords(film, panelFilmPlace(mixtures, at), metal, coatingMeasures(view.commission))
}
