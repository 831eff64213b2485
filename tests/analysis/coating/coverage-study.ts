import {
  conformalShift,
  drawnInterval,
  endScores,
  evidenceOf,
  grainOf,
  type Interval,
  shiftedInterval,
  shiftsFor,
} from '../../../electron/analysis/coating/interval-calibration.ts'
import {
  type DensityShifts,
  type EvidenceKind,
  type Extent,
  evidenceKinds,
} from '../../../electron/analysis/coating/interval-shifts.ts'
import type { FieldReading } from '../../../electron/analysis/coating/latent-sites.ts'
import { mappedPanel, THRESHOLD_UM } from './mapped-panel.ts'
import { readByRule } from './reading-by-rule.ts'
import { type PanelKind, panelKinds } from './simulated-filler.ts'
import { gridNodes } from './simulated-nodes.ts'
import { type SimulatedPanel, simulatedPanel, truthOf } from './simulated-panels.ts'

/** One simulated panel: what was drawn, and the truth. */
export interface StudyRow {
  readonly kind: PanelKind
  readonly readings: number
  readonly evidence: EvidenceKind
  readonly assessedMm2: number
  readonly mostMm3: number
  readonly area: Interval
  readonly volume: Interval
  readonly trueArea: number
  readonly trueVolume: number
}

type Stage = 'tuning' | 'held back' | 'short'

/** How finely a study draws the field of a panel. */
interface Fineness {
  readonly nodes: number
  readonly draws: number
}
const FULL: Fineness = { nodes: 1600, draws: 399 }

/** The panel number `at` of a stage; kinds take turns. Stages have seeds of their own. */
export function studyPanel(stage: Stage, readings: number, at: number, fineness: Fineness = FULL): StudyRow {
  const panel = simulatedPanel(kindOf(at), readings, `${stage} ${readings} ${at}`)
  return studyRow(panel, panel.readings, `${stage} field ${readings} ${at}`, fineness)
}

/** The panel number `at` of a stage read at `first` places, then `more` times where the program says the next is worth most. */
export function followedPanel(
  stage: Stage,
  [first, more]: readonly [number, number],
  at: number,
  fineness: Fineness = FULL,
): StudyRow {
  const seed = `${stage} by the rule ${first} ${more} ${at}`
  const panel = simulatedPanel(kindOf(at), first, seed)
  return studyRow(panel, readByRule(panel, more, `${seed} rule`), `${seed} field`, fineness)
}

/** Most readings by the rule on a tuning panel, and most of its share. */
const MOST_BY_RULE = 15
const SHARE_BY_RULE = 0.4

/**
 * The panel number `at` that ends of intervals are set on: every kind once as it was read, then once with its last readings
 * where the program said, since readings that follow the rule tell less of the rest than their number suggests.
 */
export function tuningPanel(readings: number, at: number): StudyRow {
  if (Math.floor(at / panelKinds.length) % 2 === 0) return studyPanel('tuning', readings, at)
  const more = Math.min(MOST_BY_RULE, Math.round(SHARE_BY_RULE * readings))
  return followedPanel('tuning', [readings - more, more], at)
}

const kindOf = (at: number): PanelKind => panelKinds[at % panelKinds.length] as PanelKind

function studyRow(
  panel: SimulatedPanel,
  readings: readonly FieldReading[],
  seed: string,
  { nodes: count, draws }: Fineness,
): StudyRow {
  const truth = truthOf(panel, THRESHOLD_UM)
  const nodes = gridNodes(panel.widthMm, panel.heightMm, count)
  const { question, areaMm2, volumeMm3 } = mappedPanel(panel, readings, nodes, { seed, draws })
  return {
    kind: panel.kind,
    readings: question.readings,
    evidence: evidenceOf(question.readings, question.paint),
    assessedMm2: question.assessedMm2,
    mostMm3: (question.assessedMm2 * question.deepestUm) / 1000,
    area: drawnInterval(areaMm2),
    volume: drawnInterval(volumeMm3),
    trueArea: truth.areaMm2,
    trueVolume: truth.volumeMm3,
  }
}

