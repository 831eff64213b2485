import type { CarFilmRow, CoatingCar } from '../../shared-types/coating-car.ts'
import { type CoatingMeasures, coatingMeasures } from '../../shared-types/coating-measures.ts'
import type { RecordView } from '../../shared-types/record.ts'
import type { PanelFilm } from '../analysis/coating/film-populations.ts'
import { type FilmPair, filmSteps } from '../analysis/coating/film-steps.ts'
import { filmWords } from '../analysis/coating/film-words.ts'
import { panelFilmPlace } from '../analysis/coating/panel-film-words.ts'
import { groupedBy } from '../analysis/statistics/grouped-by.ts'
import { medianOf } from '../analysis/statistics/univariate.ts'
import { thicknessScale } from '../figures/thickness-scale.ts'
import { jointBetween } from '../sheets/joint-list.ts'
import { type CarFilms, carFilms } from './car-films.ts'
import { sortedByMode } from './coating-question.ts'
import { panelNameIn, panelsOfRecord } from './panels-of-record.ts'
import type { UseCases } from './program.ts'
import { markedSpots } from './spot-marks.ts'
import { gaugesRead, type SpotRead, spotsRead, standingSpots } from './spots-read.ts'

const CANNOT_TELL =
  'Films are compared, not dated: a population is compatible with one paint job and never says which, nor when; a factory finish and a skilful strip and refinish can read alike.'

/** Every panel read, by median and spread on one scale, with populations of film, left against right and steps at seams. */
export function coatingCar(view: RecordView): CoatingCar {
  const measures = coatingMeasures(view.commission)
  const order = new Map(panelsOfRecord(view).panels.map(({ id, stop }) => [id, stop]))
  const stop = (id: string) => order.get(id) ?? Number.MAX_SAFE_INTEGER
  const byPanel = [...groupedBy(spotsRead(gaugesRead(view), standingSpots(view).standing), ({ spot }) => spot.panelId)]
    .map(([panelId, own]): [string, SpotRead[]] => [
      panelId,
      sortedByMode(own, measures).mapped.filter(({ um }) => um !== null),
    ])
    .filter(([, own]) => own.length > 0)
    .toSorted(([one], [other]) => stop(one) - stop(other) || one.localeCompare(other))
  const known = carFilms(byPanel.flatMap(([, own]) => own))
  const scale = thicknessScale(byPanel.flatMap(([, own]) => own.map(({ um }) => um ?? 0)))
  const name = (panelId: string) => panelNameIn(view, panelId)
  const rows = byPanel.map(([panelId, own]): CarFilmRow => {
    const rising = own.map(({ um }) => um ?? 0).toSorted((one, other) => one - other)
    const [leastUm, middleUm, mostUm] = [rising[0] ?? 0, medianOf(rising), rising.at(-1) ?? 0]
    return {
      panelId,
      name: name(panelId),
      spots: own.length,
      leastUm,
      middleUm,
      mostUm,
      mostOrMore: own.some(({ kind, um }) => kind === 'more than' && um === mostUm),
      at: { least: scale.at(leastUm), middle: scale.at(middleUm), most: scale.at(mostUm) },
      otherChance: otherChance(known, panelId),
    }
  })
  return {
    rows,
    ticks: scale.ticks,
    films:
      known.mixtures.length === 0
        ? ['Films can be compared from three panels on, each read at two places of paint or more.']
        : filmWords(
            known.mixtures,
            known.films.map(({ panel }) => name(panel)),
            measures,
          ),
    sides: filmSteps(sidePairs(known.films, name), known.scatter, 'pair', measures),
    seams: filmSteps(seamPairs(view, known.films, name), known.scatter, 'seam', measures),
    marked: markedSpots(view),
    cannotTell: CANNOT_TELL,
    textAlternative: rows.map((row) => rowInWords(row, measures)).join('; '),
  }
}

function otherChance({ films, mixtures }: CarFilms, panelId: string): number | null {
  const at = films.findIndex(({ panel }) => panel === panelId)
  return at === -1 || mixtures.length === 0 ? null : panelFilmPlace(mixtures, at).otherChance
}

const rowInWords = (
  { name, spots, leastUm, middleUm, mostUm, mostOrMore }: CarFilmRow,
  { thickness }: CoatingMeasures,
): string =>
  `${name}: median ${thickness.text(middleUm)}, from ${thickness.span(leastUm, mostUm, mostOrMore ? 'to more than' : 'to')}, ${spots} spots`

function sidePairs(films: readonly PanelFilm[], name: (panelId: string) => string): FilmPair[] {
  return films.flatMap((one) => {
    if (!one.panel.endsWith('.L')) return []
    const other = films.find(({ panel }) => panel === one.panel.replace(/\.L$/, '.R'))
    return other === undefined ? [] : [{ one, other, words: `${name(one.panel)} against right` }]
  })
}

function seamPairs(view: RecordView, films: readonly PanelFilm[], name: (panelId: string) => string): FilmPair[] {
  return films.flatMap((one, at) =>
    films.slice(at + 1).flatMap((other): FilmPair[] => {
      const joint = jointBetween(one.panel, other.panel, view.particulars.body)
      return joint === null ? [] : [{ one, other, words: `${name(one.panel)} against ${name(other.panel)}` }]
    }),
  )
}

export const coatingCarUseCases: Pick<UseCases, 'coating.car'> = {
  'coating.car': async (program) => coatingCar(program.record().view()),
}
