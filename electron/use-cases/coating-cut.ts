import type { CoatingCut, CutLine } from '../../shared-types/coating-cut.ts'
import type { CoatingMap } from '../../shared-types/coating-map.ts'
import { type CoatingMeasures, coatingMeasures } from '../../shared-types/coating-measures.ts'
import type { CoatingSectionAnswer } from '../../shared-types/coating-section.ts'
import type { PanelId } from '../../shared-types/panel.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { RecordView } from '../../shared-types/record.ts'
import { cutFigure } from '../figures/cut-figure.ts'
import { THRESHOLD_UM } from './coating-question.ts'
import { computeAside } from './computing/compute-aside.ts'
import { panelRead } from './panel-read.ts'
import type { UseCases } from './program.ts'
import { listOfMarks, rowMark } from './row-marks.ts'

/** Readings at most so far beside the line are shown with it, mm. */
const NEAR_MM = 50
/** A band along a line shows the ends of its draws more plainly than a map does: three times as many draws smooth them. */
const DRAWS = 1197

/** Thickness of one panel along a line, computed anew from the record. */
export async function coatingCut(view: RecordView, panelId: PanelId, { from, to }: CutLine): Promise<CoatingCut> {
  const head = { panelId, from, to, figure: null, words: [] }
  const { asked, mapped } = panelRead(view, panelId)
  if (asked === null)
    return { ...head, problem: 'This panel is on no sheet of the plan, so there is nothing to cut along.' }
  try {
    const section = await computeAside('coating-section', {
      field: { ...asked.question, draws: DRAWS },
      line: { from: { xMm: from.u, yMm: from.v }, to: { xMm: to.u, yMm: to.v }, nearMm: NEAR_MM },
    })
    const { lengthUnit, coatingUnit } = view.commission
    const spots = mapped.map(({ spot }) => spot.number)
    const figure = cutFigure(section, { spots, thresholdUm: THRESHOLD_UM, lengthUnit, coatingUnit })
    return {
      ...head,
      figure,
      words: [section.words, ...drawnWords(section, spots, coatingMeasures(view.commission))],
      problem: null,
    }
  } catch (fault) {
    if (fault instanceof ProblemError && fault.problem.code === 'rule-of-the-trade')
      return { ...head, problem: fault.message }
    throw fault
  }
}

function drawnWords(
  { readings, nearMm, paintUm }: CoatingSectionAnswer,
  spots: readonly number[],
  { length, thickness }: CoatingMeasures,
): readonly string[] {
  const near = length.text(nearMm)
  const marks = readings.map(({ reading }) => rowMark('spots', spots[reading] ?? 0))
  return [
    `Paint alone: ${thickness.text(paintUm.middle)}, between ${thickness.span(paintUm.low, paintUm.high, 'and')} at nine places of ten.`,
    marks.length === 0
      ? `No reading lies within ${near} of the line: all of it is inferred from readings further away.`
      : `Readings within ${near} of the line: ${listOfMarks(marks)}.`,
  ]
}

/** Cuts of the maps in which something counts as filler, each through its thickest place. */
export async function coatingCutsOf(view: RecordView, maps: readonly CoatingMap[]): Promise<readonly CoatingCut[]> {
  const cuts = await Promise.all(maps.map(({ panelId, cut }) => (cut === null ? null : coatingCut(view, panelId, cut))))
  return cuts.filter((cut) => cut !== null).filter(({ problem }) => problem === null)
}

export const coatingCutUseCases: Pick<UseCases, 'coating.cut'> = {
  'coating.cut': (program, { panelId, from, to }) => coatingCut(program.record().view(), panelId, { from, to }),
}
