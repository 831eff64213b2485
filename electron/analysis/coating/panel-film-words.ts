import type { CoatingMeasures } from '../../../shared-types/coating-measures.ts'
import type { MetalState } from '../../../shared-types/words.ts'
import type { FilmMixture, PanelFilm } from './film-populations.ts'

/** How the film of one panel stands to those of the car. */
export interface PanelFilmPlace {
  /** Chance that it belongs to another population of film than most panels, over all mixtures tried. */
  readonly otherChance: number
  /** Median of the film of most panels in the likeliest mixture, µm. */
  readonly mostUm: number
}

/** Place of the panel numbered `at` among those the mixtures were fitted to. */
export function panelFilmPlace(mixtures: readonly FilmMixture[], at: number): PanelFilmPlace {
  const main = (mixture: FilmMixture) =>
    mixture.populations.reduce((best, { share }, k) => (share > (mixture.populations[best]?.share ?? 0) ? k : best), 0)
  const likely = mixtures.reduce((best, mixture) => (mixture.weight > best.weight ? mixture : best))
  return {
    otherChance: mixtures.reduce(
      (sum, mixture) => sum + mixture.weight * (1 - (mixture.membership[at]?.[main(mixture)] ?? 1)),
      0,
    ),
    mostUm: likely.populations[main(likely)]?.medianUm ?? 0,
  }
}

const replaced: readonly MetalState[] = ['replacement panel', 'replacement skin', 'patch panel']

/** What the film says of the panel's paint, with what the surveyor noted of its metal; never that anything is original. */
export function panelFilmWords(
  film: PanelFilm,
  { otherChance, mostUm }: PanelFilmPlace,
  metal: MetalState,
  { thickness }: CoatingMeasures,
): string {
  const own = Math.exp(film.meanLog)
  const half = (1.96 * film.logDeviation) / Math.sqrt(film.readings)
  const about = `Film of about ${thickness.text(own)} (${thickness.figure(own * Math.exp(-half))} to ${thickness.figure(own * Math.exp(half))}, 95 %; ${film.readings} spots)`
  const chance =
    otherChance > 0.995 ? 'over 99 %' : otherChance < 0.005 ? 'under 1 %' : `${Math.round(100 * otherChance)} %`
  if (otherChance < 0.5)
    return `${about}: compatible with the paint job of most panels, about ${thickness.text(mostUm)} (chance of another job: ${chance}).`
  const compared = `${about} against about ${thickness.text(mostUm)} on most panels: compatible with another paint job than theirs (chance ${chance} by the mixture of films).`
  const thinner = own < mostUm
  if (replaced.includes(metal))
    return `${compared} With the metal noted as ${metal}, it reads as refinished over a replacement${thinner ? ': a panel painted once lacks the coats the others carry' : ''}.`
  return `${compared} ${thinner ? 'Thinner: compatible with a panel that was stripped or replaced and painted once' : 'Thicker: compatible with a panel refinished once more than the others'}; joints and back tell which, not thickness.`
}
