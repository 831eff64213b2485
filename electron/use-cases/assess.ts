import type { CoatingCar } from '../../shared-types/coating-car.ts'
import type { CoatingChange } from '../../shared-types/coating-change.ts'
import type { CoatingMap } from '../../shared-types/coating-map.ts'
import type { ComputationOutput, SpotSummary } from '../../shared-types/computations.ts'
import type { FasteningCompared } from '../../shared-types/fastening.ts'
import type { KeptSample } from '../../shared-types/fastening-sample.ts'
import type { IdentityView } from '../../shared-types/identity-view.ts'
import type { Judgement } from '../../shared-types/judgement.ts'
import type { KeptPicture } from '../../shared-types/measuring-view.ts'
import type { NumberFormat } from '../../shared-types/number-format.ts'
import type { PartsReported } from '../../shared-types/part-expectation.ts'
import type { RecordView } from '../../shared-types/record.ts'
import type { KeptTape } from '../../shared-types/tape-answer.ts'
import type { TimeLineView } from '../../shared-types/time-line-view.ts'
import { rustGrade } from '../analysis/grades/rust-grade.ts'
import { compareFastening } from '../analysis/sampling/compare-fastening.ts'
import { spotSummary } from '../analysis/statistics/spot-summary.ts'
import { coatingCar } from './coating-car.ts'
import { coatingChangesOf } from './coating-change.ts'
import { coatingMapsOf } from './coating-map.ts'
import { identityOf, shelfOf } from './identity-view.ts'
import { judge } from './judgement.ts'
import { numberFormatOf } from './number-format.ts'
import { partsJudged } from './part-expectation.ts'
import { keptPictures } from './pictures-kept.ts'
import type { Program } from './program.ts'
import { keptSamples } from './sample-taken.ts'
import { keptTapes } from './tape/measuring.ts'
import { timeLineOf } from './time-line.ts'

/** Every computed conclusion of a record, as plain JSON. */
export interface Assessment {
  readonly recordNumber: string
  readonly title: string
  /** Journal row it was computed from. */
  readonly journalNumber: number
  readonly journalHash: string
  readonly judgement: Judgement
  /** What the car can still be, with every because-chain; null without a reference sheet. */
  readonly identity: IdentityView | null
  /** Numbers of 17 characters against 49 CFR part 565. */
  readonly numberFormat: NumberFormat
  /** Everything dated: windows narrowed with reasons, conflicts as smallest sets, what could not be read. */
  readonly timeLine: TimeLineView
  /** Each part against what the sheets expect of this car, and their interchange; null without a reference sheet. */
  readonly parts: PartsReported | null
  readonly coatingMaps: readonly CoatingMap[]
  readonly coatingCar: CoatingCar
  /** Filler before and after each correction that cites readings, with the interval of the difference. */
  readonly coatingChanges: readonly CoatingChange[]
  /** Measurements that came of readings, each with what it decides and what it leaves tied. */
  readonly measurements: readonly KeptTape[]
  /** Measures on photographs, with their uncertainty and the tells they decide. */
  readonly photographMeasures: readonly KeptPicture[]
  readonly samples: readonly KeptSample[]
  /** Fastenings expected against found. */
  readonly fastenings: readonly ({ readonly partId: string } & FasteningCompared)[]
  readonly spots: readonly ({ readonly spot: number; readonly panelId: string } & SpotSummary)[]
  readonly rustGrades: readonly ({
    readonly finding: number
    readonly affectedPercent: number
    readonly basis: 'measured' | 'estimated'
  } & ComputationOutput<'rust-grade'>)[]
}

/** Computes everything the program can conclude from the open record. */
export async function assess(program: Program): Promise<Assessment> {
  const record = program.record()
  const view = record.view()
  const identity = view.sheets.length === 0 ? null : await identityOf(record, { more: true, shelf: shelfOf(program) })
  return {
    recordNumber: view.commission.recordNumber,
    title: view.particulars.title,
    journalNumber: view.journalNumber,
    journalHash: view.journalHash,
    judgement: judge(view),
    identity,
    numberFormat: numberFormatOf(view),
    timeLine: await timeLineOf(record, identity),
    parts: view.sheets.length === 0 ? null : await partsJudged(record, shelfOf(program)),
    coatingMaps: await coatingMapsOf(view),
    coatingCar: coatingCar(view),
    coatingChanges: await coatingChangesOf(view),
    measurements: await keptTapes(record),
    photographMeasures: await keptPictures(record),
    samples: keptSamples(view),
    fastenings: view.parts.flatMap(({ partId, fastening }) =>
      fastening === null ? [] : [{ partId, ...compareFastening(fastening) }],
    ),
    spots: view.spots.map((spot) => ({
      spot: spot.number,
      panelId: spot.panelId,
      ...spotSummary({ values: spot.values, gauge: declaredError(view, spot.gauge) }),
    })),
    rustGrades: view.findings.flatMap(({ number, grade }) => {
      if (grade?.standard !== 'ISO 4628-3') return []
      const { affectedPercent, basis } = grade
      return [{ finding: number, affectedPercent, basis, ...rustGrade({ affectedPercent }) }]
    }),
  }
}

function declaredError(view: RecordView, number: number | null) {
  const gauge = view.gauges.find((candidate) => candidate.number === number)
  if (gauge === undefined || gauge.errorUm === null) return null
  return { errorUm: gauge.errorUm, errorPercent: gauge.errorPercent ?? 0 }
}
