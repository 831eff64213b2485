import { extentDifference } from '../../../electron/analysis/coating/extent-difference.ts'
import type { Interval } from '../../../electron/analysis/coating/interval-calibration.ts'
import { mappedPanel, THRESHOLD_UM } from './mapped-panel.ts'
import { type CorrectionKind, correctedPanel, correctionKinds } from './simulated-corrections.ts'
import { panelKinds } from './simulated-filler.ts'
import { gridNodes } from './simulated-nodes.ts'
import { type SimulatedPanel, simulatedPanel, truthOf } from './simulated-panels.ts'

/** One simulated panel before and after work: intervals of the differences, later less earlier, and the truth. */
export interface ChangeRow {
  readonly kind: CorrectionKind
  readonly readings: number
  readonly area: Interval
  readonly volume: Interval
  readonly trueArea: number
  readonly trueVolume: number
  /** True extents before the work, which widths are told by. */
  readonly areaBefore: number
  readonly volumeBefore: number
}

interface Size {
  readonly nodes: number
  readonly draws: number
}

/** The pair number `at` of a stage, read at as many places after the work as before; kinds of filler and of work take turns. */
export function studyChange(
  stage: 'change tuning' | 'change testing' | 'change short',
  readings: number,
  at: number,
  size: Size = { nodes: 1600, draws: 399 },
): ChangeRow {
  // Every kind of filler meets every kind of work: ten and four have a factor in common.
  const filler = panelKinds[at % panelKinds.length] ?? 'patches'
  const kind = correctionKinds[Math.floor(at / panelKinds.length) % correctionKinds.length] ?? 'nothing'
  const seed = `${stage} ${readings} ${at}`
  const before = simulatedPanel(filler, readings, seed)
  const after = correctedPanel(before, kind, readings, `${seed} after`)
  const [earlier, later] = [mapped(before, size, `${seed} before`), mapped(after, size, `${seed} later`)]
  const [was, is] = [truthOf(before, THRESHOLD_UM), truthOf(after, THRESHOLD_UM)]
  const difference = (extent: 'area' | 'volume'): Interval =>
    extentDifference(
      extent,
      { draws: earlier[extent], question: earlier.question },
      { draws: later[extent], question: later.question },
      `${seed} ${extent}`,
    )
  return {
    kind,
    readings,
    area: difference('area'),
    volume: difference('volume'),
    trueArea: is.areaMm2 - was.areaMm2,
    trueVolume: is.volumeMm3 - was.volumeMm3,
    areaBefore: was.areaMm2,
    volumeBefore: was.volumeMm3,
  }
}

function mapped(panel: SimulatedPanel, { nodes: count, draws }: Size, seed: string) {
  const nodes = gridNodes(panel.widthMm, panel.heightMm, count)
  const { areaMm2, volumeMm3, question } = mappedPanel(panel, panel.readings, nodes, { seed, draws })
  return { area: areaMm2, volume: volumeMm3, question }
}

/** How intervals of a difference did over pairs of maps. */
export interface ChangeCoverage {
  readonly pairs: number
  readonly covered: number
  readonly share: number
  /** Of pairs with filler before the work: median width of the interval by the extent before it. */
  readonly medianWidth: number
  /** Pairs said to be less of which the truth was not less, or said to be more of which it was not more. */
  readonly wronglyTold: number
  /** Pairs whose truth is less by a fifth of what lay there before or more, and how many of them were told to be less. */
  readonly lessened: number
  readonly toldLess: number
}

/** Coverage of the differences of one extent. */
export function changeCoverage(rows: readonly ChangeRow[], extent: 'area' | 'volume'): ChangeCoverage {
  const judged = rows.map((row) => {
    const [truth, before] = extent === 'area' ? [row.trueArea, row.areaBefore] : [row.trueVolume, row.volumeBefore]
    const { low, high } = row[extent]
    // Half a square millimetre or cubic centimetre's thousandth either way is rounding, not a change.
    const slack = 0.5
    return {
      truth,
      before,
      width: high - low,
      inside: low <= truth + slack && truth <= high + slack,
      wrong: (high < 0 && truth > -slack) || (low > 0 && truth < slack),
      toldLess: high < 0,
    }
  })
  const widths = judged
    .filter(({ before }) => before > 0)
    .map(({ width, before }) => width / before)
    .sort((one, other) => one - other)
  const lessened = judged.filter(({ truth, before }) => before > 0 && truth <= -0.2 * before)
  const covered = judged.filter(({ inside }) => inside).length
  return {
    pairs: rows.length,
    covered,
    share: covered / rows.length,
    medianWidth: widths[Math.floor(widths.length / 2)] ?? 0,
    wronglyTold: judged.filter(({ wrong }) => wrong).length,
    lessened: lessened.length,
    toldLess: lessened.filter(({ toldLess }) => toldLess).length,
  }
}
