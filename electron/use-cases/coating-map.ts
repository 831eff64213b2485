import { capital } from '../../shared-types/capital.ts'
import type { CoatingMap, MappedSpot } from '../../shared-types/coating-map.ts'
import { coatingMeasures } from '../../shared-types/coating-measures.ts'
import type { PanelId } from '../../shared-types/panel.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { RecordView } from '../../shared-types/record.ts'
import { classWords, rangesWords } from '../analysis/coating/class-words.ts'
import { groupedBy } from '../analysis/statistics/grouped-by.ts'
import { cutThroughThickest } from '../figures/cut-line.ts'
import { carFilms, filmOfPanelWords } from './car-films.ts'
import { layersOf } from './coating-layers.ts'
import { surfaceMm2, THRESHOLD_UM } from './coating-question.ts'
import { computeAside } from './computing/compute-aside.ts'
import { panelRead } from './panel-read.ts'
import { panelStateOf } from './panels-of-record.ts'
import type { UseCases } from './program.ts'
import { listOfMarks, rowMark } from './row-marks.ts'
import { speaksAgainst } from './spot-marks.ts'
import { gaugesRead, type SpotRead, spotsRead, standingSpots } from './spots-read.ts'

const CANNOT_TELL =
  'A map of thickness cannot tell factory paint from a skilful strip and refinish of the same thickness, nor filler from thick paint or lead by thickness alone, nor whether metal is missing behind: that takes a look at the back.'

const nothing = {
  layers: [],
  cut: null,
  film: null,
  fillerArea: null,
  fillerVolume: null,
  assessedM2: 0,
  notAssessedM2: null,
  thresholdUm: THRESHOLD_UM,
  leftOut: [],
  next: [],
  stopping: '',
  method: '',
  cannotTell: CANNOT_TELL,
  conclusion: '',
  classes: [],
  ranges: '',
} as const

/** What the readings of one panel say of its coating, computed anew from the record. */
export async function coatingMap(view: RecordView, panelId: PanelId): Promise<CoatingMap> {
  const { own, every, before, standing, gauge, placed, pairs, leftOut, asked } = panelRead(view, panelId)
  const head = {
    ...nothing,
    panelId,
    view: placed?.view.id ?? null,
    spots: standing.flatMap(mappedSpot),
    gauge: gauge.words,
    checks: [...gauge.checked.lines, ...flagLines(standing)],
    modes: pairs.map(({ words }) => words),
  }
  if (placed === null || asked === null)
    return { ...head, problem: 'This panel is on no sheet of the plan, so there is nothing to map.' }
  const { grid, question } = asked
  try {
    const answer = await computeAside('coating', question)
    const unplaced = own.length - standing.length
    const { conclusion, lines } = classWords(answer.classes)
    const measures = coatingMeasures(view.commission)
    return {
      ...head,
      problem: null,
      layers: layersOf(grid, answer, THRESHOLD_UM, measures),
      cut: cutThroughThickest(grid, answer.thicknessUm.middle, THRESHOLD_UM),
      film: {
        um: answer.filmUm,
        words:
          filmOfPanelWords(view, carFilms(every), panelId) ??
          `Film of this panel, where it may be paint: about ${measures.thickness.text(answer.filmUm)}.`,
      },
      fillerArea: answer.fillerAreaM2,
      fillerVolume: answer.fillerVolumeCm3,
      conclusion:
        conclusion === '' ? '' : `${conclusion}${metalWords(view, panelId, answer.classes.at(-1)?.presentChance ?? 0)}`,
      classes: lines,
      ranges:
        question.classes === undefined
          ? ''
          : rangesWords(question.classes.ranges, question.classes.carFilm.medianUm, measures),
      assessedM2: answer.assessedM2,
      notAssessedM2: Math.max(0, surfaceMm2(view, placed.panel) / 1e6 - answer.assessedM2),
      leftOut: [
        ...answer.leftOut.map(({ count, why }) => `${count}: ${why}`),
        ...(unplaced === 0 ? [] : [`${unplaced}: no place in this view`]),
        ...leftOut,
        ...readBefore(view, panelId, before),
      ],
      next: answer.next.spots.map(({ xMm, yMm, words }) => ({ at: { u: xMm, v: yMm }, words })),
      stopping: answer.next.words,
      method: answer.method,
    }
  } catch (fault) {
    if (fault instanceof ProblemError && fault.problem.code === 'rule-of-the-trade')
      return { ...head, leftOut, problem: fault.message }
    throw fault
  }
}