const truthIn = (row: StudyRow, extent: Extent): number => (extent === 'area' ? row.trueArea : row.trueVolume)

/** Panels an evidence kind must have before it gets shifts of its own. */
const ENOUGH_PANELS = 80

const shiftTo = (scores: readonly number[], share: number): number => Number(conformalShift(scores, share).toFixed(3))

/** Shifts of one number of readings from tuning panels. */
export function tunedShifts(rows: readonly StudyRow[]): DensityShifts {
  const of = (extent: Extent, evidence: EvidenceKind) => {
    const own = rows.filter((row) => row.evidence === evidence)
    const scores = (own.length >= ENOUGH_PANELS ? own : rows).map((row) =>
      endScores(row[extent], truthIn(row, extent), grainOf(extent, row.assessedMm2)),
    )
    const low = shiftTo(
      scores.map((score) => score.low),
      0.95,
    )
    /** Where the low end stands at nought it cannot miss, and what it does not miss is left to the high end. */
    const missedLow = scores.filter((score) => score.low > low).length / scores.length
    const high = shiftTo(
      scores.map((score) => score.high),
      0.9 + missedLow,
    )
    /** Readings of paint alone never narrow what may have been missed. */
    return evidence === 'none' ? { low: Math.max(0, low), high: Math.max(0, high) } : { low, high }
  }
  const all = (extent: Extent) => ({
    none: of(extent, 'none'),
    few: of(extent, 'few'),
    several: of(extent, 'several'),
    'nearly all': of(extent, 'nearly all'),
  })
  return { readings: rows[0]?.readings ?? 0, shifts: { area: all('area'), volume: all('volume') } }
}

/** How intervals of one extent did over panels. */
export interface Coverage {
  readonly panels: number
  readonly covered: number
  readonly share: number
  /** Of panels that have filler: median width of the interval, and median distance of its middle from the truth, both by the truth. */
  readonly medianWidth: number
  readonly medianError: number
  /** Mean of middle less truth by the mean truth: bias. */
  readonly bias: number
}

/** Coverage with the shifts of a table, or of the draws as they are. */
export function coverageOf(
  rows: readonly StudyRow[],
  extent: Extent,
  table: readonly DensityShifts[] | null,
): Coverage {
  const judged = rows.map((row) => {
    const grain = grainOf(extent, row.assessedMm2)
    const truth = truthIn(row, extent)
    const shifts = table === null ? { low: 0, high: 0 } : shiftsFor(row.readings, extent, row.evidence, table)
    const most = extent === 'area' ? row.assessedMm2 : row.mostMm3
    const interval = table === null ? row[extent] : shiftedInterval(row[extent], shifts, grain, most)
    const slack = 1e-9 * row.assessedMm2
    return {
      truth,
      inside: interval.low <= truth + slack && truth <= interval.high + slack,
      width: interval.high - interval.low,
      error: interval.middle - truth,
    }
  })
  const filled = judged.filter(({ truth }) => truth > 0)
  const median = (values: number[]): number =>
    values.toSorted((one, other) => one - other)[Math.floor(values.length / 2)] ?? 0
  const sum = (values: number[]): number => values.reduce((all, value) => all + value, 0)
  const covered = judged.filter(({ inside }) => inside).length
  return {
    panels: rows.length,
    covered,
    share: covered / rows.length,
    medianWidth: median(filled.map(({ width, truth }) => width / truth)),
    medianError: median(filled.map(({ error, truth }) => Math.abs(error) / truth)),
    bias: sum(filled.map(({ error }) => error)) / Math.max(1, sum(filled.map(({ truth }) => truth))),
  }
}

/** Panels by how much their readings showed, for the report of a study. */
export const byEvidence = (rows: readonly StudyRow[]): readonly (readonly [EvidenceKind, readonly StudyRow[]])[] =>
  evidenceKinds.map((kind) => [kind, rows.filter((row) => row.evidence === kind)] as const)
