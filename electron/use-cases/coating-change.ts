import { isDeepStrictEqual } from 'node:util'
import type { CoatingFieldInput } from '../../shared-types/coating.ts'
import type { CoatingChange, ReadingsCited } from '../../shared-types/coating-change.ts'
import { coatingMeasures } from '../../shared-types/coating-measures.ts'
import type { CitedCoating, Correction } from '../../shared-types/correction.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { Spot } from '../../shared-types/reading.ts'
import type { RecordView } from '../../shared-types/record.ts'
import { panelGrid } from '../figures/panel-grid.ts'
import { coatingQuestion, type PlacedPanel, placedPanel, sortedByMode, THRESHOLD_UM } from './coating-question.ts'
import { computeAside } from './computing/compute-aside.ts'
import { numberedRow } from './numbered-rows.ts'
import { panelNameIn } from './panels-of-record.ts'
import type { UseCases } from './program.ts'
import { listOfMarks, rowMark } from './row-marks.ts'
import { gaugesRead, mainGauge, spotsRead } from './spots-read.ts'

const CANNOT_TELL =
  'Two maps compare thickness, not work: filler ground off and laid on anew reads alike, and nothing is said of the metal behind. The intervals hold for readings at places of their own; places chosen because filler was known there narrow what is found, not what was missed.'

/** What the readings a correction cites say of the filler before and after it; null where it cites none. */
async function changeOf(view: RecordView, correction: Correction): Promise<CoatingChange | null> {
  const { coating, number } = correction
  if (coating === null) return null
  const head = {
    correction: number,
    panelId: coating.panelId,
    panel: panelNameIn(view, coating.panelId),
    thresholdUm: THRESHOLD_UM,
    before: readingsCited(coating.before),
    after: readingsCited(coating.after),
    area: null,
    volume: null,
    notes: amendedSince(view, coating),
    cannotTell: CANNOT_TELL,
  }
  const placed = placedPanel(view, coating.panelId, [...coating.before, ...coating.after])
  if (placed === null)
    return { ...head, problem: 'This panel is on no sheet of the plan, so no map of it can be drawn.' }
  if (coating.before.length === 0 || coating.after.length === 0)
    return {
      ...head,
      problem: `No change can be told yet: cite the readings ${missingSide(coating)} the work as well.`,
    }
  try {
    const answer = await computeAside('coating-change', {
      before: questionOf(view, placed, coating.before),
      after: questionOf(view, placed, coating.after),
      seed: `coating of ${coating.panelId}`,
    })
    return { ...head, area: answer.areaM2, volume: answer.volumeCm3, problem: null }
  } catch (fault) {
    if (fault instanceof ProblemError && fault.problem.code === 'rule-of-the-trade')
      return { ...head, problem: fault.message }
    throw fault
  }
}

const missingSide = ({ before }: CitedCoating): string => (before.length === 0 ? 'before' : 'after')

function readingsCited(spots: readonly Spot[]): ReadingsCited | null {
  const days = spots.map(({ readAt }) => readAt.slice(0, 10)).toSorted()
  const [from] = days
  return from === undefined ? null : { spots: spots.map(({ number }) => number), from, to: days.at(-1) ?? from }
}

/** The question of one side: its spots as cited, put right by what is known of the gauge, against the film of the other panels. */
function questionOf(view: RecordView, placed: PlacedPanel, spots: readonly Spot[]): CoatingFieldInput {
  const gauges = gaugesRead(view)
  const standing = spotsRead(
    gauges,
    spots.filter(({ at, view: own }) => at !== null && own === placed.view.id),
  )
  const others = spotsRead(
    gauges,
    view.spots.filter(({ panelId }) => panelId !== placed.panel.panelId),
  )
  const gauge = mainGauge(gauges, spots)
  const grid = panelGrid(placed.view, placed.panel)
  return coatingQuestion(
    view,
    placed,
    grid,
    sortedByMode(standing, coatingMeasures(view.commission)).mapped,
    others,
    gauge,
  )
}

function amendedSince({ spots }: RecordView, { before, after }: CitedCoating): readonly string[] {
  const amended = [...before, ...after].filter((cited) => {
    const now = spots.find(({ number }) => number === cited.number)
    return now !== undefined && !isDeepStrictEqual(now, cited)
  })
  if (amended.length === 0) return []
  const marks = listOfMarks(amended.map(({ number }) => rowMark('spots', number)))
  return [
    `${marks} ${amended.length === 1 ? 'was' : 'were'} amended since; computed from the readings as they were cited.`,
  ]
}

/** Changes of every correction that cites readings, in the order of the corrections. */
export async function coatingChangesOf(view: RecordView): Promise<readonly CoatingChange[]> {
  const changes = await Promise.all(view.corrections.map((correction) => changeOf(view, correction)))
  return changes.filter((change) => change !== null)
}

export const coatingChangeUseCases: Pick<UseCases, 'coating.change'> = {
  'coating.change': async (program, { number }) => {
    const view = program.record().view()
    return changeOf(view, numberedRow(view, 'corrections', number))
  },
}