function mappedSpot({ spot, kind, um, readUm, uncertaintyUm, flags }: SpotRead): MappedSpot[] {
  if (spot.at === null) return []
  return [
    {
      spot: spot.number,
      at: spot.at,
      um,
      readUm,
      orMore: kind === 'more than',
      uncertaintyUm: um === null ? null : uncertaintyUm,
      flags,
      marked: speaksAgainst(flags).length > 0,
    },
  ]
}

/** What was read before a correction that has been done speaks of the panel no longer. */
function readBefore({ spots }: RecordView, panelId: PanelId, before: ReadonlyMap<number, number>): string[] {
  const own = spots.filter((spot) => spot.panelId === panelId && before.has(spot.number))
  return [...groupedBy(own, ({ number }) => before.get(number) ?? 0)].map(
    ([correction, cited]) => `${cited.length}: read before ${rowMark('corrections', correction)} was done`,
  )
}

/** Readings the checks do not stand behind, one line for each reason. */
function flagLines(standing: readonly SpotRead[]): string[] {
  const flagged = groupedBy(
    standing.flatMap((read) => read.flags.map((flag) => ({ flag, mark: rowMark('spots', read.spot.number) }))),
    ({ flag }) => flag,
  )
  const beyond = standing.filter(({ beyondShims }) => beyondShims)
  return [
    ...[...flagged].map(([flag, own]) => `${capital(flag)}: ${listOfMarks(own.map(({ mark }) => mark))}.`),
    ...(beyond.length === 0
      ? []
      : [
          `The correction is carried on beyond the shims for ${listOfMarks(beyond.map(({ spot }) => rowMark('spots', spot.number)))}.`,
        ]),
  ]
}

/** Whether metal may be missing is never concluded from thickness: only where the back was seen does the noted metal say so. */
function metalWords(view: RecordView, panelId: PanelId, deepChance: number): string {
  if (deepChance < 0.1) return ''
  const { backSeen, magnetVoid, metal } = panelStateOf(view, panelId)
  if (backSeen) return ` The back was seen; the metal is noted as ${metal}.`
  return ` The back was not seen, so nothing is said of metal missing behind${magnetVoid ? '; a magnet found no pull at a place of this panel' : ''}.`
}

/** A panel goes into the report when it has this many spots with a place, and one of them is over the threshold. */
const SPOTS_TO_PRINT = 5

/** Maps of the panels whose readings leave open how much filler there is, in the order they were first read. */
export async function coatingMapsOf(view: RecordView): Promise<readonly CoatingMap[]> {
  const placed = spotsRead(gaugesRead(view), standingSpots(view).standing).filter(({ spot }) => spot.at !== null)
  const open = [...groupedBy(placed, ({ spot }) => spot.panelId)].filter(
    ([, spots]) => spots.length >= SPOTS_TO_PRINT && spots.some(({ um }) => (um ?? 0) > THRESHOLD_UM),
  )
  const maps = await Promise.all(open.map(([panelId]) => coatingMap(view, panelId)))
  return maps.filter(({ problem }) => problem === null)
}

export const coatingMapUseCases: Pick<UseCases, 'coating.map'> = {
  'coating.map': (program, { panelId }) => coatingMap(program.record().view(), panelId),
}
